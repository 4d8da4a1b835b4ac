//! Lines of another trail, taken over with all that they rest on.

use super::{Ledger, Node, Origin, Part};

impl Ledger {
    /// Takes over the lines of another trail from a place on, and whatever they rest on, whose sections go under `under`, a study;
    /// where the lines asked for then stand.
    pub fn adopt(&mut self, other: &Self, from: usize, under: &str, asked: &[Option<Node>]) -> Vec<Option<Node>> {
        let count = other.entries.len();
        let mut wanted: Vec<bool> = (0..count).map(|k| k >= from).collect();
        // A line rests on earlier ones only.
        for k in (0..count).rev() {
            if !wanted[k] {
                continue;
            }
            for node in other.entries[k].origin.inputs().filter_map(Node::index) {
                if let Some(slot) = wanted.get_mut(node) {
                    *slot = true;
                }
            }
        }
        let mut places = vec![Node::NONE; count];
        for (k, entry) in other.entries.iter().enumerate().filter(|(k, _)| wanted[*k]) {
            let mut entry = entry.clone();
            if k < from {
                entry.section = format!("{under}: {}", entry.section);
                entry.part = Part::Study;
            }
            for node in rests_on_mut(&mut entry.origin) {
                *node = node.index().and_then(|at| places.get(at).copied()).unwrap_or(Node::NONE);
            }
            self.entries.push(entry);
            places[k] = u32::try_from(self.entries.len() - 1).map_or(Node::NONE, Node);
        }
        asked.iter().map(|node| node.and_then(Node::index).and_then(|at| places.get(at).copied())).collect()
    }
}

fn rests_on_mut(origin: &mut Origin) -> Box<dyn Iterator<Item = &mut Node> + '_> {
    match origin {
        Origin::Given { .. } | Origin::Assumed(_) => Box::new(core::iter::empty()),
        Origin::Chosen { inputs, .. } | Origin::Derived { inputs, .. } | Origin::Gathered { inputs } => {
            Box::new(inputs.iter_mut())
        }
        Origin::Reckoned { inputs, .. } => Box::new(inputs.iter_mut().map(|(_, node)| node)),
    }
}

#[cfg(test)]
mod tests {
    use crate::provenance::{Ledger, Trail, given};
    use crate::reckon;
    use stillrise_units::catalog::GPM;
    use stillrise_units::{Flow, Typed};

    /// Of three stated flows one sum needs two: these two and the sum come over, and the sum is worked again from them.
    #[test]
    fn lines_come_with_what_they_rest_on() {
        let mut other = Ledger::default();
        other.section("feed");
        let mut flow = |gpm: f64| given(&mut other, "flow", None, Flow::of(gpm, &GPM), "a", "b");
        let (a, _idle, b) = (flow(1.0), flow(2.0), flow(3.0));
        let from = other.entries.len();
        other.section("study, rating");
        let sum = reckon!(&mut other, "sum", [GPM, M3_H], (a = a, b = b) a + b);
        let mut own = Ledger::default();
        own.section("own");
        given(&mut own, "own", None, Flow::of(9.0, &GPM), "a", "b");
        let places = own.adopt(&other, from, "study, before", &[Some(sum.at), None]);
        let sections: Vec<&str> = own.entries.iter().map(|e| e.section.as_str()).collect();
        assert_eq!(sections, ["own", "study, before: feed", "study, before: feed", "study, rating"]);
        assert!(places[1].is_none());
        let line = places[0].and_then(|at| own.entry(at));
        assert!(line.is_some_and(|e| own.replay(e) == Some(Ok(e.value.clone()))), "{places:?}");
    }
}

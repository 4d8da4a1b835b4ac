//! What has changed since a revision was issued. Three results are held beside each other: those that were kept, those that
//! this tool finds on the inputs as they were kept, and those it finds on the inputs as they stand. What differs between the
//! first two is the tool's; between the last two, the inputs'.

use super::manifest::{Input, Manifest, what_differs};
use super::numbers::results;
use crate::compare::{Line, compare};
use serde_json::Value;
use std::collections::BTreeMap;
use stillrise_search::Settled;
use stillrise_units::Fault;

/// What made results differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// The inputs.
    Inputs,
    /// The tool, on the inputs as they were.
    Tool,
    /// Both.
    Both,
}

impl By {
    /// The word for programs.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            By::Inputs => "inputs",
            By::Tool => "tool",
            By::Both => "both",
        }
    }
    /// From whether each of them did.
    fn of(tool: bool, inputs: bool) -> Option<By> {
        match (tool, inputs) {
            (true, true) => Some(By::Both),
            (true, false) => Some(By::Tool),
            (false, true) => Some(By::Inputs),
            (false, false) => None,
        }
    }
}

/// What can be said of the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Because {
    /// Results differ by this, or do not.
    Known(Option<By>),
    /// The text alone was kept: what the tool changed cannot be told.
    TextAlone,
    /// The inputs as they were kept are refused by this tool.
    Refused,
}

/// Something that differs: a number, a result or what a rule says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Number {
    /// What it is.
    pub what: String,
    /// As it was issued.
    pub issued: Option<String>,
    /// What this tool finds on the inputs as issued.
    pub again: Option<String>,
    /// As it stands now.
    pub now: Option<String>,
    /// What made it differ.
    pub by: By,
}

/// All that has changed.
#[derive(Debug, Clone)]
pub struct Changes {
    /// The revision.
    pub revision: String,
    /// The date that it states.
    pub date: Option<String>,
    /// Version of the tool that it was issued with; nothing where the text alone was kept.
    pub tool: Option<String>,
    /// Whether the inputs differ: name, hash then, hash now.
    pub inputs: Vec<(String, Option<String>, Option<String>)>,
    /// What can be said of the whole.
    pub because: Because,
    /// Why this tool refuses the inputs as issued.
    pub faults: Vec<Fault>,
    /// What was said that differs: as issued, now.
    pub said: Vec<Line>,
    /// What it comes to.
    pub results: Vec<Number>,
    /// What rules say.
    pub rules: Vec<Number>,
    /// Values of the trail.
    pub numbers: Vec<Number>,
    /// How many values of the trail were held beside each other.
    pub held: usize,
}

/// Compares. `issued` is what was kept: its manifest and its results; `again` what this tool finds on the inputs as they were
/// kept; `now` the enquiry as it stands, with its inputs.
#[must_use]
pub fn changes(
    revision: &str,
    issued: Option<(&Manifest, &Value)>,
    again: Result<&Settled, Vec<Fault>>,
    now: (&Settled, &[Input]),
    before: &[Input],
) -> Changes {
    let (settled, inputs) = now;
    let (again, faults) = match again {
        Ok(settled) => (Some(settled), Vec::new()),
        Err(faults) => (None, faults),
    };
    let (new, old) = (results(settled), again.map(results));
    let kept = issued.map(|(_, results)| results);
    let list = |part: &str, what: &str, value: &str, shown: &str| {
        let (kept, old) = [kept, old.as_ref()].map(|all| all.map(|all| taken(all, part, what, value, shown))).into();
        differing(kept, old, taken(&new, part, what, value, shown))
    };
    let numbers = list("numbers", "id", "value", "shown");
    let (outcome, rules) = (list("results", "what", "value", "value"), list("rules", "rule", "verdict", "verdict"));
    let all = || numbers.iter().chain(&outcome).chain(&rules);
    let by = By::of(all().any(|n| n.by != By::Inputs), all().any(|n| n.by != By::Tool));
    let because = match (kept, &old) {
        (_, None) => Because::Refused,
        (None, _) => Because::TextAlone,
        _ => Because::Known(by),
    };
    let said = again.map(|again| compare(&[(String::new(), again), (String::new(), settled)]).said);
    let held = new["numbers"].as_array().map_or(0, Vec::len);
    Changes {
        revision: revision.to_owned(),
        date: issued.map(|(manifest, _)| manifest.date.clone()),
        tool: issued.map(|(manifest, _)| manifest.tool.clone()),
        inputs: what_differs(before, inputs),
        because,
        faults,
        said: said.unwrap_or_default(),
        results: outcome,
        rules,
        numbers,
        held,
    }
}

impl Changes {
    /// Whether the same inputs give other results.
    #[must_use]
    pub fn tool_differs(&self) -> bool {
        matches!(self.because, Because::Refused | Because::Known(Some(By::Tool | By::Both)))
    }
    /// How many things differ by this.
    pub(super) fn count(&self, by: By) -> usize {
        self.numbers.iter().filter(|n| n.by == by || n.by == By::Both).count()
    }
}

/// A part of the results by what each is, in order: value and print.
struct Taken<'a> {
    order: Vec<&'a str>,
    all: BTreeMap<&'a str, (&'a Value, Option<String>)>,
}

impl<'a> Taken<'a> {
    fn value(&self, name: &str) -> Option<&'a Value> {
        self.all.get(name).map(|(value, _)| *value)
    }
}

fn taken<'a>(results: &'a Value, part: &str, what: &str, value: &str, shown: &str) -> Taken<'a> {
    let mut found = Taken { order: Vec::new(), all: BTreeMap::new() };
    for one in results[part].as_array().into_iter().flatten() {
        let Some(name) = one[what].as_str() else { continue };
        found.order.push(name);
        found.all.insert(name, (&one[value], one[shown].as_str().map(str::to_owned)));
    }
    found
}

/// What differs between those that were kept, those found again, and those that stand; without one of the first two, between
/// the others.
fn differing(kept: Option<Taken<'_>>, again: Option<Taken<'_>>, now: Taken<'_>) -> Vec<Number> {
    let mut order = now.order.clone();
    for other in [&again, &kept].into_iter().flatten() {
        order.extend(other.order.iter().filter(|name| !now.all.contains_key(*name)).copied());
    }
    let mut seen = std::collections::BTreeSet::new();
    order.retain(|name| seen.insert(*name));
    let numbers = order.into_iter().filter_map(|name| {
        let then = kept.as_ref().map(|kept| kept.value(name));
        let found = again.as_ref().map(|again| again.value(name));
        let stands = Some(now.value(name));
        let by = match (then, found) {
            // Without the middle one, it cannot be told by which of the two.
            (Some(then), None) => (Some(then) != stands).then_some(By::Both),
            (None, found) => By::of(false, found.is_some() && found != stands),
            (then, found) => By::of(then != found, found != stands),
        }?;
        let shown = |taken: Option<&Taken<'_>>| taken.and_then(|taken| taken.all.get(name)?.1.clone());
        let what = name.to_owned();
        Some(Number { what, issued: shown(kept.as_ref()), again: shown(again.as_ref()), now: shown(Some(&now)), by })
    });
    numbers.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn tool_and_inputs_are_told_apart_number_by_number() {
        let of = |a: f64, b: f64, c: f64| {
            json!({ "numbers": [
                { "id": "a", "value": a, "shown": a.to_string() }, { "id": "b", "value": b, "shown": b.to_string() },
                { "id": "c", "value": c, "shown": c.to_string() }, { "id": "same", "value": 1.0, "shown": "1" },
            ] })
        };
        let (kept, again, now) = (of(1.0, 1.0, 1.0), of(2.0, 1.0, 2.0), of(2.0, 2.0, 3.0));
        let take = |value| taken(value, "numbers", "id", "value", "shown");
        let found = differing(Some(take(&kept)), Some(take(&again)), take(&now));
        let by: Vec<(&str, By)> = found.iter().map(|n| (n.what.as_str(), n.by)).collect();
        assert_eq!(by, [("a", By::Tool), ("b", By::Inputs), ("c", By::Both)]);
        // The text alone was kept: only inputs can be told.
        let found = differing(None, Some(take(&again)), take(&now));
        assert_eq!(found.iter().map(|n| n.what.as_str()).collect::<Vec<_>>(), ["b", "c"]);
        // One that is gone, and one that is new, differ too.
        let other = json!({ "numbers": [{ "id": "new", "value": 1.0, "shown": "1" }] });
        let found = differing(Some(take(&kept)), Some(take(&kept)), take(&other));
        assert_eq!(found.len(), 5);
        assert!(found.iter().all(|n| n.by == By::Inputs));
    }
}

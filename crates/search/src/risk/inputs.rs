//! What is uncertain, and by how much: every assumption with a range, and every given value whose range
//! somebody stated.

use std::collections::BTreeSet;
use stillrise_design::Ledger;
use stillrise_design::enquiry::declared::Declared;
use stillrise_design::enquiry::distribution::Distribution;
use stillrise_design::moves_nothing;
use stillrise_design::provenance::{Entry, Origin, Pair};
use stillrise_handbook::page::Arg;

/// One uncertain input.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// The key of the enquiry that states it.
    pub key: String,
    /// How that key is declared.
    pub declared: Declared,
    /// What it is.
    pub label: String,
    /// Print units.
    pub units: Option<Pair>,
    /// What stands in the design.
    pub now: Arg,
    /// How it may turn out.
    pub range: Range,
    /// Whether it is an assumption; else it is a given value with a stated range.
    pub assumed: bool,
    /// Whether a customer is asked for it.
    pub asked: bool,
}

impl Input {
    /// One that is taken as given.
    pub(crate) fn fixed(key: &str, answer: &Arg) -> Self {
        Self {
            key: key.to_owned(),
            declared: Declared::default(),
            label: String::new(),
            units: None,
            now: answer.clone(),
            range: Range::Words(vec![answer.clone()]),
            assumed: false,
            asked: false,
        }
    }
}

impl Input {
    /// The answers by which it is tried one at a time, but the one that stands.
    pub(crate) fn other_answers(&self) -> impl Iterator<Item = Arg> {
        self.range.answers().into_iter().filter(|answer| *answer != self.now)
    }
}

/// How an input may turn out.
#[derive(Debug, Clone, PartialEq)]
pub enum Range {
    /// A number: its ends and what stands in the design, and how it spreads between them.
    Number {
        /// Lower end, SI.
        low: f64,
        /// What stands in the design.
        likely: f64,
        /// Higher end.
        high: f64,
        /// How it spreads.
        distribution: Distribution,
    },
    /// One of a few words: the one in the design half of the time, the others share the rest.
    Words(Vec<Arg>),
}

impl Range {
    /// From the ends and what stands in the design; `None` when nothing is uncertain.
    fn new(low: &Arg, now: &Arg, high: &Arg, distribution: Distribution) -> Option<Self> {
        match (low, now, high) {
            (Arg::Number(low), Arg::Number(now), Arg::Number(high)) => {
                // A default may lie at an end, never beyond: what was answered outside is not a range.
                let (low, high) = (low.min(*now), high.max(*now));
                (high > low).then_some(Range::Number { low, likely: *now, high, distribution })
            }
            (low, now, high) => {
                let mut words = vec![now.clone()];
                for word in [low, high] {
                    if !words.contains(word) {
                        words.push(word.clone());
                    }
                }
                (words.len() > 1).then_some(Range::Words(words))
            }
        }
    }

    /// Its ends; of words the first and the last.
    #[must_use]
    pub fn ends(&self) -> [Arg; 2] {
        match self {
            Range::Number { low, high, .. } => [Arg::Number(*low), Arg::Number(*high)],
            Range::Words(words) => {
                let last = words.last().or(words.first());
                [words.first(), last].map(|word| word.cloned().unwrap_or(Arg::Number(0.0)))
            }
        }
    }

    /// The answers by which it is tried one at a time: the ends of a number, every word.
    #[must_use]
    pub fn answers(&self) -> Vec<Arg> {
        match self {
            Range::Number { low, high, .. } => vec![Arg::Number(*low), Arg::Number(*high)],
            Range::Words(words) => words.clone(),
        }
    }

    /// The value below which a share `u` of the outcomes lies, between 0 and 1.
    #[must_use]
    pub fn quantile(&self, u: f64) -> Arg {
        match self {
            Range::Number { low, likely, high, distribution } => {
                Arg::Number(distribution.quantile(*low, *likely, *high, u))
            }
            Range::Words(words) => {
                let others = words.len().saturating_sub(1).max(1);
                let place = if u < 0.5 { 0 } else { 1 + ((u - 0.5) * 2.0 * others as f64) as usize };
                words[place.min(words.len() - 1)].clone()
            }
        }
    }
}

/// The uncertain inputs of a design, in the order of its trail, each key once. What shop and installation take for granted
/// moves neither effluent nor unit, and is no input of a study.
#[must_use]
pub fn inputs(ledger: &Ledger) -> Vec<Input> {
    among(&ledger.entries)
}

/// The same, among lines of a trail.
pub(crate) fn among(trail: &[Entry]) -> Vec<Input> {
    let mut seen = BTreeSet::new();
    trail.iter().filter_map(input).filter(|input| seen.insert(input.key.clone())).collect()
}

fn input(entry: &Entry) -> Option<Input> {
    let (key, low, high, distribution, assumed, asked) = match (&entry.origin, &entry.range) {
        (Origin::Assumed(a), _) => (&a.key, &a.low, &a.high, Distribution::Triangular, true, !a.question.is_empty()),
        (Origin::Given { .. }, Some(w)) => (&w.key, &w.low, &w.high, w.distribution, false, false),
        _ => return None,
    };
    let declared = entry.declared();
    if key.is_empty() || moves_nothing(declared) {
        return None;
    }
    let range = Range::new(low, &entry.value, high, distribution)?;
    Some(Input {
        key: key.clone(),
        declared,
        label: entry.label.clone(),
        units: entry.units,
        now: entry.value.clone(),
        range,
        assumed,
        asked,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_and_words() {
        let plain = Distribution::Triangular;
        let certain = Range::new(&Arg::Number(2.0), &Arg::Number(2.0), &Arg::Number(2.0), plain);
        assert_eq!(certain, None);
        let words = Range::new(&Arg::Choice("no"), &Arg::Choice("no"), &Arg::Choice("yes"), plain);
        let words = words.unwrap_or(Range::Words(Vec::new()));
        assert_eq!([0.0, 0.49, 0.51, 1.0].map(|u| words.quantile(u)), ["no", "no", "yes", "yes"].map(Arg::Choice));
    }
}

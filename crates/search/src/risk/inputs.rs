//! What is uncertain, and by how much: every assumption with a range, and every given value whose range
//! somebody stated.

use std::collections::BTreeSet;
use stillrise_design::Ledger;
use stillrise_design::provenance::{Entry, Origin, Pair};
use stillrise_handbook::page::Arg;
use stillrise_units::math::{exp, ln, sqrt};

/// One uncertain input.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// The key of the enquiry that states it.
    pub key: String,
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
}

/// How an input may turn out.
#[derive(Debug, Clone, PartialEq)]
pub enum Range {
    /// Between a lowest and a highest value, likeliest at one between: a triangular distribution, over the
    /// logarithm where the ends lie more than threefold apart.
    Triangle {
        /// Lowest value, SI.
        low: f64,
        /// Likeliest value.
        likely: f64,
        /// Highest value.
        high: f64,
        /// Whether over the logarithm.
        logarithmic: bool,
    },
    /// One of a few words: the one in the design half of the time, the others share the rest.
    Words(Vec<Arg>),
}

/// Ends that lie further apart than this are spread over the logarithm.
const WIDE: f64 = 3.0;

impl Range {
    /// From the ends and what stands in the design; `None` when nothing is uncertain.
    fn new(low: &Arg, now: &Arg, high: &Arg) -> Option<Self> {
        match (low, now, high) {
            (Arg::Number(low), Arg::Number(now), Arg::Number(high)) => {
                // A default may lie at an end, never beyond: what was answered outside is not a range.
                let (low, high) = (low.min(*now), high.max(*now));
                (high > low).then(|| Range::Triangle {
                    low,
                    likely: *now,
                    high,
                    logarithmic: low > 0.0 && high / low > WIDE,
                })
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

    /// The value below which a share `u` of the outcomes lies, between 0 and 1.
    #[must_use]
    pub fn quantile(&self, u: f64) -> Arg {
        match self {
            Range::Triangle { low, likely, high, logarithmic: true } => {
                Arg::Number(exp(triangle(ln(*low), ln(*likely), ln(*high), u)))
            }
            Range::Triangle { low, likely, high, logarithmic: false } => Arg::Number(triangle(*low, *likely, *high, u)),
            Range::Words(words) => {
                let others = words.len().saturating_sub(1).max(1);
                let place = if u < 0.5 { 0 } else { 1 + ((u - 0.5) * 2.0 * others as f64) as usize };
                words[place.min(words.len() - 1)].clone()
            }
        }
    }
}

/// The quantile of a triangular distribution.
fn triangle(low: f64, likely: f64, high: f64, u: f64) -> f64 {
    let width = high - low;
    let below = (likely - low) / width;
    if u < below { low + width * sqrt(u * below) } else { high - width * sqrt((1.0 - u) * (1.0 - below)) }
}

/// The uncertain inputs of a design, in the order of its trail, each key once.
#[must_use]
pub fn inputs(ledger: &Ledger) -> Vec<Input> {
    let mut seen = BTreeSet::new();
    ledger.entries.iter().filter_map(input).filter(|input| seen.insert(input.key.clone())).collect()
}

fn input(entry: &Entry) -> Option<Input> {
    let (key, low, high, assumed) = match (&entry.origin, &entry.range) {
        (Origin::Assumed(a), _) => (&a.key, &a.low, &a.high, true),
        (Origin::Given { .. }, Some(within)) => (&within.key, &within.low, &within.high, false),
        _ => return None,
    };
    if key.is_empty() {
        return None;
    }
    let range = Range::new(low, &entry.value, high)?;
    Some(Input {
        key: key.clone(),
        label: entry.label.clone(),
        units: entry.units,
        now: entry.value.clone(),
        range,
        assumed,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// scipy 1.17.1, stats.triang(c=0.25, loc=1, scale=4).ppf(0.1, 0.25, 0.5, 0.9).
    #[test]
    fn quantiles_of_a_triangle() {
        for (u, x) in
            [(0.1, 1.632_455_532_033_675_8), (0.25, 2.0), (0.5, 2.550_510_257_216_821_7), (0.9, 3.904_554_884_989_667)]
        {
            let range = Range::Triangle { low: 1.0, likely: 2.0, high: 5.0, logarithmic: false };
            assert!(matches!(range.quantile(u), Arg::Number(q) if (q - x).abs() < 1e-12), "{u}");
        }
    }

    #[test]
    fn ends_and_words() {
        let wide = Range::new(&Arg::Number(1.0), &Arg::Number(10.0), &Arg::Number(100.0));
        let wide = wide.unwrap_or(Range::Words(Vec::new()));
        for (u, x) in [(0.0, 1.0), (0.5, 10.0), (1.0, 100.0)] {
            assert!(matches!(wide.quantile(u), Arg::Number(q) if (q / x - 1.0).abs() < 1e-12), "{u}");
        }
        let certain = Range::new(&Arg::Number(2.0), &Arg::Number(2.0), &Arg::Number(2.0));
        assert_eq!(certain, None);
        let words = Range::new(&Arg::Choice("no"), &Arg::Choice("no"), &Arg::Choice("yes"));
        let words = words.unwrap_or(Range::Words(Vec::new()));
        assert_eq!([0.0, 0.49, 0.51, 1.0].map(|u| words.quantile(u)), ["no", "no", "yes", "yes"].map(Arg::Choice));
    }
}

//! A step in the results that nobody gave a reason for: what was measured before it is the good period, as if a change
//! had been recorded there.

use super::calibration::is_good;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::date::Date;
use stillrise_design::enquiry::observations::Observation;
use stillrise_units::math::{exp, ln, sqrt};
use stillrise_units::{Concentration, Typed};

/// So many results before the step and after it show one. Judgement.
const BEFORE: usize = 3;
const AFTER: usize = 2;
/// Later over earlier geometric mean from which it is a step. Judgement.
const STEP: f64 = 1.5;
/// Student's t of the two means from which it is no chance: with three results and two, and the best of few places, about
/// one in a hundred by any table.
const T: f64 = 6.0;
/// No scatter is taken for less than that of a laboratory alone.
const LEAST: f64 = 0.11;

/// A step in the results.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jump {
    /// Day of the last result before it.
    pub last: Date,
    /// Day of the first one after it.
    pub first: Date,
    /// How many results stand before it, and their geometric mean.
    pub before: (usize, Concentration),
    /// The same of those after it.
    pub after: (usize, Concentration),
}

/// The step up in the dated results of an enquiry that records no change and marks no period; `None` where every result
/// before does not lie below every one after, or chance would do.
#[must_use]
pub fn jump(enquiry: &Enquiry, observations: &[Observation]) -> Option<Jump> {
    let marked = |o: &Observation| o.observed.regime.as_deref().is_some_and(|regime| !regime.trim().is_empty());
    if !enquiry.changes.is_empty() || observations.iter().any(|o| marked(o) || is_good(&o.observed, &enquiry.changes)) {
        return None;
    }
    let dated = observations.iter().filter(|o| o.detected);
    let mut results: Vec<(Date, f64)> =
        dated.filter_map(|o| Some((o.observed.date.0?, o.observed.oil_out.q()?.si()))).filter(|r| r.1 > 0.0).collect();
    results.sort_by_key(|(day, _)| day.number());
    let t_of = |at: usize| {
        let (before, after) = (logs(&results[..at]), logs(&results[at..]));
        let pooled = (before.1 + after.1) / (results.len() as f64 - 2.0);
        let each = 1.0 / at as f64 + 1.0 / (results.len() - at) as f64;
        (after.0 - before.0) / (sqrt(pooled).max(LEAST) * sqrt(each))
    };
    let parts = |at: &usize| {
        let highest = results[..*at].iter().map(|r| r.1).fold(0.0, f64::max);
        results[*at - 1].0 != results[*at].0 && results[*at..].iter().all(|r| r.1 > highest)
    };
    let places = (BEFORE..(results.len() + 1).saturating_sub(AFTER)).filter(parts);
    let at = places.max_by(|a, b| t_of(*a).total_cmp(&t_of(*b)))?;
    let (before, after) = (logs(&results[..at]).0, logs(&results[at..]).0);
    let mean = |log: f64| Concentration::from_si(exp(log));
    (after - before >= ln(STEP) && t_of(at) >= T).then(|| Jump {
        last: results[at - 1].0,
        first: results[at].0,
        before: (at, mean(before)),
        after: (results.len() - at, mean(after)),
    })
}

/// Mean of the logarithms, and the sum of their squares about it.
fn logs(results: &[(Date, f64)]) -> (f64, f64) {
    let n = results.len() as f64;
    let mean = results.iter().map(|r| ln(r.1)).sum::<f64>() / n;
    (mean, results.iter().map(|r| (ln(r.1) - mean) * (ln(r.1) - mean)).sum())
}

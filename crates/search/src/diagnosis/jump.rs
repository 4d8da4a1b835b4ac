//! A step in the results that nobody gave a reason for, to the end or for a time: what was measured outside it is the good
//! period, as if a change had been recorded there.

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

/// A step in the results, or a spell of high ones that ended by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jump {
    /// Day of the last result before it.
    pub last: Date,
    /// Day of the first one after it.
    pub first: Date,
    /// Day of the last high result, and of the first one as low as before; `None` where the results stay high.
    pub ended: Option<(Date, Date)>,
    /// How many low results there are, before it and once it ended, and their geometric mean.
    pub before: (usize, Concentration),
    /// The same of the high ones.
    pub after: (usize, Concentration),
}

impl Jump {
    /// Whether a day lies outside the high results.
    #[must_use]
    pub fn is_outside(&self, day: Date) -> bool {
        day <= self.last || self.ended.is_some_and(|(_, low)| day >= low)
    }
}

/// The step up in the dated results of an enquiry that records no change, to the end or for a time; `None` where every low
/// result does not lie below every high one, chance would do, or what was marked as the good period says otherwise.
#[must_use]
pub fn jump(enquiry: &Enquiry, observations: &[Observation]) -> Option<Jump> {
    if !enquiry.changes.is_empty() {
        return None;
    }
    let dated = observations.iter().filter(|o| o.detected);
    let mut results: Vec<(Date, f64)> =
        dated.filter_map(|o| Some((o.observed.date.0?, o.observed.oil_out.q()?.si()))).filter(|r| r.1 > 0.0).collect();
    results.sort_by_key(|(day, _)| day.number());
    let n = results.len();
    // High from one place on, up to another.
    let split = |from: usize, to: usize| {
        let low: Vec<(Date, f64)> = results[..from].iter().chain(&results[to..]).copied().collect();
        (low, &results[from..to])
    };
    let t_of = |(from, to): (usize, usize)| {
        let (low, high) = split(from, to);
        let (before, after) = (logs(&low), logs(high));
        let pooled = (before.1 + after.1) / (n as f64 - 2.0);
        let each = 1.0 / low.len() as f64 + 1.0 / high.len() as f64;
        (after.0 - before.0) / (sqrt(pooled).max(LEAST) * sqrt(each))
    };
    let parts = |(from, to): &(usize, usize)| {
        let (low, high) = split(*from, *to);
        let highest = low.iter().map(|r| r.1).fold(0.0, f64::max);
        let days = results[from - 1].0 != results[*from].0 && (*to == n || results[to - 1].0 != results[*to].0);
        low.len() >= BEFORE && days && high.iter().all(|r| r.1 > highest)
    };
    // A spell needs a result ahead of it; a step as many as show what was usual.
    let places = (1..n).flat_map(|from| (from + AFTER..=n).map(move |to| (from, to))).filter(parts);
    let (from, to) = places.max_by(|a, b| t_of(*a).total_cmp(&t_of(*b)))?;
    let (low, high) = split(from, to);
    let (before, after) = (logs(&low).0, logs(high).0);
    let mean = |log: f64| Concentration::from_si(exp(log));
    let found = Jump {
        last: results[from - 1].0,
        first: results[from].0,
        ended: results.get(to).map(|low| (results[to - 1].0, low.0)),
        before: (low.len(), mean(before)),
        after: (high.len(), mean(after)),
    };
    // What was marked stands.
    let stands = |o: &Observation| {
        let marked = o.observed.regime.as_deref().is_some_and(|regime| !regime.trim().is_empty());
        !marked || o.observed.date.0.is_some_and(|day| is_good(&o.observed, &[]) == found.is_outside(day))
    };
    let is_step = after - before >= ln(STEP) && t_of((from, to)) >= T;
    (is_step && observations.iter().all(stands)).then_some(found)
}

/// Mean of the logarithms, and the sum of their squares about it.
fn logs(results: &[(Date, f64)]) -> (f64, f64) {
    let n = results.len() as f64;
    let mean = results.iter().map(|r| ln(r.1)).sum::<f64>() / n;
    (mean, results.iter().map(|r| (ln(r.1) - mean) * (ln(r.1) - mean)).sum())
}

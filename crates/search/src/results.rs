//! Results measured at a unit that stands, split by what was changed between them: those before a change say nothing of
//! the plant since.

use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::enquiry::date::Date;
use stillrise_design::performance::limit::Measured;
use stillrise_units::{Concentration, Typed};

/// Pollutants whose results the total oil of an observation can be held against. A limit on free oil or on solids is
/// another number.
const TOTAL_OIL: [&str; 3] = ["oil and grease", "petroleum hydrocarbons", "hydrocarbon index"];

/// Results of one time between changes, in the order of the enquiry.
#[derive(Debug, Clone, PartialEq)]
pub struct Period {
    /// The change that it begins with.
    pub since: Option<Date>,
    /// The change that it ends with.
    pub until: Option<Date>,
    /// Whether its results have a day; those without stand apart where something was changed.
    pub dated: bool,
    /// The results.
    pub results: Vec<Concentration>,
}

impl Period {
    /// Results that stand against a limit: above it, or all of them where their mean is above one on an average.
    #[must_use]
    pub fn against(&self, limit: &LimitState) -> Option<Measured> {
        measured(&self.results, self.since, limit).filter(|m| m.above > 0)
    }
}

/// Whether the total oil that was measured is what a limit is on.
#[must_use]
pub fn compares(limit: &LimitState) -> bool {
    TOTAL_OIL.contains(&limit.pollutant.word) && limit.statistic.q != Statistic::RigTest
}

/// All results of the water that leaves, those between two changes together; times without a result are left out.
#[must_use]
pub fn periods(e: &Enquiry) -> Vec<Period> {
    let mut days: Vec<Date> = e.changes.iter().filter_map(|c| c.date.0).collect();
    days.sort_unstable();
    days.dedup();
    let changed = !days.is_empty();
    let place = |day: Option<Date>| match (changed, day) {
        (true, Some(day)) => days.iter().filter(|of| **of <= day).count() + 1,
        // Without a change all results are of one time, with a day or without.
        _ => 0,
    };
    let mut all: Vec<Period> = (0..days.len() + 2)
        .map(|k| Period {
            since: k.checked_sub(2).and_then(|at| days.get(at).copied()),
            until: k.checked_sub(1).and_then(|at| days.get(at).copied()),
            dated: k > 0 || !changed,
            results: Vec::new(),
        })
        .collect();
    for o in &e.observed {
        if let (Some(out), Some(period)) = (o.oil_out.q(), all.get_mut(place(o.date.0))) {
            period.results.push(out);
        }
    }
    all.retain(|period| !period.results.is_empty());
    all
}

/// What speaks of the plant as it is: the results of the last time that has some, and those without a day.
#[must_use]
pub fn latest(e: &Enquiry, limit: &LimitState) -> Option<Measured> {
    if !e.unit_stands() || !compares(limit) {
        return None;
    }
    let all = periods(e);
    let undated: Vec<Concentration> = all.iter().filter(|p| !p.dated).flat_map(|p| p.results.iter().copied()).collect();
    let last = all.iter().rfind(|p| p.dated);
    let mut results = last.map(|p| p.results.clone()).unwrap_or_default();
    let since = last.and_then(|p| p.since).filter(|_| undated.is_empty());
    results.extend(undated);
    measured(&results, since, limit)
}

fn measured(results: &[Concentration], since: Option<Date>, limit: &LimitState) -> Option<Measured> {
    let of = results.len();
    let above = results.iter().filter(|c| **c > limit.value.q).count();
    if of == 0 || limit.statistic.q != Statistic::MonthlyAverage {
        return (of > 0).then_some(Measured { above, of, mean: None, since });
    }
    let mean = Concentration::from_si(results.iter().map(|c| c.si()).sum::<f64>() / of as f64);
    let above = if mean > limit.value.q { of } else { 0 };
    Some(Measured { above, of, mean: Some(mean), since })
}

//! Results measured at a unit that stands, split by what was changed between them: those before a change say nothing of
//! the plant since. Observations and laboratory results of the water that leaves count alike.

use std::collections::BTreeMap;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::enquiry::date::Date;
use stillrise_design::performance::limit::Measured;
use stillrise_units::{Concentration, Typed};

/// Results of one time between changes, in the order of the enquiry.
#[derive(Debug, Clone, PartialEq)]
pub struct Period {
    /// The change that it begins with.
    pub since: Option<Date>,
    /// The change that it ends with.
    pub until: Option<Date>,
    /// Whether its results have a day; those without stand apart where something was changed.
    pub dated: bool,
    /// The results that were detected.
    pub results: Vec<Concentration>,
    /// Reporting limits of those that were not.
    pub not_detected: Vec<Concentration>,
    /// Those with a day: the day, and what was detected of it.
    pub by_day: Vec<(Date, Option<Concentration>)>,
}

impl Period {
    /// Results that stand against a limit: above it, or all of them where their mean is above one on an average.
    #[must_use]
    pub fn against(&self, limit: &LimitState) -> Option<Measured> {
        self.measured(limit).filter(|m| m.above > 0)
    }

    /// How many there are, detected or not.
    #[must_use]
    pub fn count(&self) -> usize {
        self.results.len() + self.not_detected.len()
    }

    /// The results beside a limit. What was not detected lies above none, and counts with nothing in a mean, so that a mean
    /// above a limit is above it for certain.
    fn measured(&self, limit: &LimitState) -> Option<Measured> {
        let (of, since) = (self.count(), self.since);
        let all = self.results.iter().chain(&self.not_detected).map(|c| c.si()).sum::<f64>();
        let at_most = Concentration::from_si(all / (of as f64).max(1.0));
        let above = self.results.iter().filter(|c| **c > limit.value.q).count();
        if of == 0 || limit.statistic.q != Statistic::MonthlyAverage {
            return (of > 0).then_some(Measured { above, of, mean: None, at_most, months: None, since });
        }
        let mean = Concentration::from_si(self.results.iter().map(|c| c.si()).sum::<f64>() / of as f64);
        let months = self.months();
        let over: Vec<&(usize, f64)> = months.iter().filter(|(_, mean)| *mean > limit.value.q.si()).collect();
        let (above, months) = if months.len() > 1 {
            (over.iter().map(|(of, _)| of).sum(), Some((over.len(), months.len())))
        } else {
            (if mean > limit.value.q { of } else { 0 }, None)
        };
        Some(Measured { above, of, mean: Some(mean), at_most, months, since })
    }

    /// Of each month how many results there are, and their mean, SI; none where some have no day.
    fn months(&self) -> Vec<(usize, f64)> {
        let mut months: BTreeMap<(i32, u32), (usize, f64)> = BTreeMap::new();
        if self.by_day.len() < self.count() {
            return Vec::new();
        }
        for (day, out) in &self.by_day {
            let month = months.entry((day.year, day.month)).or_default();
            month.0 += 1;
            month.1 += out.map_or(0.0, Typed::si);
        }
        months.into_values().map(|(of, sum)| (of, sum / of as f64)).collect()
    }
}

/// Whether the total oil that was measured is what a limit is on.
#[must_use]
pub fn compares(limit: &LimitState) -> bool {
    limit.pollutant.is_total_oil() && limit.statistic.q != Statistic::RigTest
}

/// All results of total oil in the water that leaves, those between two changes together; times without a result are left
/// out.
#[must_use]
pub fn periods(e: &Enquiry) -> Vec<Period> {
    let all = e.observations();
    split(e, all.iter().filter_map(|o| Some((o.observed.date.0, o.detected, o.observed.oil_out.q()?))).collect())
}

/// The same of what a limit is on, where that is not total oil.
#[must_use]
pub fn periods_of(e: &Enquiry, limit: &LimitState) -> Vec<Period> {
    if limit.statistic.q == Statistic::RigTest {
        return Vec::new();
    }
    split(e, e.results_of(limit.pollutant))
}

fn split(e: &Enquiry, mut results: Vec<(Option<Date>, bool, Concentration)>) -> Vec<Period> {
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
            not_detected: Vec::new(),
            by_day: Vec::new(),
        })
        .collect();
    results.sort_by_key(|(day, ..)| day.map(Date::number));
    for (day, detected, out) in results {
        let Some(period) = all.get_mut(place(day)) else { continue };
        period.by_day.extend(day.map(|day| (day, detected.then_some(out))));
        if detected { &mut period.results } else { &mut period.not_detected }.push(out);
    }
    all.retain(|period| period.count() > 0);
    all
}

/// What speaks of the plant as it is: the results of the last time that has some, and those without a day.
#[must_use]
pub fn latest(e: &Enquiry, limit: &LimitState) -> Option<Measured> {
    if !e.unit_stands() {
        return None;
    }
    let all = if compares(limit) { periods(e) } else { periods_of(e, limit) };
    let undated = all.iter().find(|p| !p.dated);
    let mut last = all.iter().rfind(|p| p.dated).or(undated)?.clone();
    if let Some(undated) = undated.filter(|_| last.dated) {
        last.since = None;
        last.results.extend(&undated.results);
        last.not_detected.extend(&undated.not_detected);
    }
    last.measured(limit)
}

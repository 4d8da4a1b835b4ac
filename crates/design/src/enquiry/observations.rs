//! What was observed at the unit that stands: the occasions written so, and each laboratory result of the water that
//! leaves it, so that a result counts the same wherever it was written.

use super::Enquiry;
use super::blocks::{Manner, Observed, SamplePoint, Samples, Taken};
use super::date::{Date, Day};
use super::keys::{Claim, Quantity};
use super::results::LabResult;
use super::said::{Claims, Said, Word};
use stillrise_handbook::fluids::pollutants::{Pollutant, total_oils};
use stillrise_units::Concentration;

/// The regime by which observations and samples say that the unit ran well.
pub const GOOD: &str = "good";

/// Two numbers are one result where they differ by no more than rounding between units.
const SAME: f64 = 1e-6;

/// One occasion on which something was observed.
#[derive(Debug, Clone)]
pub struct Observation {
    /// What was observed.
    pub observed: Observed,
    /// Whether its oil was detected: else the number is a reporting limit, and less was there.
    pub detected: bool,
}

impl Samples {
    /// The day of a result, where it was said so that it can be read.
    #[must_use]
    pub fn day(&self, at: usize) -> Option<Date> {
        let text = self.results.items.get(at)?.date.as_ref().or_else(|| self.dates.get(at))?;
        // A time of day may follow.
        Date::read(text.split([' ', 'T']).find(|part| !part.is_empty())?).ok()
    }
}

impl Enquiry {
    /// All that was observed, in the order of the file, samples last.
    ///
    /// A sample of the day and the value of an observation is that observation; the only sample of a day on which
    /// something was seen and no oil stands beside it is the oil of that observation.
    #[must_use]
    pub fn observations(&self) -> Vec<Observation> {
        let plain = |o: &Observed| Observation { observed: o.clone(), detected: true };
        let mut all: Vec<Observation> = self.observed.iter().map(plain).collect();
        let written = all.len();
        let mut free = vec![true; written];
        let mut rest: Vec<(&Samples, usize)> = Vec::new();
        for (s, at) in self.outlet_results().filter(|(s, at)| self.is_placed(s, *at)) {
            let same = |k: &usize| {
                let o = &all[*k].observed;
                free[*k] && s.day(at).is_some() && o.date.0 == s.day(at) && same(&o.oil_out, &s.results.items[at])
            };
            match (0..written).find(same) {
                Some(k) => free[k] = false,
                None => rest.push((s, at)),
            }
        }
        for (s, at) in &rest {
            let day = s.day(*at);
            let alone = day.is_some() && rest.iter().filter(|(s, at)| s.day(*at) == day).count() == 1;
            let of_day = |k: &usize| all[*k].observed.date.0 == day;
            let mut seen = (0..written).filter(of_day);
            let into = match (seen.next(), seen.next()) {
                (Some(k), None) if alone && !all[k].observed.oil_out.is_given() => Some(k),
                _ => None,
            };
            let result = &s.results.items[*at];
            match into {
                Some(k) => {
                    all[k].observed.oil_out = oil(s, result);
                    all[k].observed.taken.0 = all[k].observed.taken.0.or_else(|| taken(s));
                    all[k].detected = result.detected;
                }
                None => all.push(self.sampled(s, *at)),
            }
        }
        all
    }

    /// Whether anything was observed.
    #[must_use]
    pub fn is_observed(&self) -> bool {
        !self.observed.is_empty() || self.outlet_results().any(|(s, at)| self.is_placed(s, at))
    }

    /// Names of the sets of which results have no day, so that they stand neither before nor after what was changed, each
    /// with how many; they are no observations.
    #[must_use]
    pub fn unplaced(&self) -> Vec<(String, usize)> {
        let mut out: Vec<(String, usize)> = Vec::new();
        for (s, _) in self.outlet_results().filter(|(s, at)| !self.is_placed(s, *at)) {
            let name = s.name.0.clone().unwrap_or_default();
            match out.iter_mut().find(|(of, _)| *of == name) {
                Some((_, count)) => *count += 1,
                None => out.push((name, 1)),
            }
        }
        out
    }

    /// Results without a day, where something was changed: less than the number where it was not detected.
    #[must_use]
    pub fn unplaced_results(&self) -> Vec<(bool, Concentration)> {
        let undated = self.outlet_results().filter(|(s, at)| !self.is_placed(s, *at));
        undated
            .filter_map(|(s, at)| s.results.items.get(at))
            .map(|r| (r.detected, stillrise_units::Typed::from_si(r.written.si())))
            .collect()
    }

    /// Results of the water that leaves the unit that stands, by set and place in it: of total oil, and of one pollutant,
    /// as one sample analysed twice is one sample. Preferred is one that a limit is on.
    fn outlet_results(&self) -> impl Iterator<Item = (&Samples, usize)> {
        let out = |s: &&Samples| self.unit_stands() && s.place.0 == Some(SamplePoint::Out);
        let given = |of: &&Pollutant| self.samples.iter().filter(out).any(|s| s.of() == Some(*of));
        let limited = |of: &&Pollutant| self.limits.iter().any(|l| l.of() == Some(*of));
        let of = || total_oils().filter(given);
        let of = of().find(limited).or_else(|| of().next());
        let sets: Vec<&Samples> = self.samples.iter().filter(out).filter(|s| of.is_some() && s.of() == of).collect();
        sets.into_iter().flat_map(|s| (0..s.results.items.len()).map(move |at| (s, at)))
    }

    /// Results of one pollutant that is no total oil in the water that leaves the unit that stands: the day, whether it was
    /// detected, and the number or else the reporting limit.
    #[must_use]
    pub fn results_of(&self, pollutant: &Pollutant) -> Vec<(Option<Date>, bool, Concentration)> {
        let of = |s: &&Samples| {
            let own = s.place.0 == Some(SamplePoint::Out) && s.of() == Some(pollutant);
            own && self.unit_stands() && !pollutant.is_total_oil()
        };
        let sets = self.samples.iter().filter(of);
        let each = |s: &Samples| -> Vec<_> {
            let value = |r: &LabResult| stillrise_units::Typed::from_si(r.written.si());
            s.results.items.iter().enumerate().map(|(at, r)| (s.day(at), r.detected, value(r))).collect()
        };
        sets.flat_map(each).collect()
    }

    /// Whether a result has its place in time: with a day, or where nothing was changed.
    fn is_placed(&self, s: &Samples, at: usize) -> bool {
        s.day(at).is_some() || self.first_change().is_none()
    }

    /// The day of the first change.
    #[must_use]
    pub fn first_change(&self) -> Option<Date> {
        self.changes.iter().filter_map(|c| c.date.0).min()
    }

    fn sampled(&self, s: &Samples, at: usize) -> Observation {
        let result = &s.results.items[at];
        let day = s.day(at);
        let set = s.name.as_deref().unwrap_or("sample");
        let which = match day {
            Some(day) => {
                let before = (0..at).filter(|k| s.day(*k) == Some(day)).count();
                if before == 0 { day.to_string() } else { format!("{day} ({})", before + 1) }
            }
            None => format!("result {}", at + 1),
        };
        // A word on a set that spans a change says nothing of the one time or the other.
        let first = self.first_change();
        let days = || (0..s.results.items.len()).filter_map(|k| s.day(k));
        let spans = first.is_some_and(|first| days().any(|day| day < first) && days().any(|day| day >= first));
        let good = |word: &String| word.trim().eq_ignore_ascii_case(GOOD);
        let observed = Observed {
            name: Said(Some(format!("{set}, {which}")), Claims::default()),
            date: Day(day),
            regime: Said(s.regime.0.clone().filter(|word| !spans || good(word)), Claims::default()),
            taken: Word(taken(s), Claims::default()),
            oil_out: oil(s, result),
            ..Observed::default()
        };
        Observation { observed, detected: result.detected }
    }
}

fn same(oil_out: &Quantity<Concentration>, result: &LabResult) -> bool {
    let close = |a: f64, b: f64| (a - b).abs() <= SAME * b.abs();
    oil_out.claim().is_some_and(|claim| close(claim.written.si(), result.written.si()))
}

fn oil(s: &Samples, result: &LabResult) -> Quantity<Concentration> {
    let spec = Observed::default().oil_out().spec;
    let mut written = result.written.clone();
    written.text = result.text();
    let claim = Claim { written, from: None, chosen: false, because: None, range: None };
    Quantity::new(vec![claim], spec, &s.results.place)
}

fn taken(s: &Samples) -> Option<Taken> {
    match s.manner.0? {
        Manner::Grab | Manner::Isokinetic => Some(Taken::Stream),
        Manner::Composite => Some(Taken::Composite),
        Manner::Surface => Some(Taken::Surface),
        Manner::Pipette => None,
    }
}

//! The verdict on a limit, in four words, from the right number.

use super::State;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::limits::LimitState;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Trail, Val, choose};
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_handbook::separation::floors;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// The four words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Word {
    /// Kept even if everything mixes.
    Kept,
    /// Kept as expected, not if everything mixes.
    Likely,
    /// Not shown to be kept.
    NotShown,
    /// Gravity cannot keep it.
    NotByGravity,
}

impl Word {
    /// In print.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Word::Kept => "kept",
            Word::Likely => "likely",
            Word::NotShown => "not shown",
            Word::NotByGravity => "not by gravity",
        }
    }
}

/// The published practical floor of plate units under ideal conditions.
#[must_use]
pub fn floor() -> Concentration {
    floors::plate_floor().value
}

/// The verdict on one limit.
#[derive(Debug, Clone)]
pub struct LimitVerdict {
    /// Which limit, by its place in the basis.
    pub limit: usize,
    /// The word.
    pub word: Word,
    /// What the effluent is held against: the limit, or the long-term mean it demands.
    pub against: Val<Concentration>,
    /// The effluent that was held against it: total oil, expected.
    pub expected: Val<Concentration>,
    /// The same if everything mixes.
    pub mixed: Val<Concentration>,
    /// The case it was taken from.
    pub case: String,
    /// Why this word, in a sentence with numbers.
    pub because: String,
    /// What would change it.
    pub change: String,
    /// Whether a larger unit could change it: free oil is what stands against the limit.
    pub larger_helps: bool,
}

/// The removal a limit is held against: the worst cold case at the end of the interval.
#[must_use]
pub fn worst(removals: &[Removal]) -> Option<&Removal> {
    let mut best: Option<&Removal> = None;
    for r in removals.iter().filter(|r| r.state == State::End) {
        if best.is_none_or(|b| r.total.expected.q > b.total.expected.q) {
            best = Some(r);
        }
    }
    best
}

/// A prediction in print: never below the published floor, unless the influent itself is lower.
#[must_use]
pub fn shown(expected: Concentration, influent: Concentration) -> String {
    let number = |c: Concentration| print::with_unit(print_round(c), &MG_L);
    if expected >= floor() {
        return number(expected);
    }
    if influent <= floor() {
        return format!("at most the influent's {}", number(influent));
    }
    format!("at or below the published floor, {}", number(floor()))
}

/// Two significant digits: more would claim what no prediction of an effluent has.
fn print_round(c: Concentration) -> f64 {
    let text = print::digits(MG_L.from_si(c.si()), 2);
    MG_L.to_si(text.parse().unwrap_or(0.0))
}

/// Holds the predictions against each limit.
pub fn verdicts<T: Trail>(t: &mut T, basis: &Basis, removals: &[Removal], blocked: Option<&str>) -> Vec<LimitVerdict> {
    t.section("limits");
    let mut out = Vec::new();
    for (i, limit) in basis.limits.iter().enumerate() {
        let Some(worst) = worst(removals) else { continue };
        // An average is held against the mean of clean and end of interval in the same case.
        let clean = removals.iter().find(|r| r.case == worst.case && r.season == worst.season && r.state == State::Clean);
        let average = limit.statistic.q == Statistic::MonthlyAverage;
        let (expected, mixed) = match clean.filter(|_| average) {
            Some(clean) => (
                crate::reckon!(t, "expected over the interval", [MG_L, MG_L], (clean = clean.total.expected, end = worst.total.expected) (clean + end) / 2.0),
                crate::reckon!(t, "mixed bound over the interval", [MG_L, MG_L], (clean = clean.total.mixed, end = worst.total.mixed) (clean + end) / 2.0),
            ),
            None => (worst.total.expected, worst.total.mixed),
        };
        let against = limit.mean.filter(|_| average).unwrap_or(limit.value);
        let (word, because, change) = judge(limit, worst, expected.q, mixed.q, against.q, blocked);
        let settled = choose(t, &format!("held against the limit on {}", limit.pollutant.title), Some((&MG_L, &MG_L)), expected.q, "all cases at the end of the interval", &because, &[expected.at, mixed.at, against.at]);
        out.push(LimitVerdict { limit: i, word, against, expected: settled, mixed, case: worst.case.clone(), because, change,
            larger_helps: word == Word::NotShown && limit.pollutant.gravity == Gravity::Touches && limit.statistic.q != Statistic::RigTest });
    }
    out
}

fn judge(limit: &LimitState, worst: &Removal, expected: Concentration, mixed: Concentration, against: Concentration, blocked: Option<&str>) -> (Word, String, String) {
    let mg = |c: Concentration| print::with_unit(print_round(c), &MG_L);
    let stays = worst.content.emulsified.q + worst.content.dissolved.q;
    let influent = worst.content.total.q;
    if limit.statistic.q == Statistic::RigTest {
        return (
            Word::NotShown,
            "a rig test is a full-scale type test of the unit; no calculation stands in for it".to_owned(),
            "a test report of the unit by the standard named".to_owned(),
        );
    }
    match limit.pollutant.gravity {
        Gravity::Cannot => return (Word::NotByGravity, limit.pollutant.explains.to_owned(), limit.pollutant.what_could.to_owned()),
        Gravity::Partly => return (Word::NotShown, limit.pollutant.explains.to_owned(), limit.pollutant.what_could.to_owned()),
        Gravity::Touches => {}
    }
    if let Some(reason) = blocked {
        return (Word::NotByGravity, reason.to_owned(), "treat or keep out what makes the emulsion, then look again".to_owned());
    }
    if influent <= against {
        return (Word::Kept, format!("the water already carries no more than {} at the inlet", mg(influent)), "other influent".to_owned());
    }
    if stays > against {
        return (
            Word::NotByGravity,
            format!("{} of emulsified and dissolved oil pass any separator, against {}", mg(stays), mg(against)),
            "less detergent, no shear, or a polisher behind the separator".to_owned(),
        );
    }
    if against < floor() {
        return (
            Word::NotByGravity,
            format!("{} lie below the published practical floor of {} for plates under ideal conditions", mg(against), mg(floor())),
            "a polisher behind the separator, or measured results of this unit on this water".to_owned(),
        );
    }
    if mixed <= against {
        return (Word::Kept, format!("even if tank and gaps mix, what leaves is {}, against {}", shown(mixed, influent), mg(against)), "a finer or a sheared oil".to_owned());
    }
    if expected <= against {
        return (Word::Likely, format!("what leaves is {} as expected, {} if tank and gaps mix, against {}", shown(expected, influent), shown(mixed, influent), mg(against)), "measured droplets, or more plates".to_owned());
    }
    (Word::NotShown, format!("what leaves is {} as expected, against {}", shown(expected, influent), mg(against)), "more plates, coarser droplets (no shear ahead), less emulsified oil, or a polisher".to_owned())
}

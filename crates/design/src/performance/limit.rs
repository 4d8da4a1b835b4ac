//! The verdict on a limit, in four words, from the right number.

use super::State;
pub use super::heard::{ASKED_OF_KEPT, ASKED_OF_LIKELY, By, Chance, HeldBack, Measured};
pub use super::held::{Held, held};
pub use super::judge::no_plates;
use super::judge::{Found, judge};
use super::keeps::{Keeps, keeps, mean_that_meets};
use super::promise::{floor, number};
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::limits::LimitState;
use crate::basis::passing::is_raised;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Node, Off, Trail, Val, choose};
use crate::say;
use arrayvec::ArrayVec;
use std::cmp::Ordering;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Ratio, Typed, print, ratio};

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

/// The verdict on one limit.
#[derive(Debug, Clone)]
pub struct LimitVerdict {
    /// Which limit, by its place in the basis.
    pub limit: usize,
    /// The word: the weakest of what the calculation, the plausible ranges of what is assumed, the chance over all
    /// that is uncertain, and measurements say.
    pub word: Word,
    /// The word of the calculation alone, everything as in the basis.
    pub calculated: Word,
    /// The word of the calculation for a unit that was just cleaned; `None` where it is not predicted, or is of a mean over
    /// the whole interval, and where no trail is kept.
    pub clean: Option<Word>,
    /// What holds the word below the calculated one, weakest first.
    pub held_back: Vec<HeldBack>,
    /// Results measured at the unit that stands, as its plant is now; `None` where there is none.
    pub measured: Option<Measured>,
    /// How many results keep the limit; `None` where it is not predicted, and until it was looked at.
    pub chance: Option<Chance>,
    /// What the effluent is held against: the limit, or the long-term mean it demands.
    pub against: Val<Concentration>,
    /// The effluent that was held against it: total oil, expected, at the peak of the influent for a single sample.
    pub expected: Val<Concentration>,
    /// The most that is expected in any case that it is held against; another's than `expected` where the weakest word comes
    /// from a water that carries more of what does not rise.
    pub most: Most,
    /// The same as `expected` if everything mixes.
    pub mixed: Option<Val<Concentration>>,
    /// What arrives, on the same footing: at its peak for a single sample, else its mean.
    pub influent: Val<Concentration>,
    /// What of it no separator touches, on the same footing: emulsified, dissolved or too heavy.
    pub stays: Val<Concentration>,
    /// The suspended solids that arrive, on the same footing, where they are what the limit counts.
    pub solids: Option<Concentration>,
    /// The mean that arrives.
    pub mean_influent: Val<Concentration>,
    /// The case it was taken from; what is a mean, or about one, is of the worst case that lasts, where this is a bath that is
    /// let go.
    pub case: String,
    /// The mean that leaves, as expected: over the interval for an average, else at its end.
    pub mean: Val<Concentration>,
    /// The mean that just meets the limit on the footing it is held on: at the influent's peak for a single sample.
    pub mean_that_meets: Val<Concentration>,
    /// The influent's peak over its mean, for a single sample.
    pub peak: Option<Val<Ratio>>,
    /// How often single results, or averages, keep the limit; `None` where it is not predicted.
    pub keeps: Option<Keeps>,
    /// Why this word, in a sentence with numbers.
    pub because: String,
    /// What would change it.
    pub change: String,
    /// Whether the effluent is predicted for this pollutant at all; if not, no number stands for it.
    pub predicted: bool,
    /// Whether a larger unit could change it: free oil is what stands against the limit.
    pub larger_helps: bool,
}

/// The most that leaves in any case that is held against a limit.
#[derive(Debug, Clone)]
pub struct Most {
    /// What is expected to leave, at the peak of the influent for a single sample.
    pub expected: Val<Concentration>,
    /// What arrives, on the same footing.
    pub influent: Val<Concentration>,
    /// The case.
    pub case: String,
}

/// The removal that stands for the unit: the worst cold case at the end of the interval, of those that last.
#[must_use]
pub fn worst(removals: &[Removal]) -> Option<&Removal> {
    let mut best: Option<&Removal> = None;
    for r in removals.iter().filter(|r| r.state == State::End && r.lasts) {
        if best.is_none_or(|b| r.total.expected.q > b.total.expected.q) {
            best = Some(r);
        }
    }
    best
}

/// Holds the predictions against each limit: every case at the end of the interval, the worst word counts.
pub fn verdicts<T: Trail>(t: &mut T, basis: &Basis, removals: &[Removal], blocked: Option<&str>) -> Vec<LimitVerdict> {
    t.section("limits");
    let mut out = Vec::new();
    for (i, limit) in basis.limits.iter().enumerate() {
        let (mut worst, mut passing): (Option<LimitVerdict>, Option<LimitVerdict>) = (None, None);
        let mut most: Option<Most> = None;
        for end in removals.iter().filter(|r| r.state == State::End) {
            let case = &basis.cases[end.case_index];
            if !case.is_held_against(limit) {
                continue;
            }
            let verdict = one(t, basis, removals, (i, limit), end, blocked);
            if verdict.predicted && most.as_ref().is_none_or(|most| verdict.expected.q > most.expected.q) {
                most = Some(verdict.most.clone());
            }
            let worst = if case.counts_in_a_mean() { &mut worst } else { &mut passing };
            if worst.as_ref().is_none_or(|worst| is_worse(&verdict, worst)) {
                *worst = Some(verdict);
            }
        }
        if let Some(verdict) = &mut worst {
            verdict.keeps = keeps(t, limit, verdict);
        }
        let mut settled = match (worst, passing) {
            // What comes at a time decides the word; the mean about which results scatter stays that of all days.
            (Some(worst), Some(passing)) if !is_worse(&worst, &passing) => Some(LimitVerdict {
                mean: worst.mean,
                mean_influent: worst.mean_influent,
                mean_that_meets: worst.mean_that_meets,
                peak: worst.peak,
                keeps: worst.keeps,
                ..passing
            }),
            (worst, passing) => worst.or(passing),
        };
        if let (Some(verdict), Some(most)) = (&mut settled, most) {
            // The weakest word may come from one water, and most oil leave with another.
            if T::RECORDS && most.expected.q > verdict.expected.q * 1.05 {
                let (case, leaves) = (&most.case, number(most.expected.q));
                verdict.because = format!("{}; most leaves in another case, {case}: {leaves}", verdict.because);
            }
            verdict.most = most;
        }
        if let Some(verdict) = settled.as_mut().filter(|verdict| T::RECORDS && verdict.predicted) {
            verdict.clean = when_clean(basis, removals, (i, limit), blocked);
        }
        out.extend(settled);
    }
    out
}

/// The word of the calculation for a unit that was just cleaned: no value of it is taken on, so none is recorded.
fn when_clean(
    basis: &Basis,
    removals: &[Removal],
    (i, limit): (usize, &LimitState),
    blocked: Option<&str>,
) -> Option<Word> {
    if limit.statistic.q == Statistic::MonthlyAverage {
        return None;
    }
    let clean = removals.iter().filter(|r| r.state == State::Clean);
    let held = clean.filter(|r| basis.cases[r.case_index].is_held_against(limit));
    held.map(|r| one(&mut Off, basis, removals, (i, limit), r, blocked).word).max()
}

/// Whether one verdict on a limit is the worse of two: by its word; then, where gravity is no help, by how much there is
/// that does not rise; then by how much of what the limit counts there is.
fn is_worse(a: &LimitVerdict, b: &LimitVerdict) -> bool {
    let refused = a.predicted && a.word == Word::NotByGravity;
    let counts = |v: &LimitVerdict| v.solids.unwrap_or(if refused { v.stays.q } else { v.expected.q });
    match a.word.cmp(&b.word) {
        Ordering::Equal if alike(counts(a), counts(b)) => a.expected.q > b.expected.q * (1.0 + ALIKE),
        Ordering::Equal => counts(a) > counts(b),
        other => other == Ordering::Greater,
    }
}

/// Two contents within this share of each other are one: mixing in another order leaves no more.
const ALIKE: f64 = 1e-9;

fn alike(a: Concentration, b: Concentration) -> bool {
    (a.si() - b.si()).abs() <= ALIKE * a.si().max(b.si())
}

/// One limit in one case at the end of the interval.
fn one<T: Trail>(
    t: &mut T,
    basis: &Basis,
    removals: &[Removal],
    (i, limit): (usize, &LimitState),
    end: &Removal,
    blocked: Option<&str>,
) -> LimitVerdict {
    let Held { expected, mixed, influent, stays, against } = held(t, basis, removals, limit, end);
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    let over = basis.cases[end.case_index].peak_for(limit);
    let when = if !T::RECORDS || average { String::new() } else { when(over.q.si()) };
    let peak = if average { 1.0 } else { over.q.si() };
    let solids = limit.pollutant.is_suspended_solids().then(|| end.content.solids.q * ratio(peak));
    let found = Found {
        expected: expected.q,
        mixed: mixed.map(|mixed| mixed.q),
        against: against.q,
        influent: influent.q,
        stays: stays.q,
        solids,
        when,
    };
    let (word, because, change) = judge(limit, &found, blocked, T::RECORDS);
    let predicted = is_predicted(limit);
    let several = basis.cases.iter().filter(|case| case.content.is_some()).count() > 1;
    let because = if T::RECORDS && several && (predicted || limit.pollutant.is_suspended_solids() && word == Word::Kept)
    {
        format!("{because} (worst case: {})", end.case)
    } else {
        because
    };
    let label = say!(T, "held against the limit on {}: {}, {}", limit.title(), end.case, end.season.name());
    let settled = if predicted {
        let bounds = core::iter::once(expected.at).chain(mixed.map(|mixed| mixed.at));
        let nodes: ArrayVec<Node, 3> = bounds.chain([against.at]).collect();
        choose(t, &label, Some((&MG_L, &MG_L)), expected.q, "expected and mixed bound", &because, &nodes)
    } else {
        expected
    };
    // Below the published floor no plates are known to lead.
    let larger_helps = word == Word::NotShown && predicted && against.q >= floor();
    let mean_that_meets = mean_that_meets(t, against, end, limit.pollutant.counts, (over, average));
    let (out, comes) = end.counted(limit.pollutant.counts);
    LimitVerdict {
        limit: i,
        word,
        calculated: word,
        clean: None,
        held_back: Vec::new(),
        measured: None,
        chance: None,
        against,
        expected: settled,
        most: Most { expected: settled, influent, case: end.case.clone() },
        mixed,
        influent,
        stays,
        solids,
        mean_influent: comes,
        mean: if limit.statistic.q == Statistic::MonthlyAverage { expected } else { out.expected },
        mean_that_meets,
        peak: (!average).then_some(over),
        keeps: None,
        case: end.case.clone(),
        because,
        change,
        predicted,
        larger_helps,
    }
}

/// When the influent stands as many times above its mean: nothing where it does not.
fn when(times: f64) -> String {
    let digits = print::digits(times, 3);
    if is_raised(ratio(times)) {
        format!(" when the influent is at its peak, {digits} times its mean,")
    } else if times < 0.9995 {
        // The mean of a case of minutes is above that of the day.
        format!(" over the day of the dump, on which the mean is {digits} times what comes while it lasts,")
    } else {
        String::new()
    }
}

/// Whether the effluent is predicted for this limit's pollutant and statistic at all.
#[must_use]
pub fn is_predicted(limit: &LimitState) -> bool {
    limit.pollutant.gravity == Gravity::Touches && limit.statistic.q != Statistic::RigTest
}

//! What is held against a limit: over the interval for an average, else at the peak of the influent.

use super::State;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::contents::Content;
use crate::basis::limits::LimitState;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Off, Trail, Val, given};
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Ratio, Typed, ratio};

/// What is held against a limit in one case at the end of the interval.
#[derive(Debug, Clone, Copy)]
pub struct Held {
    /// The oil out that the limit counts, as expected: over the interval for an average, else at the peak of the influent.
    pub expected: Val<Concentration>,
    /// The same if everything mixes.
    pub mixed: Val<Concentration>,
    /// What arrives, on the same footing.
    pub influent: Val<Concentration>,
    /// Of that, what does not rise.
    pub stays: Val<Concentration>,
    /// The limit, or the long-term mean it demands.
    pub against: Val<Concentration>,
}

/// Finds what is held against a limit in one case at the end of the interval.
pub fn held<T: Trail>(t: &mut T, basis: &Basis, removals: &[Removal], limit: &LimitState, end: &Removal) -> Held {
    let peak = basis.cases[end.case_index].peak_for(limit);
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    let counts = limit.pollutant.counts;
    let (out, comes) = end.counted(counts);
    // An average is held against the mean of clean and end of interval in the same case; a single
    // sample against a peak of the influent.
    let clean =
        removals.iter().find(|r| r.case_index == end.case_index && r.season == end.season && r.state == State::Clean);
    let (expected, mixed, influent, stays) = match clean.filter(|_| average) {
        Some(clean) => {
            let (before, _) = clean.counted(counts);
            let mut mean = |label: &str, clean: Val<Concentration>, end: Val<Concentration>| {
                crate::reckon!(t, label, [MG_L, MG_L], (clean = clean, end = end)(clean + end) / 2.0)
            };
            let expected = mean("expected over the interval", before.expected, out.expected);
            let mixed = mean("mixed bound over the interval", before.mixed, out.mixed);
            (expected, mixed, comes, stays(t, &end.content, counts, None))
        }
        None => {
            let peak = at_peak(t, &end.content, peak);
            let mut over = |label: &str, out: Val<Concentration>| match counts {
                Counts::AllOil => crate::reckon!(
                    t,
                    label,
                    [MG_L, MG_L],
                    (out = out, mean = end.content.dissolved, rest = peak.rest, dissolved = peak.dissolved)(out - mean)
                        * rest
                        + dissolved
                ),
                Counts::FreeOil => crate::reckon!(t, label, [MG_L, MG_L], (out = out, rest = peak.rest) out * rest),
            };
            let expected = over("expected at the peak of the influent", out.expected);
            let mixed = over("mixed bound at the peak of the influent", out.mixed);
            let influent = match counts {
                Counts::AllOil => peak.influent,
                Counts::FreeOil => over("free oil that arrives at the peak", comes),
            };
            (expected, mixed, influent, stays(t, &end.content, counts, Some(peak)))
        }
    };
    let against = limit.mean.filter(|_| average).unwrap_or(limit.value);
    Held { expected, mixed, influent, stays, against }
}

/// What passes any separator of one content, as a limit is held against it.
#[derive(Debug, Clone, Copy)]
pub struct Passing {
    /// Of it, emulsified oil, and oil as heavy as the water.
    pub fixed: Concentration,
    /// Of it, dissolved oil.
    pub dissolved: Concentration,
    /// Both.
    pub total: Concentration,
    /// What arrives, on the same footing: of it what the limit counts.
    pub influent: Concentration,
    /// The limit, or the long-term mean that an average demands.
    pub against: Concentration,
    /// Whether the influent is at its peak, as a single sample may find it.
    pub at_peak: bool,
}

/// Finds what passes any separator of one case with its content, nothing recorded.
#[must_use]
pub fn passing(limit: &LimitState, case: &Case, content: &Content) -> Passing {
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    let peak = (!average).then(|| at_peak(&mut Off, content, case.peak_for(limit)));
    let counted = limit.pollutant.counts == Counts::AllOil;
    let total = stays(&mut Off, content, limit.pollutant.counts, peak).q;
    let dissolved = peak.map_or(content.dissolved.q, |p| p.dissolved.q);
    let dissolved = if counted { dissolved } else { Concentration::from_si(0.0) };
    let against = limit.mean.filter(|_| average).unwrap_or(limit.value).q;
    let at_peak = peak.is_some() && is_raised(case.peak_for(limit).q);
    let influent = match (limit.pollutant.counts, peak) {
        (Counts::AllOil, peak) => peak.map_or(content.total.q, |p| p.influent.q),
        (Counts::FreeOil, peak) => content.free.q * peak.map_or(ratio(1.0), |p| p.rest.q),
    };
    Passing { fixed: total - dissolved, dissolved, total, influent, against, at_peak }
}

/// Whether a peak is one: above the mean by more than three digits show.
pub(super) fn is_raised(peak: Ratio) -> bool {
    peak.si() >= 1.005
}

/// What arrives when the influent is at its peak.
#[derive(Debug, Clone, Copy)]
pub(super) struct Peak {
    /// All oil.
    pub(super) influent: Val<Concentration>,
    /// Of it, what is dissolved.
    pub(super) dissolved: Val<Concentration>,
    /// How many times its mean the rest is: what is not dissolved.
    pub(super) rest: Val<Ratio>,
}

/// What arrives at the peak: dissolved oil stands at saturation where any oil is free, and all that comes on top is not
/// dissolved; where none is free the water may take up more, and everything rises with the peak.
pub(super) fn at_peak<T: Trail>(t: &mut T, content: &Content, peak: Val<Ratio>) -> Peak {
    let influent =
        crate::reckon!(t, "influent at its peak", [MG_L, MG_L], (total = content.total, peak = peak) total * peak);
    // But for what rounding leaves.
    if content.free.q.si() <= 1e-9 * content.total.q.si() {
        let dissolved = crate::reckon!(t, "dissolved oil at the peak", [MG_L, MG_L], (dissolved = content.dissolved, peak = peak) dissolved * peak);
        return Peak { influent, dissolved, rest: peak };
    }
    let dissolved = content.dissolved;
    let rest = crate::reckon!(
        t,
        "oil that is not dissolved, at the peak over its mean",
        [ONE, ONE],
        (influent = influent, total = content.total, dissolved = dissolved)(influent - dissolved) / (total - dissolved)
    );
    Peak { influent, dissolved, rest }
}

/// Of what arrives, what does not rise: emulsified and dissolved oil, and oil as heavy as the water.
pub(super) fn stays<T: Trail>(t: &mut T, content: &Content, counts: Counts, peak: Option<Peak>) -> Val<Concentration> {
    if counts == Counts::FreeOil {
        let zero = Concentration::from_si(0.0);
        return given(
            t,
            "oil that does not rise and is counted",
            Some((&MG_L, &MG_L)),
            zero,
            "free oil alone is counted",
            "none",
        );
    }
    let (emulsified, dissolved) = (content.emulsified, content.dissolved);
    let fixed = match content.heavy {
        Some(heavy) => {
            crate::reckon!(t, "oil that does not rise, but for what is dissolved", [MG_L, MG_L], (emulsified = emulsified, heavy = heavy) emulsified + heavy)
        }
        None => emulsified,
    };
    match peak {
        Some(Peak { dissolved, rest, .. }) => {
            crate::reckon!(t, "oil that does not rise, at the peak", [MG_L, MG_L], (fixed = fixed, dissolved = dissolved, rest = rest) fixed * rest + dissolved)
        }
        None => {
            crate::reckon!(t, "oil that does not rise", [MG_L, MG_L], (fixed = fixed, dissolved = dissolved) fixed + dissolved)
        }
    }
}

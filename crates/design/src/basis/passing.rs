//! What no separator touches of a water, at its mean and at its peak, as a limit is held against it.

use super::cases::Case;
use super::contents::Content;
use super::limits::LimitState;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Off, Trail, Val, given};
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Ratio, Typed, ratio};

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
pub(crate) fn is_raised(peak: Ratio) -> bool {
    peak.si() >= 1.005
}

/// What arrives when the influent is at its peak.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Peak {
    /// All oil.
    pub(crate) influent: Val<Concentration>,
    /// Of it, what is dissolved.
    pub(crate) dissolved: Val<Concentration>,
    /// How many times its mean the emulsified oil is: the emulsion is a share of all oil.
    pub(crate) emulsion: Val<Ratio>,
    /// How many times its mean the rest is: the free oil.
    pub(crate) rest: Val<Ratio>,
}

/// What arrives at the peak: the emulsion stays the share of all oil that it is; dissolved oil stands at saturation where any
/// oil is free, and all that comes on top is free; where none is free the water may take up more, and everything rises with
/// the peak.
pub(crate) fn at_peak<T: Trail>(t: &mut T, content: &Content, peak: Val<Ratio>) -> Peak {
    let influent =
        crate::reckon!(t, "influent at its peak", [MG_L, MG_L], (total = content.total, peak = peak) total * peak);
    // But for what rounding leaves.
    if content.free.q.si() <= 1e-9 * content.total.q.si() {
        let dissolved = crate::reckon!(t, "dissolved oil at the peak", [MG_L, MG_L], (dissolved = content.dissolved, peak = peak) dissolved * peak);
        return Peak { influent, dissolved, emulsion: peak, rest: peak };
    }
    let (dissolved, emulsified) = (content.dissolved, content.emulsified);
    let rest = crate::reckon!(
        t,
        "free oil at the peak over its mean",
        [ONE, ONE],
        (influent = influent, emulsified = emulsified, peak = peak, dissolved = dissolved, free = content.free)(
            influent - emulsified * peak - dissolved
        ) / free
    );
    Peak { influent, dissolved, emulsion: peak, rest }
}

/// Of what arrives, what does not rise: emulsified and dissolved oil, and oil as heavy as the water.
pub(crate) fn stays<T: Trail>(t: &mut T, content: &Content, counts: Counts, peak: Option<Peak>) -> Val<Concentration> {
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
    match (peak, content.heavy) {
        (Some(Peak { dissolved, emulsion, rest, .. }), Some(heavy)) => crate::reckon!(
            t,
            "oil that does not rise, at the peak",
            [MG_L, MG_L],
            (emulsified = emulsified, emulsion = emulsion, heavy = heavy, rest = rest, dissolved = dissolved) emulsified * emulsion + heavy * rest + dissolved
        ),
        (Some(Peak { dissolved, emulsion, .. }), None) => {
            crate::reckon!(t, "oil that does not rise, at the peak", [MG_L, MG_L], (emulsified = emulsified, emulsion = emulsion, dissolved = dissolved) emulsified * emulsion + dissolved)
        }
        (None, Some(heavy)) => {
            crate::reckon!(t, "oil that does not rise", [MG_L, MG_L], (emulsified = emulsified, heavy = heavy, dissolved = dissolved) emulsified + heavy + dissolved)
        }
        (None, None) => {
            crate::reckon!(t, "oil that does not rise", [MG_L, MG_L], (emulsified = emulsified, dissolved = dissolved) emulsified + dissolved)
        }
    }
}

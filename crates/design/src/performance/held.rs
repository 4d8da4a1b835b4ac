//! What is held against a limit: over the interval for an average, else at the peak of the influent.

use super::State;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::limits::LimitState;
use crate::basis::waters::Content;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Trail, Val};
use stillrise_units::{Concentration, Ratio};

/// What is held against a limit in one case at the end of the interval.
#[derive(Debug, Clone, Copy)]
pub struct Held {
    /// Total oil out, as expected: over the interval for an average, else at the peak of the influent.
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
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    // An average is held against the mean of clean and end of interval in the same case; a single
    // sample against a peak of the influent.
    let clean =
        removals.iter().find(|r| r.case_index == end.case_index && r.season == end.season && r.state == State::Clean);
    let (expected, mixed, influent, stays) = match clean.filter(|_| average) {
        Some(clean) => (
            crate::reckon!(
                t,
                "expected over the interval",
                [MG_L, MG_L],
                (clean = clean.total.expected, end = end.total.expected)(clean + end) / 2.0
            ),
            crate::reckon!(
                t,
                "mixed bound over the interval",
                [MG_L, MG_L],
                (clean = clean.total.mixed, end = end.total.mixed)(clean + end) / 2.0
            ),
            end.content.total,
            stays(t, &end.content, None),
        ),
        None => {
            let peak = basis.peak_for(limit);
            (
                // Dissolved oil stands at saturation, whatever arrives on top.
                crate::reckon!(
                    t,
                    "expected at the peak of the influent",
                    [MG_L, MG_L],
                    (expected = end.total.expected, dissolved = end.content.dissolved, peak = peak)(
                        expected - dissolved
                    ) * peak
                        + dissolved
                ),
                crate::reckon!(
                    t,
                    "mixed bound at the peak of the influent",
                    [MG_L, MG_L],
                    (mixed = end.total.mixed, dissolved = end.content.dissolved, peak = peak)(mixed - dissolved) * peak
                        + dissolved
                ),
                crate::reckon!(
                    t,
                    "influent at its peak",
                    [MG_L, MG_L],
                    (total = end.content.total, dissolved = end.content.dissolved, peak = peak)(total - dissolved)
                        * peak
                        + dissolved
                ),
                stays(t, &end.content, Some(peak)),
            )
        }
    };
    let against = limit.mean.filter(|_| average).unwrap_or(limit.value);
    Held { expected, mixed, influent, stays, against }
}

/// Of what arrives, what does not rise: emulsified and dissolved oil, and oil as heavy as the water; dissolved oil stands
/// at saturation whatever arrives on top.
pub(super) fn stays<T: Trail>(t: &mut T, content: &Content, peak: Option<Val<Ratio>>) -> Val<Concentration> {
    let (emulsified, dissolved) = (content.emulsified, content.dissolved);
    let fixed = match content.heavy {
        Some(heavy) => {
            crate::reckon!(t, "oil that does not rise, but for what is dissolved", [MG_L, MG_L], (emulsified = emulsified, heavy = heavy) emulsified + heavy)
        }
        None => emulsified,
    };
    match peak {
        Some(peak) => {
            crate::reckon!(t, "oil that does not rise, at the peak", [MG_L, MG_L], (fixed = fixed, dissolved = dissolved, peak = peak) fixed * peak + dissolved)
        }
        None => {
            crate::reckon!(t, "oil that does not rise", [MG_L, MG_L], (fixed = fixed, dissolved = dissolved) fixed + dissolved)
        }
    }
}

//! What is held against a limit: over the interval for an average, else at the peak of the influent.

use super::State;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::limits::LimitState;
use crate::basis::passing::{at_peak, stays};
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Trail, Val};
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_units::Concentration;

/// What is held against a limit in one case at the end of the interval.
#[derive(Debug, Clone, Copy)]
pub struct Held {
    /// The oil out that the limit counts, as expected: over the interval for an average, else at the peak of the influent.
    pub expected: Val<Concentration>,
    /// The same if everything mixes.
    pub mixed: Option<Val<Concentration>>,
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
            let both = before.mixed.zip(out.mixed);
            let mixed = both.map(|(clean, end)| mean("mixed bound over the interval", clean, end));
            (expected, mixed, comes, stays(t, &end.content, counts, None))
        }
        None => {
            let peak = at_peak(t, &end.content, peak);
            let mut over = |label: &str, out: Val<Concentration>| match counts {
                Counts::AllOil => crate::reckon!(
                    t,
                    label,
                    [MG_L, MG_L],
                    (
                        out = out,
                        emulsified = end.content.emulsified,
                        mean = end.content.dissolved,
                        rest = peak.rest,
                        emulsion = peak.emulsion,
                        dissolved = peak.dissolved
                    )(out - emulsified - mean)
                        * rest
                        + emulsified * emulsion
                        + dissolved
                ),
                Counts::FreeOil => crate::reckon!(t, label, [MG_L, MG_L], (out = out, rest = peak.rest) out * rest),
            };
            let expected = over("expected at the peak of the influent", out.expected);
            let mixed = out.mixed.map(|mixed| over("mixed bound at the peak of the influent", mixed));
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

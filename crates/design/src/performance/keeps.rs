//! How often single results, or averages, keep a limit when they scatter about their mean.

use super::State;
use super::limit::{LimitVerdict, held};
use super::promise::Promise;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::limits::LimitState;
use crate::basis::passing::at_peak;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Off, Trail, Val, choose};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_handbook::separation::keep_probability;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Ratio, Typed};

/// How often a limit is kept by results that scatter about their mean.
#[derive(Debug, Clone, Copy)]
pub struct Keeps {
    /// The mean they scatter about: never below what may be promised.
    pub mean: Val<Concentration>,
    /// Share of the results that keep it.
    pub share: Val<Ratio>,
}

/// How often the limit is kept: the mean is no lower than the published floor, or the influent below it.
pub(super) fn keeps<T: Trail>(t: &mut T, limit: &LimitState, verdict: &LimitVerdict) -> Option<Keeps> {
    let scatter = limit.scatter.as_ref().filter(|_| verdict.predicted)?;
    let mean = promised(t, verdict.mean, verdict.mean_influent);
    let label = say!(T, "share of the results that keep the limit on {}", limit.title());
    let share = by!(t, &label, keep_probability::share(limit.value, mean, scatter.variation, scatter.samples)).ok()?;
    Some(Keeps { mean, share })
}

/// Share of the results that keep a limit, the worst case at the end of the interval as their mean, nothing recorded;
/// `None` where results do not scatter, or the formula has no answer.
#[must_use]
pub fn keeps_at(basis: &Basis, removals: &[Removal], limit: usize) -> Option<f64> {
    let limit = basis.limits.get(limit)?;
    let scatter = limit.scatter.as_ref()?;
    let off = &mut Off;
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    let mut least: Option<f64> = None;
    for end in removals.iter().filter(|r| r.state == State::End && r.lasts) {
        let (out, comes) = end.counted(limit.pollutant.counts);
        let mean = if average { held(off, basis, removals, limit, end).expected.q } else { out.expected.q };
        let mean = mean.max(Promise::least(comes.q));
        let share = keep_probability::share(limit.value.q, mean, scatter.variation.q, scatter.samples.q).ok()?.si();
        least = Some(least.map_or(share, |least| least.min(share)));
    }
    least
}

/// The mean that just meets what a limit is held against: for a single sample at the influent's peak.
pub(super) fn mean_that_meets<T: Trail>(
    t: &mut T,
    against: Val<Concentration>,
    end: &Removal,
    counts: Counts,
    (peak, average): (Val<Ratio>, bool),
) -> Val<Concentration> {
    if average {
        return against;
    }
    let peak = at_peak(t, &end.content, peak);
    if counts == Counts::FreeOil {
        return reckon!(t, "mean that just meets the limit at the peak", [MG_L, MG_L], (against = against, rest = peak.rest) against / rest);
    }
    reckon!(
        t,
        "mean that just meets the limit at the peak",
        [MG_L, MG_L],
        (
            against = against,
            emulsified = end.content.emulsified,
            emulsion = peak.emulsion,
            dissolved = peak.dissolved,
            rest = peak.rest,
            mean = end.content.dissolved
        )(against - emulsified * emulsion - dissolved)
            / rest
            + emulsified
            + mean
    )
}

/// The mean that may be promised: no lower than the published floor, or the influent below it.
pub(super) fn promised<T: Trail>(
    t: &mut T,
    mean: Val<Concentration>,
    influent: Val<Concentration>,
) -> Val<Concentration> {
    let least = Promise::least(influent.q);
    if mean.q >= least {
        return mean;
    }
    let among = "the mean as computed, the published floor, and what arrives";
    let because = "nothing below the published floor is promised";
    choose(t, "mean that may be promised", Some((&MG_L, &MG_L)), least, among, because, &[mean.at, influent.at])
}

//! How far the oil of a case rises above its mean: baths raise the waters they go into, and no others.

use super::cases::{Case, Kind};
use super::chemicals::Which;
use super::dumps::Peaks;
use super::evidence::SampleSet;
use super::influent::Role;
use super::limits::LimitState;
use super::stated::{assumed, stand_in, stated};
use super::waters::Water;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::FEW_RESULTS;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Node, Pair, Stop, Trail, Val, WhatIf, choose};
use crate::{by, reckon, say};
use stillrise_handbook::separation::{batch_mixture, mixture};
use stillrise_units::catalog::ONE;
use stillrise_units::{Concentration, Flow, Ratio, Typed, Volume, ratio};

/// Finds highest over mean oil content of every case with a known content, of a day and of a single sample.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn peaks<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    sets: &[SampleSet],
    waters: &[Water],
    cases: &mut [Case],
) -> Result<(), Stop> {
    let general = general(t, w, e, sets, (waters, cases));
    for case in cases.iter_mut().filter(|case| case.content.is_some()) {
        case.peaks = Some(of_case(t, waters, case, general)?);
    }
    Ok(())
}

/// A water that brings less than this share of a day's volume is not held against a limit alone. Judgement.
const SEEN_ALONE: f64 = 0.2;

/// Highest over mean where no result says more.
const USUAL: f64 = 1.5;

/// The highest result of a set over the mean that is taken of it, and how many there are; of the oil that comes alone.
fn risen(set: &SampleSet) -> Option<(f64, usize)> {
    if !matches!(set.role, Role::StandsIn(_) | Role::Agrees(_)) {
        return None;
    }
    let (highest, mean) = (set.ends?.1.q.si(), set.law.as_ref()?.mean.q.si());
    (mean > 0.0).then(|| (highest / mean, set.count))
}

/// What is known, or assumed, of every water into which no bath is dumped; `None` where there is no such water, and
/// nothing is stated.
fn general<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    sets: &[SampleSet],
    (waters, cases): (&[Water], &[Case]),
) -> Option<Val<Ratio>> {
    let label = "highest over mean oil content of a single sample";
    if let Some(peak) = stated(t, w, label, &e.water.oil_peak) {
        return Some(peak);
    }
    let dumped = |which: &Which| {
        matches!(which, Which::Bath(_)) || waters.iter().any(|water| water.which == *which && water.peaks.is_some())
    };
    let known = |case: &Case| !case.which.is_empty() && case.which.iter().all(dumped);
    // Where baths are dumped into every water, nothing is left to assume.
    if cases.iter().filter(|case| case.content.is_some()).all(known) && !waters.is_empty() {
        return None;
    }
    // A peak is no lower than one that was measured.
    let measured = sets.iter().filter_map(risen).map(|(times, count)| (times.max(USUAL), count));
    let highest = measured.fold(None, |most: Option<(f64, usize)>, set| match most {
        Some(most) if most.0 >= set.0 => Some(most),
        _ => Some(set),
    });
    let counted = highest.map_or_else(String::new, |(_, count)| say!(T, "{count}"));
    let (times, key, source) = match highest {
        Some((times, _)) => (
            times,
            e.water.oil_peak().when(FEW_RESULTS).word("count", &counted),
            "the highest result of the set over its mean, no less than is usual; few results understate it",
        ),
        None => (USUAL, e.water.oil_peak(), "engineering judgement; oil in runoff and wash water scatters widely"),
    };
    let low = if highest.is_some() { times } else { 1.0 };
    let range = (ratio(low), ratio(times), ratio((2.0 * times).max(3.0)));
    Some(assumed(t, w, &key, label, stand_in(range, source)))
}

fn of_case<T: Trail>(t: &mut T, waters: &[Water], case: &Case, general: Option<Val<Ratio>>) -> Result<Peaks, Stop> {
    let nothing = || Stop::said("peak of the influent", "nothing is known of it");
    let parts = || waters.iter().filter(|water| case.which.contains(&water.which));
    if parts().all(|water| water.peaks.is_none()) {
        let peak = general.ok_or_else(nothing)?;
        return Ok(Peaks { day: peak, sample: peak });
    }
    let day = |t: &mut T, water: &Water| larger(t, "of a day", &water.name, water.peaks.map(|p| p.day), general);
    let sample =
        |t: &mut T, water: &Water| larger(t, "of a single sample", &water.name, water.peaks.map(|p| p.sample), general);
    let bath = case.bath.map(|[water, bath]| (&waters[water], &waters[water].baths[bath]));
    if let (None, [one]) = (bath, &case.which[..])
        && let Some(water) = waters.iter().find(|water| water.which == *one)
    {
        let (day, sample) = (day(t, water), sample(t, water));
        return Ok(Peaks { day: day.ok_or_else(nothing)?, sample: sample.ok_or_else(nothing)? });
    }
    let mean = case.content.as_ref().ok_or_else(nothing)?.total;
    // Each water at its own peak: a sample holds what flows together, a day what comes in it. Of rain no day's volume is
    // known: while it falls its flow counts.
    let days: Option<Vec<Val<Volume>>> = parts().map(|water| water.day).collect();
    let mut days = days.into_iter().flatten();
    let mut of_day: Option<(Val<Volume>, Val<Concentration>)> = None;
    let mut on_day: Option<(Val<Flow>, Val<Concentration>)> = None;
    let mut in_sample = None;
    for water in parts() {
        let peak = day(t, water).ok_or_else(nothing)?;
        match days.next() {
            Some(volume) => of_day = Some(in_a_day(t, of_day, volume, water.content.total, peak)?),
            None => on_day = Some(with(t, on_day, water.flow, water.content.total, peak)?),
        }
        in_sample = Some(match bath {
            // While a bath runs, what it makes of its stream is known: it is the peak.
            Some((stream, bath)) if stream.which == water.which => {
                let label = "flow of the stream with the bath";
                let q = reckon!(t, label, [GPM, M3_H], (stream = stream.flow, bath = bath.flow) stream + bath);
                add(t, in_sample, q, bath.running)?
            }
            _ => {
                let peak = sample(t, water).ok_or_else(nothing)?;
                with(t, in_sample, water.flow, water.content.total, peak)?
            }
        });
    }
    let on_day = of_day.map(|(_, c)| c).or(on_day.map(|(_, c)| c)).ok_or_else(nothing)?;
    let (_, in_sample) = in_sample.ok_or_else(nothing)?;
    let label = say!(T, "highest over mean oil content of a day, {}", case.name);
    // On the day of a dump less comes, as a mean, than while the bath runs.
    let day = reckon!(t, &label, [ONE, ONE], (top = on_day, mean = mean) top / mean);
    let label = say!(T, "highest over mean oil content of a single sample, {}", case.name);
    let sample = reckon!(t, &label, [ONE, ONE], (top = in_sample, mean = mean)(top / mean).max(ratio(1.0)));
    Ok(Peaks { day, sample })
}

/// Waters so far with one more at its peak: their flow and their oil.
fn with<T: Trail>(
    t: &mut T,
    so_far: Option<(Val<Flow>, Val<Concentration>)>,
    flow: Val<Flow>,
    total: Val<Concentration>,
    peak: Val<Ratio>,
) -> Result<(Val<Flow>, Val<Concentration>), Stop> {
    let top = reckon!(t, "total oil at the peak", [MG_L, MG_L], (total = total, peak = peak) total * peak);
    add(t, so_far, flow, top)
}

/// The same of what comes in a day: volumes, and their oil.
fn in_a_day<T: Trail>(
    t: &mut T,
    so_far: Option<(Val<Volume>, Val<Concentration>)>,
    volume: Val<Volume>,
    total: Val<Concentration>,
    peak: Val<Ratio>,
) -> Result<(Val<Volume>, Val<Concentration>), Stop> {
    let top = reckon!(t, "total oil at the peak", [MG_L, MG_L], (total = total, peak = peak) total * peak);
    let Some((v, c)) = so_far else { return Ok((volume, top)) };
    let mixed =
        by!(t, "total oil of the day with each water at its peak", batch_mixture::concentration(v, c, volume, top))?;
    Ok((reckon!(t, "volume so far", [GAL, M3], (sum = v, next = volume) sum + next), mixed))
}

fn add<T: Trail>(
    t: &mut T,
    so_far: Option<(Val<Flow>, Val<Concentration>)>,
    flow: Val<Flow>,
    top: Val<Concentration>,
) -> Result<(Val<Flow>, Val<Concentration>), Stop> {
    let Some((q, c)) = so_far else { return Ok((flow, top)) };
    let mixed = by!(t, "total oil with each water at its peak", mixture::concentration(q, c, flow, top))?;
    Ok((reckon!(t, "flow so far", [GPM, M3_H], (sum = q, next = flow) sum + next), mixed))
}

/// Of what dumps make of a water and what is known of all, the larger; where nothing is dumped into it, the latter.
fn larger<T: Trail>(
    t: &mut T,
    of: &str,
    name: &str,
    own: Option<Val<Ratio>>,
    general: Option<Val<Ratio>>,
) -> Option<Val<Ratio>> {
    let (Some(own), Some(general)) = (own, general) else { return own.or(general) };
    let q = if own.q >= general.q { own.q } else { general.q };
    let units = Some((&ONE, &ONE) as Pair);
    let label = say!(T, "highest over mean oil content {of}, {name}");
    let among = "what its dumps make of it, and what is known of all waters";
    Some(choose(t, &label, units, q, among, "the larger is on the safe side", &[own.at, general.at]))
}

impl Case {
    /// How far its oil rises above its mean in what a limit speaks of; not at all where nothing is known of what it carries.
    #[must_use]
    pub fn peak_for(&self, limit: &LimitState) -> Val<Ratio> {
        let day = limit.statistic.q == Statistic::DailyMaximum;
        let none = Val { q: ratio(1.0), at: Node::NONE };
        self.peaks.map_or(none, |peaks| if day { peaks.day } else { peaks.sample })
    }

    /// Whether it counts in a mean: a bath is let go for minutes, and of several dry-weather waters that come together or
    /// alone the mean of all days does.
    #[must_use]
    pub fn counts_in_a_mean(&self) -> bool {
        match self.kind {
            Kind::Bath | Kind::Alone => false,
            Kind::Dry => self.which.len() == 1,
            _ => true,
        }
    }

    /// Whether a limit is held against it: an average is that of days, and a water that brings little of a day is never seen
    /// alone at the outlet, for it stands in the unit with the others.
    #[must_use]
    pub fn is_held_against(&self, limit: &LimitState) -> bool {
        let seen = self.of_day.is_none_or(|share| share.q >= ratio(SEEN_ALONE));
        seen && (limit.statistic.q != Statistic::MonthlyAverage || self.counts_in_a_mean())
    }
}

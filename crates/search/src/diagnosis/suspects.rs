//! What is weighed as an explanation: each cause for itself, and each cause that a recorded change may have brought about.

use super::causes::{CAUSES, Cause, Id, Measured, Size};
use super::situation::Occasion;
use stillrise_design::enquiry::blocks::{Change, ChangeKind, Observed};
use stillrise_design::enquiry::date::Date;
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::separation::pumps::pump;
use stillrise_units::{Flow, Typed};

/// A cause that is weighed: for itself, or as brought about by a change.
#[derive(Debug, Clone, Copy)]
pub struct Suspect {
    /// The cause.
    pub cause: &'static Cause,
    /// The change that brought it about, by its place in the enquiry.
    pub change: Option<usize>,
    /// Its size, as far as the change does not say more.
    pub size: Option<Size>,
    /// How often it stands behind a complaint, before anything was observed.
    pub often: f64,
    /// The day from which it acts; `None` for all that was observed outside the good period.
    pub since: Option<Date>,
}

/// A unit ran well until a change was made and falls short since: that something else began in the same days is less
/// likely than that it was the change. Engineering judgement.
const COINCIDENCE: f64 = 0.3;
/// By so much an emulsified share has to exceed that of the basis to explain anything. Judgement.
const MORE: f64 = 1.05;
/// How far a flow that a change states may be off.
const STATED: f64 = 1.15;
/// A level that differs by less is the same, read again, m.
const LEVEL: f64 = 0.005;

/// What a change of each kind may bring about, and how often it does: engineering judgement.
const BRINGS: &[(ChangeKind, &[(Id, f64)])] = &[
    (ChangeKind::Pump, &[(Id::PumpShear, 0.4), (Id::FlowAboveDesign, 0.3)]),
    (ChangeKind::Chemical, &[(Id::Emulsion, 0.5), (Id::DissolvedOil, 0.08)]),
    (ChangeKind::Outlet, &[(Id::Siphon, 0.3), (Id::MovedOutlet, 0.25), (Id::LowLevel, 0.25)]),
    (
        ChangeKind::Habits,
        &[(Id::StrongerInfluent, 0.25), (Id::FinerDroplets, 0.2), (Id::Emulsion, 0.15), (Id::FlowAboveDesign, 0.15)],
    ),
    (
        ChangeKind::Unit,
        &[
            (Id::LowLevel, 0.15),
            (Id::FouledMesh, 0.1),
            (Id::BlockedPlates, 0.1),
            (Id::FalseAlarm, 0.15),
            (Id::Siphon, 0.05),
        ],
    ),
    (ChangeKind::Sampling, &[(Id::SamplingOrMethod, 0.35), (Id::SurfaceSample, 0.25)]),
    (ChangeKind::Other, &[(Id::StrongerInfluent, 0.12), (Id::Emulsion, 0.12), (Id::FlowAboveDesign, 0.12)]),
];
/// The suspects, generic ones first, in the order of the lists.
pub(super) fn suspects(
    occasions: &[Occasion<'_>],
    changes: &[Change],
    pumped: bool,
    (crest, count): (f64, f64),
) -> Vec<Suspect> {
    let timely: Vec<(usize, &Change)> = changes.iter().enumerate().filter(|(_, c)| explains(c, occasions)).collect();
    let good = occasions.iter().any(|o| o.good);
    let damped = if good && !timely.is_empty() { COINCIDENCE } else { 1.0 };
    // An emulsion explains nothing that holds no more than the basis has already.
    let held = occasions.iter().map(|o| o.usual().emulsified).fold(0.0, f64::max);
    let above = |cause: &'static Cause| match cause.size {
        Some(size) if cause.id == Id::Emulsion && held > 0.0 => {
            let least = held * MORE;
            (least < size.most).then(|| {
                let likely = size.likely.max(least * MORE);
                Some(Size { low: size.low.max(least), likely, high: size.high.max(likely * MORE), least, ..size })
            })
        }
        size => Some(size),
    };
    let alone = CAUSES.iter().filter(|c| c.often > 0.0 && !settled(c, occasions, pumped)).filter_map(|cause| {
        let often = cause.often * damped;
        Some(Suspect { cause, change: None, size: above(cause)?, often, since: None })
    });
    let mut all: Vec<Suspect> = alone.collect();
    for (k, change) in timely {
        let Some(kind) = change.what.0 else { continue };
        let brings = BRINGS.iter().filter(|(of, _)| *of == kind).flat_map(|(_, list)| list.iter());
        for (id, often) in brings {
            let Some(cause) = CAUSES.iter().find(|c| c.id == *id) else { continue };
            // That a pump is there the change itself says.
            if settled(cause, occasions, true) {
                continue;
            }
            let (often, size) = sharpened(change, cause, *often, occasions, (crest, count));
            if often > 0.0 {
                all.push(Suspect { cause, change: Some(k), size, often, since: change.date.0 });
            }
        }
    }
    all
}

/// Whether a change stands before something that was observed outside the good period.
pub(super) fn explains(change: &Change, occasions: &[Occasion<'_>]) -> bool {
    let since = change.date.0;
    occasions.iter().filter(|o| !o.good).any(|o| match (o.observed.date.0, since) {
        (Some(day), Some(since)) => day >= since,
        _ => true,
    })
}

/// The last change on or before the day of an occasion that says what flows since, and that flow.
pub(super) fn flow_then(o: &Observed, changes: &[Change]) -> Option<(usize, Flow)> {
    let day = o.date.0.filter(|_| !o.flow.is_given())?;
    let mut last: Option<(usize, Flow)> = None;
    for (k, change) in changes.iter().enumerate() {
        let (Some(since), Some(rate)) = (change.date.0, change.rate.q()) else { continue };
        if since <= day && last.is_none_or(|(before, _)| changes[before].date.0 <= Some(since)) {
            last = Some((k, rate));
        }
    }
    last
}

/// What the new value of a change says of a cause: how often, and of which size.
fn sharpened(
    change: &Change,
    cause: &'static Cause,
    often: f64,
    occasions: &[Occasion<'_>],
    (crest, count): (f64, f64),
) -> (f64, Option<Size>) {
    match cause.id {
        Id::PumpShear => match change.pump.as_deref() {
            Some(word) if pump(word).is_some_and(|pump| pump.class.is_gentle()) => (0.05, cause.size),
            Some(_) => (0.5, cause.size),
            None => (often, cause.size),
        },
        Id::FlowAboveDesign => {
            // A pump's rate is its mean, and so is the flow of an occasion; it goes through all units. How far the strokes
            // of a pump reach the plates is not known: a steady one after one that pulsates may load them by less than the
            // means say, and that end of the range is left open.
            let unmeasured = occasions.iter().find(|o| !o.observed.flow.is_given());
            let strokes =
                |old: f64| change.pump.as_deref().and_then(pump).map_or(1.0, |new| old / new.pulsation().si());
            let usual = unmeasured.map(|o| o.taken().0.si() * count);
            let strokes = unmeasured.map_or(1.0, |o| strokes(o.strokes)).max(1.0);
            match (change.rate.q().map(Typed::si), usual, cause.size) {
                (Some(rate), Some(usual), Some(size)) if usual > 0.0 => {
                    let times = rate / usual;
                    if times <= size.least * 1.02 {
                        return (0.0, None);
                    }
                    // Claims that contradict leave all between them open.
                    let said = change.rate.claims.iter().map(|c| c.written.si() / usual);
                    let least = said.fold(times, f64::min);
                    let low = (least / strokes / STATED).max(size.least * 1.001);
                    (0.95, Some(Size { low, likely: times, high: times * STATED, ..size }))
                }
                _ => (often, cause.size),
            }
        }
        Id::Emulsion | Id::DissolvedOil => match change.chemical.as_deref().and_then(chemical) {
            Some(product) if cause.id == Id::Emulsion && product.effect == Effect::Emulsifies => {
                let spread = &product.emulsified;
                // How much goes in nobody knows: a strong product in a small dose emulsifies as little as a weak one.
                let size = cause.size.map(|size| Size {
                    low: size.low.min(spread.low_si().max(size.least)),
                    likely: spread.typical_si().max(size.least * 1.5),
                    high: spread.high_si().max(size.least * 2.0),
                    ..size
                });
                (0.7, size)
            }
            Some(product) if cause.id == Id::DissolvedOil && product.effect == Effect::Dissolves => (0.5, cause.size),
            Some(product) if product.effect == Effect::Harmless => (0.03, cause.size),
            Some(_) => (often.min(0.1), cause.size),
            None => (often, cause.size),
        },
        // An outlet set higher backs water up and never lowers it; where no level says which way it moved, the cause that
        // speaks of both stands for both.
        Id::LowLevel if change.what.0 == Some(ChangeKind::Outlet) => match lower(change, crest, occasions) {
            Some(true) => (0.6, cause.size),
            _ => (0.0, None),
        },
        Id::MovedOutlet => match lower(change, crest, occasions) {
            Some(true) => (0.0, None),
            Some(false) => (0.4, cause.size),
            None => (often, cause.size),
        },
        _ => (often, cause.size),
    }
}

/// Whether the outlet was set lower by a change: by the level that it states, or by how far below its usual level the water
/// stood since; `None` where neither says.
fn lower(change: &Change, crest: f64, occasions: &[Occasion<'_>]) -> Option<bool> {
    let gauged = || {
        let drop = occasions.iter().filter(|o| !o.good).filter_map(|o| o.observed.level_drop.q()).map(Typed::si);
        drop.reduce(f64::max).filter(|drop| *drop > LEVEL)
    };
    match change.outlet_level.q().map(Typed::si) {
        Some(level) => Some(level < crest - LEVEL),
        None => gauged().map(|_| true),
    }
}

/// Whether what was measured settles the question already.
fn settled(cause: &Cause, occasions: &[Occasion<'_>], pumped: bool) -> bool {
    let measured = || occasions.iter().filter(|o| !o.good && o.observed.oil_out.is_given());
    cause.settled_by.iter().any(|what| match what {
        Measured::Flow => measured().all(|o| o.observed.flow.is_given()),
        Measured::Temperature => measured().all(|o| o.observed.temperature.is_given()),
        Measured::OilIn => measured().all(|o| o.observed.oil_in.is_given()),
        Measured::NoPump => !pumped,
    })
}

#[cfg(test)]
#[allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use stillrise_handbook::separation::pumps::PUMPS;

    /// Every cause named is one of the list, and no pump called gentle breaks the oil as hard as a centrifugal one.
    #[test]
    fn what_a_change_brings_is_on_the_list() {
        for (kind, list) in BRINGS {
            for (id, often) in *list {
                assert!(CAUSES.iter().any(|c| c.id == *id), "{kind:?}: {id:?}");
                assert!((0.0..1.0).contains(often), "{kind:?}: {id:?}");
            }
        }
        let gentle = PUMPS.iter().filter(|p| p.class.is_gentle());
        let hardest = gentle.map(|p| p.dissipation()[1].si()).fold(0.0, f64::max);
        assert!(pump("centrifugal").is_some_and(|p| p.dissipation()[1].si() > hardest));
    }
}

//! Cause: the water stands below its level

use super::{Cause, Gauge, Id, Size};
use stillrise_units::catalog::MG_L;

/// Oil carried on where the level is not the one that lip and baffle were made for. Engineering judgement.
pub(super) const CARRIED: Size = Size {
    label: "oil carried under the lip",
    units: (&MG_L, &MG_L),
    low: 0.01,
    likely: 0.06,
    high: 1.0,
    least: 0.001,
    most: 50.0,
};

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::LowLevel,
    title: "The water stands below its level",
    how: "A leak, an open drain, evaporation, an outlet set lower or a unit not filled up after cleaning: the interface stands lower by as much, oil comes near the lip, plates fall dry, and an interface alarm sounds without more oil.",
    often: 0.03,
    size: Some(CARRIED),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.35, 0.15, 0.05, 0.45]),
    jar: Some([0.8, 0.15, 0.05]),
    alarm: Some([0.2, 0.05, 0.15, 0.6]),
    taken: None,
    backed_up: 0.0,
    gauge: Some(Gauge::Level),
    capacity: false,
    test: "With no flow measure from the top of the wall to the water and compare with the crest on the drawing; mark it, and look again after a night: one that goes on falling leaks.",
    cost: 1,
    settles: 1,
    remedy: "Close the drain, mend the leak, set the outlet to its level; fill up with clean water to the crest before oil is let in.",
};

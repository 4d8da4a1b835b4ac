//! Cause: colder water than assumed

use super::{Cause, Id, Measured, Size};
use stillrise_units::catalog::K;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::ColderWater,
    title: "Colder water than assumed",
    how: "Cold water is thicker and lets droplets rise slower.",
    often: 0.04,
    size: Some(Size {
        label: "water colder than assumed by",
        units: (&K, &K),
        low: 1.0,
        likely: 5.0,
        high: 15.0,
        least: 0.1,
        most: 30.0,
    }),
    act: |s, x| s.colder += x,
    settled_by: &[Measured::Temperature],
    looks: Some([0.4, 0.45, 0.1, 0.05]),
    jar: Some([0.5, 0.4, 0.1]),
    alarm: None,
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: true,
    test: "Read a thermometer in the inlet chamber on the coldest morning.",
    cost: 1,
    settles: 1,
    remedy: "Lag or bury the feed, or size for the cold.",
};

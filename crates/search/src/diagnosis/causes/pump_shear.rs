//! Cause: a pump ahead breaks the droplets

use super::{Cause, Id, Measured, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::PumpShear,
    title: "A pump ahead breaks the droplets",
    how: "A centrifugal or submersible pump, or a throttled valve, leaves droplets that rise too slowly.",
    often: 0.14,
    size: Some(Size {
        label: "median droplet over the usual one",
        units: (&ONE, &ONE),
        low: 0.1,
        likely: 0.35,
        high: 0.8,
        least: 0.01,
        most: 1.0,
    }),
    act: |s, x| s.median *= x,
    settled_by: &[Measured::NoPump],
    looks: Some([0.1, 0.5, 0.35, 0.05]),
    jar: Some([0.1, 0.65, 0.25]),
    alarm: None,
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: true,
    test: "Take a jar ahead of the pump and one behind it at the same minute, and watch both stand.",
    cost: 2,
    settles: 1,
    remedy: "A gentle positive-displacement pump, a slower one, or a sump from which the oil is taken before the pump.",
};

//! Cause: more oil arrives than assumed

use super::{Cause, Id, Measured, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::StrongerInfluent,
    title: "More oil arrives than assumed",
    how: "A spill, a leaking machine or a drain nobody knew of.",
    often: 0.1,
    size: Some(Size {
        label: "oil that arrives over the usual",
        units: (&ONE, &ONE),
        low: 1.2,
        likely: 2.5,
        high: 10.0,
        least: 1.0,
        most: 100.0,
    }),
    act: |s, x| s.influent *= x,
    settled_by: &[Measured::OilIn],
    looks: Some([0.35, 0.35, 0.1, 0.2]),
    jar: Some([0.55, 0.35, 0.1]),
    alarm: Some([0.35, 0.1, 0.5, 0.05]),
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: true,
    test: "Sample the inlet at the same time as the outlet.",
    cost: 3,
    settles: 3,
    remedy: "Find and stop the source; keep drip pans and bunds dry.",
};

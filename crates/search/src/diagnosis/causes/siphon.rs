//! Cause: the outlet siphons, its vent or the open top of its drop leg lost

use super::{Cause, Gauge, Id, Size};
use stillrise_units::catalog::MG_L;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::Siphon,
    title: "The outlet siphons: vent or drop leg lost",
    how: "A drop leg that runs full with its vent closed or missing draws the clear well below its crest, and pulls stored oil under the lip; so does a drop leg whose open top was capped or whose lower part broke off.",
    often: 0.05,
    size: Some(Size {
        label: "oil carried under the lip",
        units: (&MG_L, &MG_L),
        low: 0.02,
        likely: 0.1,
        high: 2.0,
        least: 0.001,
        most: 50.0,
    }),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.25, 0.15, 0.05, 0.55]),
    jar: Some([0.8, 0.15, 0.05]),
    alarm: Some([0.35, 0.1, 0.15, 0.4]),
    taken: None,
    backed_up: 0.0,
    gauge: Some(Gauge::Level),
    capacity: false,
    test: "Watch the level when the flow is at its peak and after it stops: one that falls below the crest and comes back with a gulp means a siphon. Look whether the vent at the high point is there and open, and whether the drop leg is whole; hold a paper to the vent, it is drawn in.",
    cost: 1,
    settles: 1,
    remedy: "Open or renew the vent at the high point, at least a quarter of the bore and 2 in; mend the drop leg and leave its top open; then fill up with clean water before oil is let in.",
};

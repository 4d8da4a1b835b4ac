//! Cause: more water than the unit was sized for

use super::{Cause, Id, Measured, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::FlowAboveDesign,
    title: "More water than the unit was sized for",
    how: "A second pump, an open hydrant or roof water brings a higher flow; plates pass what they were to catch.",
    often: 0.15,
    size: Some(Size {
        label: "flow over that of the case",
        units: (&ONE, &ONE),
        low: 1.1,
        likely: 1.8,
        high: 4.0,
        least: 1.0,
        most: 20.0,
    }),
    act: |s, x| s.flow *= x,
    settled_by: &[Measured::Flow],
    looks: Some([0.25, 0.45, 0.15, 0.15]),
    jar: Some([0.6, 0.35, 0.05]),
    alarm: None,
    taken: None,
    backed_up: 0.25,
    gauge: None,
    capacity: true,
    test: "Time the draw-down of the sump for each pump, then for both; or read a bucket and a watch at the outlet.",
    cost: 2,
    settles: 1,
    remedy: "Run the pumps slower or interlock them, or equalise ahead; a throttled valve would break the oil.",
};

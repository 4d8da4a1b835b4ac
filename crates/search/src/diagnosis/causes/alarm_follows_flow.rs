//! Cause: the alarm follows the flow, not the oil

use super::{Cause, Id};

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::AlarmFollowsFlow,
    title: "The alarm follows the flow, not the oil",
    how: "Flow lifts the water and the interface with it: a high-level float sounds when the wash begins, one hung close to the interface when the level falls back at its end; a jet at the inlet rocks either.",
    often: 0.03,
    size: None,
    act: |_, _| {},
    settled_by: &[],
    looks: None,
    jar: None,
    alarm: Some([0.03, 0.02, 0.1, 0.85]),
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Note the time of each alarm and gauge the oil then; start the wash by hand and watch float and level: an alarm that comes with the flow and without oil is this.",
    cost: 1,
    settles: 1,
    remedy: "Set the float from the level at full flow, delay the alarm by a minute or two, and put a baffle between jet and float.",
};

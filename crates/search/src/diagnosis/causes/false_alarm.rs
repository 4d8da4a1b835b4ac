//! Cause: the float is wrong, the water is not

use super::{Cause, Id};

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::FalseAlarm,
    title: "The float is wrong, the water is not",
    how: "A float of the wrong density, fouled, or set against a level that moves with the flow sounds without oil.",
    often: 0.05,
    size: None,
    act: |_, _| {},
    settled_by: &[],
    looks: None,
    jar: None,
    alarm: Some([0.1, 0.2, 0.05, 0.65]),
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Lift the float by hand in clear water, let it go, and read its density off its plate.",
    cost: 1,
    settles: 1,
    remedy: "A float heavier than the oil and lighter than the water, set from the level at full flow.",
};

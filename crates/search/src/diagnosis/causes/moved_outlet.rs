//! Cause: the outlet stands at another level than the unit was laid out for

use super::low_level::CARRIED;
use super::{Cause, Id, Size};

/// See the head line. Only a change of the outlet brings it about, so that it is never one of the generic causes.
pub(super) static CAUSE: Cause = Cause {
    id: Id::MovedOutlet,
    title: "The water stands at another level, with the outlet",
    how: "An outlet set higher backs the water up: the inlet drowns, freeboard is lost, oil may go over the baffle that holds it, the pipe behind may run full, and interface and alarm float stand at another height; one set lower brings the interface to the lip and lays plates dry.",
    often: 0.0,
    size: Some(Size { label: "oil carried past the baffle", ..CARRIED }),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.35, 0.15, 0.05, 0.45]),
    jar: Some([0.8, 0.15, 0.05]),
    alarm: Some([0.2, 0.05, 0.15, 0.6]),
    taken: None,
    backed_up: 0.5,
    gauge: None,
    capacity: false,
    test: "Say the old and the new level of the outlet above the floor of the unit. With no flow measure from the top of the wall to the water and compare with the crest on the drawing; look whether water stands in the inlet pipe or over the baffle, and whether the pipe behind the outlet runs full.",
    cost: 1,
    settles: 1,
    remedy: "Set the outlet back to the level that inlet, baffle and plates were made for; where it has to stay, bring inlet, baffle, walls, draw-off and float to the new level.",
};

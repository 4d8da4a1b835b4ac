//! Cause: the outlet siphons

use super::{Cause, Size};
use stillrise_units::catalog::MG_L;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: "siphon",
    title: "The outlet siphons",
    how: "An outlet pipe that runs full without a vent draws the level down and pulls stored oil under the lip.",
    often: 0.05,
    size: Some(Size {
        label: "oil carried under the lip",
        units: (&MG_L, &MG_L),
        low: 0.02,
        likely: 0.1,
        high: 2.0,
    }),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.25, 0.15, 0.05, 0.55]),
    jar: Some([0.8, 0.15, 0.05]),
    alarm: Some([0.35, 0.1, 0.15, 0.4]),
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Watch the level after the pumps stop: below the crest means a siphon. See whether the vent is there and open.",
    cost: 1,
    remedy: "A vent at the high point of the outlet, as large as half its bore.",
};

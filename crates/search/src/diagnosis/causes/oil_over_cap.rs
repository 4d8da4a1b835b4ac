//! Cause: oil over its thickest permitted layer

use super::{Cause, Gauge, Id, Size};
use stillrise_units::catalog::MG_L;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::OilOverCap,
    title: "Oil over its thickest permitted layer",
    how: "A layer deeper than is permitted reaches into the plates or is drawn under the downcomer's lip, and leaves in slugs.",
    often: 0.1,
    size: Some(Size {
        label: "oil carried out of the layer",
        units: (&MG_L, &MG_L),
        low: 0.02,
        likely: 0.2,
        high: 5.0,
        least: 0.001,
        most: 50.0,
    }),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.1, 0.1, 0.05, 0.75]),
    jar: Some([0.85, 0.1, 0.05]),
    alarm: Some([0.1, 0.45, 0.4, 0.05]),
    taken: None,
    backed_up: 0.05,
    gauge: Some(Gauge::OilLayer),
    capacity: false,
    test: "Gauge the layer with water-finding paste or a clear tube, and compare it with the cap on the drawing.",
    cost: 1,
    settles: 1,
    remedy: "Pump the oil out now; then mend the alarm and shorten the interval.",
};

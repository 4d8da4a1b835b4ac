//! Cause: droplets finer than assumed, without a pump

use super::{Cause, Id, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::FinerDroplets,
    title: "Droplets finer than assumed, without a pump",
    how: "Pressure washing, long steep drains or fine spray leave finer droplets than the design assumed.",
    often: 0.1,
    size: Some(Size {
        label: "median droplet over the usual one",
        units: (&ONE, &ONE),
        low: 0.15,
        likely: 0.5,
        high: 0.9,
        least: 0.01,
        most: 1.0,
    }),
    act: |s, x| s.median *= x,
    settled_by: &[],
    looks: Some([0.2, 0.5, 0.25, 0.05]),
    jar: Some([0.2, 0.65, 0.15]),
    alarm: None,
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: true,
    test: "Have the droplets at the inlet measured, or time how long a jar of the influent takes to clear.",
    cost: 3,
    settles: 2,
    remedy: "More plate area or a mesh; less pressure at the nozzles.",
};

//! Cause: the sample was dipped from the surface

use super::{Cause, Id, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::SurfaceSample,
    title: "The sample was dipped from the surface",
    how: "A bottle that breaks the surface takes the film with it: a result for the film, higher than what leaves.",
    often: 0.04,
    size: Some(Size {
        label: "measured over true oil",
        units: (&ONE, &ONE),
        low: 1.3,
        likely: 3.0,
        high: 15.0,
        least: 1.0,
        most: 100.0,
    }),
    act: |s, x| s.bias *= x,
    settled_by: &[],
    looks: Some([0.45, 0.15, 0.05, 0.35]),
    jar: Some([0.75, 0.15, 0.1]),
    alarm: None,
    taken: Some([0.02, 0.02, 0.92, 0.02, 0.02]),
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Ask who took it, where and how; take two at the same minute, one from the falling stream, one from the surface: if only the second is high, it was the sample.",
    cost: 1,
    settles: 1,
    remedy: "Grab from the falling stream or from mid-depth, bottle filled once, not rinsed, not decanted, the whole of it extracted; a tee with its mouth below the surface makes that easy.",
};

//! Cause: the mesh is blocked

use super::{Cause, Id, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::FouledMesh,
    title: "The mesh is blocked",
    how: "Grit, wax or growth blinds the mesh; the water rises ahead of it and finds a way round.",
    often: 0.07,
    size: Some(Size {
        label: "median droplet that the way round lets pass, over the usual one",
        units: (&ONE, &ONE),
        low: 0.5,
        likely: 0.8,
        high: 0.99,
        least: 0.1,
        most: 1.0,
    }),
    act: |s, x| s.median *= x,
    settled_by: &[],
    looks: Some([0.4, 0.4, 0.1, 0.1]),
    jar: Some([0.6, 0.3, 0.1]),
    alarm: Some([0.5, 0.05, 0.1, 0.35]),
    taken: None,
    backed_up: 0.85,
    gauge: None,
    capacity: false,
    test: "Compare the level ahead of the mesh with the level behind it at full flow.",
    cost: 1,
    settles: 1,
    remedy: "Lift and wash the mesh, renew it; finer solids kept out ahead.",
};

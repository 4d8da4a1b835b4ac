//! Cause: oil in solution: petrol, solvent, light aromatics

use super::{Cause, Id, Size};
use stillrise_units::catalog::MG_L;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::DissolvedOil,
    title: "Oil in solution: petrol, solvent, light aromatics",
    how: "Light products dissolve to tens of mg/L and pass any separator; the water is clear and smells.",
    often: 0.06,
    size: Some(Size {
        label: "dissolved oil",
        units: (&MG_L, &MG_L),
        low: 0.005,
        likely: 0.02,
        high: 0.1,
        least: 0.000_1,
        most: 5.0,
    }),
    act: |s, x| s.dissolved = s.dissolved.max(x),
    settled_by: &[],
    looks: Some([0.85, 0.1, 0.03, 0.02]),
    jar: Some([0.05, 0.05, 0.9]),
    alarm: None,
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Filter a sample through 0.45 µm and have the filtrate analysed: what is still found is dissolved.",
    cost: 3,
    settles: 5,
    remedy: "Adsorption or stripping behind the separator; find and stop the solvent.",
};

//! Cause: oil emulsified by soap, coolant or surfactant

use super::{Cause, Id, Size};
use stillrise_units::catalog::PERCENT;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::Emulsion,
    title: "Oil emulsified by soap, coolant or surfactant",
    how: "Soluble coolant, degreaser or a foaming soap holds oil in droplets too fine to rise, and keeps them from joining.",
    often: 0.22,
    size: Some(Size {
        label: "emulsified share of the oil",
        units: (&PERCENT, &PERCENT),
        low: 0.05,
        likely: 0.3,
        high: 0.9,
        least: 0.001,
        most: 0.99,
    }),
    act: |s, x| s.emulsified = s.emulsified.max(x),
    settled_by: &[],
    looks: Some([0.1, 0.25, 0.6, 0.05]),
    jar: Some([0.05, 0.2, 0.75]),
    alarm: None,
    taken: None,
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Let a jar of the influent stand for a day beside one with its pH brought to 2: what clears only with the acid is emulsified.",
    cost: 2,
    settles: 5,
    remedy: "Where a product makes it, keep it out of the drain or change to one that releases oil; else treat chemically. A larger separator does not touch it.",
};

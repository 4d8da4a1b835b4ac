//! What plate units are published to reach, and what counts as free oil. Bounds of promise, not
//! results: below the floor a report says "at or below the published floor".

use crate::page::Source;
use crate::sources::{FOAM_BEDS, MIL_1005_9A, UFGS_PLATES};
use stillrise_units::catalog::{M_H, MG_L, UM};
use stillrise_units::{Concentration, Length, Ratio, Typed, Velocity, ratio};

/// A published figure and where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Published<T> {
    /// The figure.
    pub value: T,
    /// Under which conditions, in words for the report.
    pub condition: &'static str,
    /// Its source.
    pub source: &'static Source,
}

/// Practical floor of the effluent of a parallel-plate unit: 10 mg/L.
#[must_use]
pub fn plate_floor() -> Published<Concentration> {
    Published {
        value: Concentration::of(10.0, &MG_L),
        condition: "practical floor of a parallel-plate unit under ideal conditions",
        source: &UFGS_PLATES,
    }
}

/// Usual effluent of a plate unit, lower and upper bound: 10 to 50 mg/L.
#[must_use]
pub fn plate_range() -> Published<(Concentration, Concentration)> {
    Published {
        value: (Concentration::of(10.0, &MG_L), Concentration::of(50.0, &MG_L)),
        condition: "effluent of an induced-gravity (plate) separator",
        source: &MIL_1005_9A,
    }
}

/// Smallest droplet that is called free oil: larger than 20 µm.
#[must_use]
pub fn free_droplet() -> Published<Length> {
    Published {
        value: Length::of(20.0, &UM),
        condition: "free oil: droplets larger than this, of a specific gravity up to 0.95",
        source: &UFGS_PLATES,
    }
}

/// Heaviest oil that is called free oil: specific gravity 0.95.
#[must_use]
pub fn free_gravity() -> Published<Ratio> {
    Published {
        value: ratio(0.95),
        condition: "free oil: specific gravity up to this, droplets larger than 20 µm",
        source: &UFGS_PLATES,
    }
}

/// Fastest water on the face of a coalescing bed in a published test: 45 m/h.
#[must_use]
pub fn fastest_bed() -> Published<Velocity> {
    Published {
        value: Velocity::of(45.0, &M_H),
        condition: "beds of foam chips of 3 to 15 cm, droplets of 20 µm on average: 10 to 45 m/h; caught less the faster",
        source: &FOAM_BEDS,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_range_starts_at_the_floor() {
        assert_eq!(plate_floor().value, plate_range().value.0);
        assert!(plate_range().value.1 > plate_range().value.0);
        assert_eq!(plate_floor().value.in_unit(&MG_L), 10.0);
    }
}

//! Manways and their risers: how a closed vessel is reached, and what comes out through them.

use crate::enquiry::fields::Count;
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Trail, given};
use crate::record;
use crate::train::row::{DIMENSION, Row};
use stillrise_units::catalog::{IN, MM, ONE};
use stillrise_units::{Length, Ratio, Typed, ratio};

keys! {
    /// Keys of the manways.
    AccessKeys "model" {
        /// Number of manways of a closed vessel
        count as "manways": Count = spec.like("2");
        /// Clear opening of a manway
        opening as "manway": Quantity<Length> = spec.units(&IN, &MM).between("12 in", "120 in").like("\"36 in\"");
    }
}

record! {
    /// The manways of a closed vessel, all alike, each with a riser up to the ground.
    Access {
        /// how many
        count: Ratio;
        /// clear opening of each
        opening: Length;
    }
}

impl Access {
    /// As a row or a described unit lays it out.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Self {
        let m = row.m;
        let count = m.access.count.0.unwrap_or(2);
        let why = if m.access.count.0.is_some() {
            "manways"
        } else {
            "not stated: one over the inlet, one over the outlet end"
        };
        let count = given(row.t, "manways", Some((&ONE, &ONE)), ratio(f64::from(count)), row.source, why);
        let usual = Length::of(24.0, &IN);
        let why = "not stated: {24 in|610 mm}, the least for a person, common practice";
        Self { count, opening: row.or_usual("clear opening of a manway", DIMENSION, &m.access.opening, usual, why) }
    }
}

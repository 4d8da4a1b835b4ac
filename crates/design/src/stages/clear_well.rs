//! Compartment: the clear well behind the downcomer, up to the outlet.

use super::Place;
use super::stage::Stage;
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Stop, Trail, Val};
use crate::record;
use crate::train::row::Row;
use stillrise_units::Length;
use stillrise_units::catalog::{IN, MM};

keys! {
    /// Keys of the clear well.
    ClearWellKeys "model" {
        /// Length of the clear well behind the downcomer baffle
        length as "well_length": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"10 in\"")
            .asks("How long is the clear well behind the downcomer baffle?")
            .found("its share of the length that is left");
    }
}

record! {
    /// The clear well.
    ClearWell {
        /// length of the clear well
        length: Length;
    }
}

impl ClearWell {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where its length is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { length: row.need("length of the clear well", m.stages.clear_well.length())? })
    }
}

impl Stage for ClearWell {
    fn name(&self) -> &'static str {
        "clear well"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::ClearWell, self.length))
    }
}

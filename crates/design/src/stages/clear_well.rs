//! Compartment: the clear well behind the downcomer, up to the outlet.

use super::Place;
use super::stage::Stage;
use crate::provenance::{Stop, Trail, Val};
use crate::record;
use crate::train::row::Row;
use stillrise_units::Length;

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
        Ok(Self { length: row.need("length of the clear well", m.well_length())? })
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

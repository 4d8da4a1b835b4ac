//! Compartment: the chamber behind the inlet nozzle, where the jet of the incoming water is broken.

use crate::provenance::{Stop, Trail};
use crate::record;
use crate::train::row::Row;
use stillrise_units::Length;

record! {
    /// The inlet chamber.
    InletChamber {
        /// length of the inlet chamber
        length: Length;
    }
}

impl InletChamber {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where its length is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { length: row.need("length of the inlet chamber", m.inlet_length())? })
    }
}

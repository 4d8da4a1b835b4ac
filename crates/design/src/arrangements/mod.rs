//! The arrangements of a unit, one a file: which body, which stages, from which keys.

mod open_tank;
mod plate_tank;

use crate::enquiry::range::PackWord;
use crate::provenance::{Stop, Trail};
use crate::train::row::Row;
use crate::train::unit::Parts;

/// The parts of a unit as a row or a described unit lays it out.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub fn parts<T: Trail>(row: &mut Row<'_, T>) -> Result<Parts, Stop> {
    match row.m.pack.0 {
        Some(PackWord::None) => open_tank::parts(row),
        _ => plate_tank::parts(row),
    }
}

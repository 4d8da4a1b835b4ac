//! Arrangement: a long basin of parallel channels, open, built into the ground, without plates: the basin of API 421.
//!
//! The channels share the flow and are laid out as one tank of their width together, walls between them left out.

use super::Own;
use crate::provenance::{Stop, Trail};
use crate::reckon;
use crate::stages::channels::Channels;
use crate::stages::clear_well::ClearWell;
use crate::stages::diffusion_baffle::DiffusionBaffle;
use crate::stages::downcomer::Downcomer;
use crate::stages::hopper::Hopper;
use crate::stages::inlet_chamber::InletChamber;
use crate::stages::retention::Retention;
use crate::train::row::Row;
use crate::train::unit::Parts;
use crate::vessel::{Body, Rectangular};

/// What it says of itself.
pub(super) const OWN: Own = Own {
    needed: &[
        "length",
        "width",
        "height",
        "outlet_invert",
        "outlet_pipe",
        "inlet_invert",
        "inlet_pipe",
        "inlet_length",
        "well_length",
        "lip",
    ],
    in_ground: false,
    built_in: true,
    cylinder: false,
    plates: false,
};

/// Its parts.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub fn parts<T: Trail>(row: &mut Row<'_, T>) -> Result<Parts, Stop> {
    let m = row.m;
    let length = row.need("inside length", &m.length)?;
    let channels = Channels::laid(row)?;
    let width = reckon!(row.t, "width of all channels together", [FT, M], (width = channels.width, n = channels.count) width * n);
    let height = row.need("height of the walls", &m.height)?;
    let body = Body::Rectangular(Rectangular { length, width, height });
    let inlet = InletChamber::laid(row)?;
    let baffle = Some(DiffusionBaffle::laid(row));
    let hopper = Hopper::laid(row, &body)?;
    let well = ClearWell::laid(row, &body)?;
    let retention = Retention::laid(row, well.crest.q, false)?;
    let downcomer = Downcomer::laid(row)?;
    Ok(Parts {
        channels: Some(channels),
        sand_trap: None,
        pump_out: None,
        access: None,
        body,
        inlet,
        baffle,
        hopper,
        pack: None,
        mesh: None,
        retention,
        downcomer,
        well,
    })
}

//! Arrangement: a rectangular tank above the ground, with plates and mesh.

use super::Own;
use crate::provenance::{Stop, Trail};
use crate::stages::clear_well::ClearWell;
use crate::stages::diffusion_baffle::DiffusionBaffle;
use crate::stages::downcomer::Downcomer;
use crate::stages::hopper::Hopper;
use crate::stages::inlet_chamber::InletChamber;
use crate::stages::mesh::CoalescingMesh;
use crate::stages::plate_pack;
use crate::stages::pump_out::PumpOut;
use crate::stages::retention::Retention;
use crate::stages::sand_trap::SandTrap;
use crate::train::row::Row;
use crate::train::unit::Parts;
use crate::vessel::Body;

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
        "pack_length",
        "pack_height",
        "pack_bottom",
        "gap",
        "angle",
        "retention_length",
        "well_length",
        "lip",
    ],
    in_ground: false,
    built_in: false,
    cylinder: false,
    plates: true,
};

/// Its parts.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub fn parts<T: Trail>(row: &mut Row<'_, T>) -> Result<Parts, Stop> {
    let sand_trap = SandTrap::laid(row)?;
    let pump_out = PumpOut::laid(row)?;
    let body = Body::rectangular(row, sand_trap.as_ref(), pump_out.as_ref())?;
    let inlet = InletChamber::laid(row)?;
    let baffle = Some(DiffusionBaffle::laid(row));
    let hopper = Hopper::laid(row, &body)?;
    let pack = Some(plate_pack::Dimensions::laid(row)?);
    let mesh = CoalescingMesh::laid(row);
    let well = ClearWell::laid(row, &body)?;
    let retention = Retention::laid(row, well.crest.q, true)?;
    let downcomer = Downcomer::laid(row)?;
    Ok(Parts {
        channels: None,
        sand_trap,
        pump_out,
        access: None,
        body,
        inlet,
        baffle,
        hopper,
        pack,
        mesh,
        retention,
        downcomer,
        well,
    })
}

//! The one way in which an arrangement is composed: its body, and the stages that a row describes or its arrangement asks for.

use super::{Form, Own};
use crate::provenance::{Stop, Trail};
use crate::stages::access::Access;
use crate::stages::channels::Channels;
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

/// Keys without which none can be laid out.
const ALWAYS: &[&str] =
    &["length", "outlet_invert", "outlet_pipe", "inlet_invert", "inlet_pipe", "inlet_length", "well_length", "lip"];
/// Those of plates, behind which oil has a zone of its own.
const OF_PLATES: &[&str] = &["pack_length", "pack_height", "pack_bottom", "gap", "angle", "retention_length"];

/// Keys without which an arrangement cannot be laid out.
pub(super) fn needed(own: &Own) -> impl Iterator<Item = &'static str> {
    let body: &[&str] = match own.form {
        Form::Tank | Form::Channels => &["width", "height"],
        Form::Lying => &["diameter"],
    };
    let plates = if own.plates { OF_PLATES } else { &[] };
    ALWAYS.iter().chain(body).chain(plates).copied()
}

/// The parts of an arrangement as a row or a described unit lays them out.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub(super) fn parts<T: Trail>(own: &Own, row: &mut Row<'_, T>) -> Result<Parts, Stop> {
    let sand_trap = SandTrap::laid(row)?;
    let pump_out = PumpOut::laid(row)?;
    let channels = if own.form == Form::Channels { Some(Channels::laid(row)?) } else { None };
    let options = (sand_trap.as_ref(), pump_out.as_ref());
    let body = match own.form {
        Form::Tank | Form::Channels => Body::rectangular(row, channels.as_ref(), options)?,
        Form::Lying => Body::lying(row, options)?,
    };
    let access = (!body.is_open()).then(|| Access::laid(row));
    let inlet = InletChamber::laid(row)?;
    let baffle = Some(DiffusionBaffle::laid(row));
    // Below a round floor there is none.
    let hopper = if body.is_open() { Hopper::laid(row, &body)? } else { None };
    let pack = if own.plates { Some(plate_pack::Dimensions::laid(row)?) } else { None };
    let mesh = if own.plates { CoalescingMesh::laid(row) } else { None };
    let well = ClearWell::laid(row, &body)?;
    let retention = Retention::laid(row, well.crest.q, own.plates)?;
    let downcomer = Downcomer::laid(row)?;
    Ok(Parts {
        channels,
        sand_trap,
        pump_out,
        access,
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

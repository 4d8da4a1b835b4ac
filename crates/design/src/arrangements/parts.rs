//! The one way in which an arrangement is composed: its body, and the stages that a row describes or its arrangement asks for.

use super::{Form, Own};
use crate::provenance::{Stop, Trail};
use crate::stages::Stages;
use crate::stages::access::Access;
use crate::stages::channels::Channels;
use crate::stages::clear_well::ClearWell;
use crate::stages::diffusion_baffle::DiffusionBaffle;
use crate::stages::dip_pipe::DipPipe;
use crate::stages::downcomer::Downcomer;
use crate::stages::gravity_zone::GravityZone;
use crate::stages::hopper::Hopper;
use crate::stages::inlet::Inlet;
use crate::stages::inlet_bend::InletBend;
use crate::stages::inlet_chamber::InletChamber;
use crate::stages::mesh::CoalescingMesh;
use crate::stages::outlet::Outlet;
use crate::stages::outlet_baffle::OutletBaffle;
use crate::stages::plate_pack::{Dimensions, PlatePack};
use crate::stages::pump_out::PumpOut;
use crate::stages::retention::Retention;
use crate::stages::sand_trap::SandTrap;
use crate::stages::underflow::Underflow;
use crate::train::row::Row;
use crate::train::unit::Parts;
use crate::vessel::Body;

/// Keys without which none can be laid out.
const ALWAYS: &[&str] = &["outlet_invert", "outlet_pipe", "inlet_invert", "inlet_pipe", "lip"];
/// Those of walls across the flow.
const OF_WALLS: &[&str] = &["length", "inlet_length", "well_length"];
/// Those of plates, behind which oil has a zone of its own.
const OF_PLATES: &[&str] = &["pack_length", "pack_height", "pack_bottom", "gap", "angle", "retention_length"];

/// Keys without which an arrangement cannot be laid out.
pub(super) fn needed(own: &Own) -> impl Iterator<Item = &'static str> {
    let body: &[&str] = match own.form {
        Form::Tank | Form::Channels => &["width", "height"],
        Form::Lying => &["diameter"],
        Form::Upright => &["diameter", "height", "inlet_mouth"],
    };
    let walls = if own.form == Form::Upright { &[] } else { OF_WALLS };
    let plates = if own.plates { OF_PLATES } else { &[] };
    ALWAYS.iter().chain(walls).chain(body).chain(plates).copied()
}

/// The parts of an arrangement as a row or a described unit lays them out.
///
/// # Errors
/// [`Stop`] naming the dimension that is missing.
pub(super) fn parts<T: Trail>(own: &Own, row: &mut Row<'_, T>) -> Result<Parts, Stop> {
    let (sand_trap, pump_out) = (SandTrap::laid(row)?, PumpOut::laid(row)?);
    if own.form == Form::Upright && (sand_trap.is_some() || pump_out.is_some()) {
        return Err(
            row.stop("an upright cylinder has neither sand nor pump-out compartment; they are chambers of their own")
        );
    }
    let channels = if own.form == Form::Channels { Some(Channels::laid(row)?) } else { None };
    let options = (sand_trap.as_ref(), pump_out.as_ref());
    let body = match own.form {
        Form::Tank | Form::Channels => Body::rectangular(row, channels.as_ref(), options)?,
        Form::Lying => Body::lying(row, options)?,
        Form::Upright => Body::upright(row)?,
    };
    let walls = own.form != Form::Upright;
    let access = (!body.is_open()).then(|| Access::laid(row));
    let inlet = Inlet::laid(row)?;
    let inlet_chamber = if walls { Some(InletChamber::laid(row)?) } else { None };
    let inlet_bend = if walls { None } else { Some(InletBend::laid(row)?) };
    // Below a round floor there is none.
    let hopper = if body.is_open() { Hopper::laid(row, &body)? } else { None };
    let baffle = inlet_chamber.as_ref().map(|chamber| DiffusionBaffle::laid(row, chamber, hopper.as_ref()));
    let pack = if own.plates { Some(Dimensions::laid(row)?) } else { None };
    let pack = pack.map(|laid| PlatePack::new(row.t, laid, &body)).transpose()?;
    let mesh = CoalescingMesh::laid(row);
    if mesh.is_some() && !own.plates {
        return Err(row.stop("a mesh stands behind plates, and there are none; leave mesh out"));
    }
    let outlet_baffle = OutletBaffle::laid(row)?;
    let clear_well = if walls { Some(ClearWell::laid(row)?) } else { None };
    let outlet = Outlet::laid(row, &body)?;
    let retention = Retention::laid(row, outlet.crest.q, own.plates)?;
    let underflow = if walls {
        Underflow::Downcomer(Downcomer::laid(row)?)
    } else {
        Underflow::DipPipe(DipPipe::laid(row, &outlet)?)
    };
    let stages = Stages {
        inlet,
        inlet_bend,
        sand_trap,
        inlet_chamber,
        baffle,
        hopper,
        open_water: GravityZone,
        pack,
        mesh,
        outlet_baffle,
        retention,
        underflow,
        clear_well,
        pump_out,
        outlet,
    };
    Ok(Parts { body, channels, access, stages })
}

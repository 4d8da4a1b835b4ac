//! The one way in which an arrangement is composed: its body, and the stages that a row describes or its arrangement asks for.

use super::{Form, Own};
use crate::provenance::{Stop, Trail};
use crate::stages::access::Access;
use crate::stages::channels::Channels;
use crate::stages::plate_pack::PackWord;
use crate::stages::{Ends, Stages};
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
    let ends = Ends::laid(row)?;
    if own.form == Form::Upright && ends.is_taken() {
        return Err(
            row.stop("an upright cylinder has neither sand nor pump-out compartment; they are chambers of their own")
        );
    }
    // One with a sister without plates was taken for that already; of another nothing is worked as if they were there.
    if own.plates && row.m.stages.pack.is_there.0 == Some(PackWord::None) {
        return Err(row.stop("it is stated to have no pack, and its arrangement is one with plates"));
    }
    let channels = if own.form == Form::Channels { Some(Channels::laid(row)?) } else { None };
    let body = match own.form {
        Form::Tank | Form::Channels => Body::rectangular(row, channels.as_ref(), &ends)?,
        Form::Lying => Body::lying(row, &ends)?,
        Form::Upright => Body::upright(row)?,
    };
    let access = (!body.is_open()).then(|| Access::laid(row));
    let stages = Stages::laid(row, &body, ends, own.form != Form::Upright, own.plates)?;
    Ok(Parts { body, channels, access, stages })
}

//! Manuals of a single equation: volume for a residence time, surface for an overflow rate, detention of a guide
//! specification.

use super::shape::{by_depth, droplet};
use super::{Asked, Fluids, Inputs, Worksheet, lacks};
use crate::basis::stated::{stated, stated_or_usual};
use crate::by;
use crate::provenance::{Stop, Trail, Val, given};
use crate::say;
use stillrise_handbook::separation::{detention_volume, plate_area, residence_volume, stokes_rise};
use stillrise_handbook::sources::UFGS_PLATES;
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Flow, Length, Ratio, Typed, Velocity};

/// Rise velocity that the manual prints, or that of the droplet it designs for.
fn rise<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<Val<Velocity>, Stop> {
    if let Some(rise) = stated(t, of.w, "rise velocity that the manual prints", &of.block.rise) {
        return Ok(sheet.term("V_t", rise));
    }
    let d = stated_or_usual(t, of.w, of.block.droplet(), "design droplet of the manual");
    rise_of(t, sheet, d, of.fluids())
}

pub(super) fn rise_of<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    d: Val<Length>,
    fluids: Fluids,
) -> Result<Val<Velocity>, Stop> {
    let d = sheet.term("D", d);
    let rise = by!(t, "rise of the design droplet", stokes_rise::rise(d, fluids.water, fluids.oil, fluids.viscosity))?;
    Ok(sheet.term("V_t", rise))
}

/// Volume as flow times time: the time that the manual asks for, else that of the droplet through the depth.
pub(super) fn residence_time<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let flow = sheet.take("Q", of.flow()?);
    let volume = match stated(t, of.w, "residence time that the manual asks for", &of.block.residence) {
        Some(time) => {
            let time = sheet.term("t", time);
            sheet.term("V", by!(t, "volume of the water", residence_volume::volume(flow, time))?)
        }
        None => {
            let rise = rise(t, sheet, of)?;
            let depth = stated_or_usual(t, of.w, of.block.depth(), "depth of the water by the manual");
            let depth = sheet.term("d", depth);
            by_depth(t, sheet, flow, depth, rise)?
        }
    };
    sheet.asked.push(Asked::Water(volume));
    Ok(())
}

/// Surface as flow over rise velocity.
pub(super) fn overflow_rate<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let flow = sheet.take("Q", of.flow()?);
    let rise = rise(t, sheet, of)?;
    surface(t, sheet, flow, rise)
}

pub(super) fn surface<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    flow: Val<Flow>,
    rise: Val<Velocity>,
) -> Result<(), Stop> {
    let area =
        sheet.term("A", by!(t, "surface, of open water or of plates as projected", plate_area::area(flow, rise))?);
    sheet.asked.extend([Asked::Surface(area), Asked::PlateArea(area)]);
    Ok(())
}

/// US guide specifications: droplets of 20 µm on plates, a detention in four fifths of the volume.
pub(super) fn guide_specification<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let source = say!(T, "{UFGS_PLATES}");
    let fluids = of.fluids();
    let flow = sheet.take("Q", of.flow()?);
    let d = droplet(t, sheet, 20.0, &source);
    let rise = by!(t, "rise of the design droplet", stokes_rise::rise(d, fluids.water, fluids.oil, fluids.viscosity))?;
    let rise = sheet.term("V_t", rise);
    let plates = sheet.term("A_p", by!(t, "projected plate area", plate_area::area(flow, rise))?);
    sheet.asked.push(Asked::PlateArea(plates));
    sheet.remarks.push(
        "The specification asks for the removal of all free oil of 20 µm and more and prints no equation: the area is that of Stokes' law at that droplet.",
    );
    let key = of.block.residence();
    let Some(time) = stated(t, of.w, "detention that is asked for", &of.block.residence) else {
        sheet.miss(&key);
        return Err(lacks("which detention the specification of this job asks for"));
    };
    let time = sheet.term("t", time);
    let share = Ratio::of(20.0, &PERCENT);
    let share =
        given(t, "share taken off for stored solids and oil", Some((&PERCENT, &PERCENT)), share, &source, "20 %");
    let share = sheet.term("r", share);
    let volume = by!(t, "volume of the separation zone", detention_volume::volume(flow, time, share))?;
    let volume = sheet.term("V", volume);
    sheet.asked.push(Asked::Water(volume));
    Ok(())
}

//! The shell of a cylinder in the ground, empty, against the water outside: preliminary.

use super::flotation::backfill;
use super::installation::Installation;
use crate::basis::Basis;
use crate::basis::stated::stated;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, WhatIf, given};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, reckon, record, say};
use stillrise_handbook::ground::ground_pressure;
use stillrise_handbook::shop::cylinder_collapse::{self, CollapseLaw};
use stillrise_handbook::shop::strengths::{Metal, STRENGTHS, Strength};
use stillrise_units::catalog::{FT, KPA, M, ONE, PSI};
use stillrise_units::{Length, Pressure, Ratio, Typed, ratio};

record! {
    /// The empty shell.
    Shell {
        /// thickness
        wall: Length;
        /// pressure of the water outside, at its lowest line
        outside: Pressure;
        /// pressure at which it would collapse
        collapse: Pressure;
        /// the one over the other
        ratio: Ratio;
    }
}

/// The metal of a unit, by what its material is said to be; `None` where that names none of those we know.
#[must_use]
pub fn metal(unit: &Unit) -> Option<&'static Strength> {
    let material = unit.particulars.material.as_ref()?.to_lowercase();
    // What a manufacturer says of it, "coated carbon steel", is read here and nowhere else.
    let metal = if material.contains("stainless") { Metal::Stainless } else { Metal::Carbon };
    STRENGTHS.iter().find(|strength| strength.metal == metal).filter(|strength| material.contains(strength.word))
}

/// Finds it: the groundwater at its highest, at grade where nobody said. `None` for another body, or where thickness,
/// metal or ground is not known.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn shell<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    unit: &Unit,
    installation: &Installation,
) -> Result<Option<Shell>, Stop> {
    const LEVEL: Pair = (&FT, &M);
    let (diameter, free) = match &unit.body {
        Body::LyingCylinder(body) => (body.diameter, body.shell),
        Body::UprightCylinder(body) => (body.diameter, body.height),
        Body::Rectangular(_) => return Ok(None),
    };
    let (Some(wall), Some(floor)) = (unit.particulars.wall, installation.floor) else { return Ok(None) };
    let Some(metal) = metal(unit) else { return Ok(None) };
    let Some(ground) = stated(t, w, "ground at the unit, site datum", &e.site.ground) else { return Ok(None) };
    t.section("shell of the empty unit");
    let depth = reckon!(t, "lowest line below the ground", [FT, M], (ground = ground, floor = floor) ground - floor);
    let water = match stated(t, w, "groundwater at its highest, site datum", &e.site.groundwater) {
        Some(water) => {
            reckon!(t, "groundwater below the ground", [FT, M], (ground = ground, water = water) ground - water)
        }
        None => {
            given(t, "groundwater below the ground", Some(LEVEL), Length::from_si(0.0), "not stated", "taken at grade")
        }
    };
    let [moist, saturated] = backfill(t);
    let share = given(
        t,
        "share of the soil's weight that presses",
        Some((&ONE, &ONE)),
        ratio(0.0),
        "common practice",
        "water alone, in compacted backfill",
    );
    let outside = by!(
        t,
        "pressure of the water outside",
        ground_pressure::pressure(depth, water, moist, saturated, basis.fluids.cold.density, share)
    )?;
    let source = say!(T, "{}", metal.source);
    let e_metal = given(t, "modulus of elasticity", Some((&PSI, &KPA)), metal.modulus(), &source, metal.title);
    let nu = given(t, "Poisson's ratio", Some((&ONE, &ONE)), ratio(metal.poisson), &source, metal.title);
    let law = given(t, "law of collapse", None, CollapseLaw::ShortTube, "our proposal", "short tube, the lower");
    let collapse = by!(
        t,
        "pressure at which the shell would collapse",
        cylinder_collapse::pressure(diameter, wall, free, e_metal, nu, law)
    )?;
    if outside.q.si() <= 0.0 {
        return Ok(None);
    }
    let ratio = reckon!(t, "collapse over pressure outside", [ONE, ONE], (collapse = collapse, outside = outside) collapse / outside);
    Ok(Some(Shell { wall, outside, collapse, ratio }))
}

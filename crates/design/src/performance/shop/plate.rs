//! Steel of the body: how thick it is, of which metal, and how much of it.

use crate::provenance::{Stop, Trail, Val, Whence, given};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, reckon, say};
use core::f64::consts::PI;
use stillrise_handbook::hydraulics::circle_area;
use stillrise_handbook::shop::strengths::Strength;
use stillrise_handbook::shop::{box_shell_area, head_area};
use stillrise_units::catalog::{KPA, ONE, PERCENT, PSI};
use stillrise_units::{Area, Length, Pressure, Ratio, ratio};

/// Thickness of the steel: stated apart, else that of the wall, which then counts as steel throughout.
#[must_use]
pub fn thickness(unit: &Unit) -> Option<Val<Length>> {
    unit.particulars.steel.or(unit.particulars.wall)
}

/// Steel of the body alone: floor, walls and, of a box, a share of its top; shell and heads of a lying cylinder, shell, floor
/// and top of an upright one.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn area<T: Trail>(t: &mut T, unit: &Unit, roofed: f64) -> Result<Val<Area>, Stop> {
    match &unit.body {
        Body::Rectangular(body) => {
            let text = if roofed > 0.0 { "all of it" } else { "open" };
            let roof = given(
                t,
                "share of the top that counts",
                Some((&PERCENT, &PERCENT)),
                ratio(roofed),
                Whence::Definition,
                text,
            );
            let label = if roofed > 0.0 { "floor, walls and top" } else { "floor and walls" };
            by!(t, label, box_shell_area::area(body.length, body.width, body.height, roof))
        }
        Body::LyingCylinder(body) => {
            let deep =
                reckon!(t, "depth of a head", [IN, MM], (all = body.over_all, shell = body.shell)(all - shell) / 2.0);
            let head = by!(t, "one head", head_area::area(body.diameter, deep))?;
            Ok(
                reckon!(t, "shell and heads", [FT2, M2], (d = body.diameter, l = body.shell, head = head) PI * d * l + 2.0 * head),
            )
        }
        Body::UprightCylinder(body) => {
            let end = by!(t, "floor, and top", circle_area::area(body.diameter))?;
            Ok(
                reckon!(t, "shell, floor and top", [FT2, M2], (d = body.diameter, h = body.height, end = end) PI * d * h + 2.0 * end),
            )
        }
    }
}

/// Allowable stress, modulus of elasticity and Poisson's ratio of a metal.
pub(super) fn strength<T: Trail>(t: &mut T, metal: &'static Strength) -> (Val<Pressure>, Val<Pressure>, Val<Ratio>) {
    const STRESS: (&stillrise_units::Unit, &stillrise_units::Unit) = (&PSI, &KPA);
    let source = say!(T, "{}", metal.source);
    (
        given(t, "allowable bending stress, 0.6 of the yield", Some(STRESS), metal.allowable(), &source, metal.title),
        given(t, "modulus of elasticity", Some(STRESS), metal.modulus(), &source, metal.title),
        given(t, "Poisson's ratio", Some((&ONE, &ONE)), ratio(metal.poisson), &source, metal.title),
    )
}

//! Shell and heads of a lying cylinder of steel, full of water to its top: thickness that city codes print for its capacity,
//! hoop stress, bending of flat heads.
//!
//! Pressure from outside, which governs in the ground, stands apart in [`super::super::shell`], what it rests on
//! before it is let into the ground in [`super::saddles`].

use super::super::shell::metal;
use super::{SHOP, plate};
use crate::basis::Basis;
use crate::provenance::{Pair, Stop, Trail, Val, given};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, reckon, say};
use stillrise_handbook::shop::flat_head_stress::RimHold;
use stillrise_handbook::shop::tank_thickness::{self, CODES, ThicknessCode};
use stillrise_handbook::shop::{flat_head_stress, hoop_stress};
use stillrise_handbook::vessel::materials::Plate;
use stillrise_handbook::vessel::shapes::HeadForm;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{G, Length, Pressure, Volume};

const L: Pair = (&IN, &MM);

/// A thickness that a code prints for the capacity.
#[derive(Debug, Clone)]
pub struct Printed {
    /// Its plate.
    pub thickness: Val<Length>,
    /// The code.
    pub code: &'static ThicknessCode,
}

/// Shell and heads.
#[derive(Debug, Clone)]
pub struct Cylinder {
    /// Thickness of the steel.
    pub thickness: Val<Length>,
    /// What it holds, full to the top.
    pub capacity: Val<Volume>,
    /// The thinnest and the thickest shell that any code prints for it; `None` above what they print.
    pub printed: Option<[Printed; 2]>,
    /// Pressure at its lowest line.
    pub pressure: Val<Pressure>,
    /// Hoop stress there.
    pub hoop: Val<Pressure>,
    /// Bending of its heads, where they are flat.
    pub head: Option<Val<Pressure>>,
    /// Stress that is allowed.
    pub allowable: Val<Pressure>,
}

/// Finds them; `None` for another body, or where thickness or metal is not known.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn cylinder<T: Trail>(t: &mut T, basis: &Basis, unit: &Unit) -> Result<Option<Cylinder>, Stop> {
    let Body::LyingCylinder(body) = &unit.body else { return Ok(None) };
    let Some((thickness, metal)) = plate::thickness(unit).zip(metal(unit)) else { return Ok(None) };
    t.section(format_args!("{SHOP}: shell and heads"));
    let (allowable, _, nu) = plate::strength(t, metal);
    let rho = basis.fluids.cold.density;
    let capacity = unit.body.volume(t, "capacity, full to the top", unit.body.whole(), body.diameter)?;
    let by_code = |code: &'static ThicknessCode| code.shell(capacity.q).map(|plate| (code, plate));
    let lightest = CODES.iter().filter_map(by_code).min_by(|a, b| a.1.inches.total_cmp(&b.1.inches));
    let mut print = |label: &str, (code, plate): (&'static ThicknessCode, &'static Plate)| {
        let source = say!(T, "{}", code.source);
        Printed { thickness: given(t, label, Some(L), plate.thickness(), &source, plate.word), code }
    };
    let printed = lightest.zip(tank_thickness::heaviest(capacity.q)).map(|(light, heavy)| {
        [
            print("thinnest shell that a code prints for it", light),
            print("thickest shell that a code prints for it", heavy),
        ]
    });
    let pressure = reckon!(t, "pressure at its lowest line, full to the top", [PSI, KPA], (rho = rho, d = body.diameter) rho * G * d);
    let radius = reckon!(t, "radius of the shell", [IN, MM], (d = body.diameter) d / 2.0);
    let hoop = by!(t, "hoop stress at its lowest line", hoop_stress::stress(pressure, radius, thickness))?;
    let head = if body.heads.q == HeadForm::Flat {
        let mean = reckon!(t, "pressure in the middle of a head", [PSI, KPA], (p = pressure) p / 2.0);
        let hold = given(
            t,
            "how the rim of a head is held",
            None,
            RimHold::Supported,
            "our proposal",
            "supported, the larger stress",
        );
        let label = "stress in a flat head, under the pressure of its middle, without stays";
        Some(by!(t, label, flat_head_stress::stress(mean, radius, thickness, nu, hold))?)
    } else {
        None
    };
    Ok(Some(Cylinder { thickness, capacity, printed, pressure, hoop, head, allowable }))
}

//! What each stage catches of one droplet size.

use super::passage::Passage;
use crate::basis::Basis;
use crate::provenance::{Pair, Stop, Trail, Val, given};
use crate::{by, reckon};
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::{drag_cut, mesh_curve, mesh_removal, plate_removal, stokes_cut, tank_removal};
use stillrise_units::catalog::UM;
use stillrise_units::{Length, Ratio, Typed, Velocity, ratio};

const SIZE: Pair = (&UM, &UM);
/// Diameters at which the stages' catch is shown, µm.
pub const GRADES: [f64; 12] = [5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0, 90.0, 120.0, 150.0, 200.0, 300.0];

/// What each stage catches of one size.
#[derive(Debug, Clone)]
pub struct Grade {
    /// Diameter.
    pub d: Val<Length>,
    /// Rise.
    pub rise: Val<Velocity>,
    /// Caught in the tank.
    pub tank: Val<Ratio>,
    /// Caught by the plates, of what reaches them.
    pub pack: Val<Ratio>,
    /// Caught by the mesh, of what reaches it; `None` without one.
    pub mesh: Option<Val<Ratio>>,
    /// Left behind tank and plates.
    pub left: Val<Ratio>,
}

/// The table of sizes, with the kinks of the plates' curve among them.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn grades<T: Trail>(t: &mut T, basis: &Basis, p: &Passage) -> Result<Vec<Grade>, Stop> {
    let mut rows = Vec::new();
    let mut sizes: Vec<Val<Length>> = GRADES
        .iter()
        .map(|um| given(t, "size", Some(SIZE), Length::of(*um, &UM), "table of sizes", &format!("{um} µm")))
        .collect();
    // Where the halves of the pack begin to catch all: between straight lines these sizes would be lost.
    if p.oil.q < p.water.q && p.regime.q == GapRegime::Laminar {
        let slow = reckon!(t, "overflow rate of the half with less flow", [GPM_FT2, MM_S], (v = p.v_pack, s = p.spread) v * (ratio(1.0) - s));
        let fast = reckon!(t, "overflow rate of the half with more flow", [GPM_FT2, MM_S], (v = p.v_pack, s = p.spread) v * (ratio(1.0) + s));
        for v in [slow, fast] {
            let label = "size that a half of the pack just catches";
            sizes.push(match p.law.q {
                RiseLaw::Stokes => by!(t, label, stokes_cut::diameter(v, p.water, p.oil, p.viscosity))?,
                RiseLaw::Drag => by!(t, label, drag_cut::diameter(v, p.water, p.oil, p.viscosity))?,
            });
        }
        sizes.sort_by(|a, b| a.q.si().total_cmp(&b.q.si()));
    }
    for d in sizes {
        let rise = crate::train::rise(t, "rise of the size", basis, d, p.water, p.oil, p.viscosity)?;
        let tank = by!(t, "caught ahead of the pack", tank_removal::removal(rise, p.v_tank, p.tank, p.index))?;
        let pack = by!(t, "caught by the plates", plate_removal::removal(rise, p.v_pack, p.spread, p.regime))?;
        let mesh = if p.has_mesh() {
            let (depth, curve) = &p.mesh;
            Some(if curve.q.0.is_empty() {
                by!(
                    t,
                    "caught by the mesh",
                    mesh_removal::removal(
                        d,
                        rise,
                        p.solidity,
                        p.fibre,
                        depth,
                        p.face,
                        p.sticking,
                        p.saturation,
                        p.viscosity,
                        p.temperature
                    )
                )?
            } else {
                by!(t, "caught by the mesh, as measured", mesh_curve::caught(d, curve))?
            })
        } else {
            None
        };
        let left = reckon!(
            t,
            "left of the size",
            [PERCENT, PERCENT],
            (tank = tank, pack = pack)(ratio(1.0) - tank) * (ratio(1.0) - pack)
        );
        rows.push(Grade { d, rise, tank, pack, mesh, left });
    }
    Ok(rows)
}

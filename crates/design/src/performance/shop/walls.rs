//! Flat walls of an open tank of steel, full of water to the rim: stress and deflection of the widest panel, and which
//! stiffeners and which rim would hold it.
//!
//! What nobody said is taken at its worst: no stiffeners, a free rim. Floors on a full bed carry nothing.

use super::super::shell::metal;
use super::{SHOP, plate};
use crate::basis::Basis;
use crate::provenance::{Pair, Stop, Trail, Val, choose, given};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, reckon};
use stillrise_handbook::shop::panel::PanelEdges;
use stillrise_handbook::shop::{
    rim_depth, rim_force, stiffener_depth, stiffener_spacing, wall_deflection, wall_stress,
};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Force, G, Length, Pressure, Typed};

const L: Pair = (&IN, &MM);
/// The table of panels begins at so much of the height.
const NARROWEST: f64 = 0.5;
/// It ends at so many times the height.
const WIDEST: f64 = 4.0;

/// The walls, full to the rim.
#[derive(Debug, Clone)]
pub struct Walls {
    /// Thickness of the steel.
    pub thickness: Val<Length>,
    /// Pressure at the foot.
    pub pressure: Val<Pressure>,
    /// Width of the panel: between stiffeners, else that of the longest wall.
    pub panel: Val<Length>,
    /// Distance of the stiffeners as stated.
    pub stiffeners: Option<Val<Length>>,
    /// Whether the rim is stiff, as stated.
    pub rim: Option<bool>,
    /// Stress in the panel; `None` where the table has no row for it.
    pub stress: Option<Val<Pressure>>,
    /// Its greatest deflection, where the stress is allowed: beyond that the plate yields first.
    pub deflection: Option<Val<Length>>,
    /// Stress that is allowed.
    pub allowable: Val<Pressure>,
    /// Greatest distance of stiffeners at which the plate keeps it.
    pub spacing: Val<Length>,
    /// Thickness of the bar that is proposed as a stiffener.
    pub bar: Val<Length>,
    /// Its depth at that distance, or at the stated one.
    pub bar_depth: Val<Length>,
    /// Push on the rim of the longest wall.
    pub rim_push: Val<Force>,
    /// Depth of a flat bar that carries it from corner to corner.
    pub rim_depth: Val<Length>,
    /// Thickness of that bar.
    pub rim_bar: Val<Length>,
}

impl Walls {
    /// Whether stiffeners are stated so close that the plate between them is held as a strip, not by the table.
    #[must_use]
    pub fn by_strip(&self) -> bool {
        self.stress.is_none() && self.stiffeners.is_some()
    }
}

/// Finds them; `None` for another body, one that is built in its place, or where thickness or metal is not known.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn walls<T: Trail>(t: &mut T, basis: &Basis, unit: &Unit) -> Result<Option<Walls>, Stop> {
    let Body::Rectangular(body) = &unit.body else { return Ok(None) };
    let known = plate::thickness(unit).zip(metal(unit)).filter(|_| !unit.arrangement.is_built_in());
    let Some((thickness, metal)) = known else { return Ok(None) };
    t.section(format_args!("{SHOP}: walls"));
    let (allowable, modulus, _) = plate::strength(t, metal);
    let (height, rho) = (body.height, basis.fluids.cold.density);
    let longest = if body.length.q >= body.width.q { body.length } else { body.width };
    let pressure = reckon!(t, "pressure at the foot of the wall, full to the rim", [PSI, KPA], (rho = rho, height = height) rho * G * height);
    let (stiffeners, rim) = (unit.particulars.stiffener_spacing, unit.particulars.stiff_rim);
    let between = stiffeners.map_or(longest.q, |s| if s.q < longest.q { s.q } else { longest.q });
    // Beyond the table a wall under a stiff rim is a strip, whose stress no longer grows.
    let most = height.q * WIDEST;
    let width = if rim == Some(true) && between > most { most } else { between };
    let mut nodes = vec![longest.at, height.at];
    nodes.extend(stiffeners.map(|s| s.at));
    let because = if stiffeners.is_some() { "between stiffeners" } else { "no stiffeners are counted" };
    let panel = choose(
        t,
        "width of the widest panel",
        Some(L),
        width,
        "longest wall, distance of the stiffeners, four times the height under a stiff rim",
        because,
        &nodes,
    );
    let share = panel.q.si() / height.q.si();
    let (mut stress, mut deflection) = (None, None);
    if (NARROWEST..=WIDEST + 1e-9).contains(&share) {
        let pair = if rim == Some(true) {
            [PanelEdges::FixedWithRim, PanelEdges::FourSupported]
        } else {
            [PanelEdges::ThreeFixed, PanelEdges::ThreeSupported]
        };
        let why = if rim == Some(true) { "a stiff rim" } else { "a free rim" };
        let [fixed, turning] = pair.map(|edges| given(t, "how the edges are held", None, edges, why, edges.word()));
        let a = by!(t, "stress with fixed edges", wall_stress::stress(fixed, panel, height, thickness, rho))?;
        let b = by!(t, "stress with edges that turn", wall_stress::stress(turning, panel, height, thickness, rho))?;
        stress = Some(
            reckon!(t, "stress in the panel, the larger of the two", [PSI, KPA], (fixed = a, turning = b) fixed.max(turning)),
        );
        // Over stiffeners and under a stiff rim the plate runs through; where the rim is free, its edges turn.
        let held = if rim == Some(true) { fixed } else { turning };
        let label = "greatest deflection of the panel";
        let sound = stress.is_some_and(|stress| stress.q <= allowable.q);
        if sound {
            deflection =
                Some(by!(t, label, wall_deflection::deflection(held, panel, height, thickness, rho, modulus))?);
        }
    }
    let spacing = by!(
        t,
        "greatest distance of stiffeners at which the plate keeps the allowable stress",
        stiffener_spacing::spacing(thickness, allowable, pressure)
    )?;
    let bar = given(
        t,
        "thickness of a stiffener",
        Some(L),
        Length::of(0.375, &IN),
        "our proposal",
        "a flat bar of {0.375 in|9.5 mm}",
    );
    let distance = stiffeners.filter(|s| s.q < longest.q).unwrap_or(spacing);
    let bar_depth =
        by!(t, "depth of that stiffener, set on edge", stiffener_depth::depth(rho, distance, height, bar, allowable))?;
    let rim_push = by!(t, "push of the longest wall on its rim", rim_force::force(rho, height, longest))?;
    let rim_bar = given(
        t,
        "thickness of the rim's bar",
        Some(L),
        Length::of(0.5, &IN),
        "our proposal",
        "a flat bar of {0.5 in|12.7 mm}",
    );
    let rim_depth = by!(
        t,
        "depth of the rim's bar, from corner to corner without a tie",
        rim_depth::depth(rim_push, longest, rim_bar, allowable)
    )?;
    Ok(Some(Walls {
        thickness,
        pressure,
        panel,
        stiffeners,
        rim,
        stress,
        deflection,
        allowable,
        spacing,
        bar,
        bar_depth,
        rim_push,
        rim_depth,
        rim_bar,
    }))
}

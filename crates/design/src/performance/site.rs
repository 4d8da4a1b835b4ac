//! How the unit stands on the site: outlet pipe, outfall, tailwater, floor, spare fall.

use super::installation::{Because, Installation, Known, Stands, installation};
use crate::basis::stated::{assumed, stand_in, stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::FROST_KNOWN;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, given};
use crate::train::unit::Unit;
use crate::{reckon, say};
use stillrise_handbook::hydraulics::pipes::{MATERIALS, pipe_material, pipe_size};
use stillrise_units::catalog::{IN, MM, ONE};
use stillrise_units::{Length, Ratio, ratio};

const LEVEL: Pair = (&IN, &MM);
const PURE: Pair = (&ONE, &ONE);

/// How the unit stands between incoming pipe and outfall.
#[derive(Debug, Clone)]
pub struct SiteLevels {
    /// Bore of the outlet pipe.
    pub bore: Val<Length>,
    /// Its length.
    pub length: Val<Length>,
    /// Its slope.
    pub slope: Val<Ratio>,
    /// Its roughness.
    pub roughness: Val<Length>,
    /// Its Manning n.
    pub n: Val<Ratio>,
    /// Invert at the outfall, above the unit's floor.
    pub outfall: Val<Length>,
    /// Drop from the end of that pipe to the site's outfall, if it is known.
    pub drop: Option<Val<Length>>,
    /// Water at the outfall, above the unit's floor, if known.
    pub tailwater: Option<Val<Length>>,
    /// Unit's floor in the site's datum, if the levels that are known place it.
    pub floor: Option<Val<Length>>,
    /// Incoming invert over the unit's inlet invert; negative when the fall does not suffice. Where it does not, it is held
    /// against the lowest floor from which the outlet drains.
    pub spare_fall: Option<Val<Length>>,
    /// The unit's lowest point, drain included, over the ground; negative when it would stand in a pit.
    pub floor_over_ground: Option<Val<Length>>,
    /// Where effluent pumps lift the water to, over the floor of the unit.
    pub lifted_to: Option<Val<Length>>,
    /// How it is installed.
    pub installation: Installation,
}

/// Finds how the unit stands on the site.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn site<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, unit: &Unit, pumped: bool) -> Result<SiteLevels, Stop> {
    t.section("outlet and site levels");
    let bore = match e.outlet.pipe.as_deref().and_then(pipe_size) {
        Some(row) => given(
            t,
            "bore of the outlet pipe",
            Some(LEVEL),
            row.inside(),
            &say!(T, "{}", e.outlet.pipe().place()),
            row.word,
        ),
        None => unit.outlet.bore,
    };
    let length = stated_or_usual(t, w, e.outlet.length(), "length of the outlet pipe");
    let slope = stated_or_usual(t, w, e.outlet.slope(), "slope of the outlet pipe");
    let row = e.outlet.material.as_deref().and_then(pipe_material).unwrap_or(&MATERIALS[0]);
    let roughness = given(
        t,
        "roughness of the outlet pipe",
        Some((&IN, &MM)),
        row.roughness(),
        &say!(T, "{}", row.source),
        row.title,
    );
    let n = if e.outlet.material.is_some() {
        given(
            t,
            "Manning's n of the outlet pipe",
            Some(PURE),
            ratio(row.manning_n.1),
            &say!(T, "{}", row.n_source),
            row.title,
        )
    } else {
        let range = (ratio(0.009), ratio(row.manning_n.1), ratio(0.015));
        let source = format!("{}, as {}", row.n_source, row.title);
        let key = e.outlet.material().in_units(PURE.0, PURE.1);
        assumed(t, w, &key, "Manning's n of the outlet pipe", stand_in(range, source))
    };
    let invert = unit.outlet.invert;
    let outfall = reckon!(t, "invert at the outfall, above the floor", [IN, MM], (invert = invert, length = length, slope = slope) invert - length * slope);
    // What pumps lift to the outfall does not depend on how high that lies.
    let pumped_out = unit.pump_out.is_some();
    let lifted_to = stated(t, w, "invert at the outfall, site datum", &e.outlet.invert);
    let site_outfall = lifted_to.filter(|_| !pumped_out);
    let ground = stated(t, w, "ground at the unit, site datum", &e.site.ground);
    let incoming = stated(t, w, "incoming invert, site datum", &e.inlet.invert);
    let water = stated(t, w, "water at the outfall, site datum", &e.outlet.tailwater).filter(|_| !pumped_out);
    let cover = unit.arrangement.is_in_ground().then(|| cover(t, w, e));
    let known = Known {
        pumped,
        ground,
        incoming,
        outfall: site_outfall,
        outfall_over_floor: outfall,
        tailwater: water,
        system: e.system(),
        cover,
    };
    let installation = installation(t, unit, &known);
    let mut levels = SiteLevels {
        bore,
        length,
        slope,
        roughness,
        n,
        outfall,
        drop: None,
        tailwater: None,
        floor: installation.floor,
        spare_fall: None,
        floor_over_ground: installation.over_ground,
        lifted_to: lifted_to.zip(installation.floor).filter(|_| pumped_out).map(|(z, floor)| {
            reckon!(t, "outfall over the floor of the unit", [FT, M], (outfall = z, floor = floor) outfall - floor)
        }),
        installation,
    };
    if let (Some(site_outfall), Some(floor)) = (site_outfall, installation.floor) {
        levels.drop = Some(
            reckon!(t, "drop from the end of the outlet pipe to the site's outfall", [IN, MM], (outfall = outfall, floor = floor, site = site_outfall) outfall + floor - site),
        );
    }
    if let (Some(z), Some(floor)) = (water, installation.floor) {
        levels.tailwater =
            Some(reckon!(t, "water at the outfall, above the floor", [IN, MM], (z = z, floor = floor) z - floor));
    }
    // Behind a lift pump the unit stands higher than gravity would have it, and the fall that is missing stays the same.
    let by_gravity = match installation.stands.q {
        Stands::LiftPump => installation.drains_from.filter(|_| installation.because == Because::NoFall),
        _ => installation.floor,
    };
    if let (Some(z), Some(floor)) = (incoming, by_gravity) {
        levels.spare_fall = Some(reckon!(t, "incoming invert over the inlet nozzle", [IN, MM],
            (incoming = z, floor = floor, nozzle = unit.inlet.invert) incoming - floor - nozzle));
    }
    Ok(levels)
}

/// The least cover over a unit that lies in the ground.
fn cover<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Val<Length> {
    let key = e.site.cover();
    let key = if e.site.frost_depth.is_given() { key.when(FROST_KNOWN) } else { key };
    stated_or_usual(t, w, key, "least cover over the top of the vessel")
}

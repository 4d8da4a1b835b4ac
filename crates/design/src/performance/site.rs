//! How the unit stands on the site: outlet pipe, outfall, tailwater, floor, spare fall.

use crate::basis::stated::{standby, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, assume, choose, given};
use crate::reckon;
use crate::train::unit::Unit;
use stillrise_handbook::hydraulics::pipes::{MATERIALS, pipe_material, pipe_size};
use stillrise_units::catalog::{FT, IN, M, MM, ONE, PERCENT};
use stillrise_units::{Length, Ratio, Typed, ratio};

const LEVEL: Pair = (&IN, &MM);
const SITE: Pair = (&FT, &M);
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
    /// Unit's floor in the site's datum, if the outfall's invert is known.
    pub floor: Option<Val<Length>>,
    /// Incoming invert over the unit's inlet invert; negative when the fall does not suffice.
    pub spare_fall: Option<Val<Length>>,
    /// The unit's lowest point, drain included, over the ground; negative when it would stand in a pit.
    pub floor_over_ground: Option<Val<Length>>,
}

/// Finds how the unit stands on the site.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn site<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, unit: &Unit, pumped: bool) -> Result<SiteLevels, Stop> {
    t.section("outlet and site levels");
    let bore = match e.outlet.pipe.as_deref().and_then(pipe_size) {
        Some(row) => given(t, "bore of the outlet pipe", Some(LEVEL), row.inside(), "outlet: pipe", row.word),
        None => unit.frame.outlet_bore,
    };
    let feet = |x: f64| Length::of(x, &FT);
    let length = stated_or(
        t,
        w,
        &e.outlet.length,
        standby(
            "length of the outlet pipe",
            SITE,
            "outlet.length",
            "How long is the pipe from the separator to the outfall?",
            (feet(5.0), feet(20.0), feet(200.0)),
            "engineering judgement",
        ),
    );
    let slope = stated_or(
        t,
        w,
        &e.outlet.slope,
        standby(
            "slope of the outlet pipe",
            (&PERCENT, &PERCENT),
            "outlet.slope",
            "At what slope can the outlet pipe be laid?",
            (ratio(0.005), ratio(0.01), ratio(0.02)),
            "common practice for building drains",
        ),
    );
    let row = e.outlet.material.as_deref().and_then(pipe_material).unwrap_or(&MATERIALS[0]);
    let roughness =
        given(t, "roughness of the outlet pipe", Some((&IN, &MM)), row.roughness(), &row.source.to_string(), row.title);
    let n = if e.outlet.material.is_some() {
        given(
            t,
            "Manning's n of the outlet pipe",
            Some(PURE),
            ratio(row.manning_n.1),
            &row.n_source.to_string(),
            row.title,
        )
    } else {
        assume(
            t,
            w,
            standby(
                "Manning's n of the outlet pipe",
                PURE,
                "outlet.material",
                "What is the outlet pipe made of?",
                (ratio(0.009), ratio(row.manning_n.1), ratio(0.015)),
                format!("{}, as {}", row.n_source, row.title),
            ),
        )
    };
    let invert = unit.frame.outlet_invert;
    let outfall = reckon!(t, "invert at the outfall, above the floor", [IN, MM], (invert = invert, length = length, slope = slope) invert - length * slope);
    let site_outfall = stated(t, w, "invert at the outfall, site datum", &e.outlet.invert);
    let ground = stated(t, w, "ground at the unit, site datum", &e.site.ground);
    let incoming = stated(t, w, "incoming invert, site datum", &e.inlet.invert);
    let mut levels = SiteLevels {
        bore,
        length,
        slope,
        roughness,
        n,
        outfall,
        drop: None,
        tailwater: None,
        floor: None,
        spare_fall: None,
        floor_over_ground: None,
    };
    let Some(site_outfall) = site_outfall else { return Ok(levels) };
    let stand = ground.map(|ground| {
        let hopper = unit.frame.hopper_depth;
        let room = if hopper.q.si() > 0.0 { 6.0 } else { 0.0 };
        let room = given(t, "room for the drain below the hopper", Some(LEVEL), Length::of(room, &IN), "our proposal", "6 in under a hopper");
        reckon!(t, "floor of the unit when it stands on the ground, site datum", [FT, M], (ground = ground, hopper = hopper, room = room) ground + hopper + room)
    });
    let floor = floor(t, unit, pumped, outfall, site_outfall, incoming, stand);
    levels.floor = Some(floor);
    levels.drop = Some(
        reckon!(t, "drop from the end of the outlet pipe to the site's outfall", [IN, MM], (outfall = outfall, floor = floor, site = site_outfall) outfall + floor - site),
    );
    if let Some(z) = stated(t, w, "water at the outfall, site datum", &e.outlet.tailwater) {
        levels.tailwater =
            Some(reckon!(t, "water at the outfall, above the floor", [IN, MM], (z = z, floor = floor) z - floor));
    }
    if let Some(z) = incoming {
        levels.spare_fall = Some(reckon!(t, "incoming invert over the inlet nozzle", [IN, MM],
            (incoming = z, floor = floor, nozzle = unit.frame.inlet_invert) incoming - floor - nozzle));
    }
    if let Some(z) = stand {
        levels.floor_over_ground = Some(
            reckon!(t, "lowest point of the unit, hopper drain included, over the ground", [FT, M], (floor = floor, stand = z) floor - stand),
        );
    }
    Ok(levels)
}

/// Where the floor stands: on the ground if the outlet then drains and the inlet is reached; on a
/// plinth if the outfall is too high for that; in a pit if the incoming pipe is too low.
#[allow(clippy::too_many_arguments)]
fn floor<T: Trail>(
    t: &mut T,
    unit: &Unit,
    pumped: bool,
    outfall: Val<Length>,
    site_outfall: Val<Length>,
    incoming: Option<Val<Length>>,
    ground: Option<Val<Length>>,
) -> Val<Length> {
    let lowest = reckon!(t, "lowest floor from which the outlet drains, site datum", [FT, M], (z = site_outfall, outfall = outfall) z - outfall);
    let Some(ground) = ground else { return lowest };
    let highest = incoming.filter(|_| !pumped).map(|z| {
        reckon!(t, "highest floor that the incoming pipe reaches, site datum", [FT, M], (z = z, nozzle = unit.frame.inlet_invert) z - nozzle)
    });
    let (floor, because) = match highest {
        _ if ground.q < lowest.q => (lowest, "on a plinth, so that the outlet drains"),
        Some(highest) if ground.q > highest.q && highest.q >= lowest.q => {
            (highest, "in a pit, so that the incoming pipe reaches it")
        }
        Some(highest) if ground.q > highest.q => {
            (lowest, "as low as the outlet drains; the incoming pipe does not reach it even so")
        }
        _ => (ground, "on the ground"),
    };
    let mut nodes = vec![lowest.at, ground.at];
    nodes.extend(highest.map(|h| h.at));
    choose(t, "floor of the unit, site datum", Some(SITE), floor.q, "ground, lowest and highest floor", because, &nodes)
}

//! Whether a unit in the ground floats when it is emptied: what lifts it, what holds it down, and what anchors must add.
//!
//! Inside measures stand for outside ones, so that the walls displace a little more; a cylinder counts with its length over
//! the heads as if they were flat, which is on the safe side. Preliminary.

use super::installation::{Installation, Stands};
use super::shop::weights::stated_weight;
use crate::basis::Basis;
use crate::basis::stated::stated;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::train::Train;
use crate::train::unit::Unit;
use crate::{by, reckon, say};
use stillrise_handbook::ground::flotation::{FACTORS, FlotationFactor, METHODS, SoilMethod, Wedge, factor, method};
use stillrise_handbook::ground::soils::BACKFILLS;
use stillrise_handbook::ground::{
    anchorage_needed, ballast_volume, flotation_factor, soil_weight, submerged_weight, uplift_force,
};
use stillrise_handbook::hydraulics::circle_area;
use stillrise_handbook::sources::BUOYANCY_PERMIT;
use stillrise_handbook::spread::Spread;
use stillrise_units::catalog::{FT, KG_M3, KN, LB_FT3, LBF, M, ONE};
use stillrise_units::{Density, Force, G, Length, Ratio, Typed, Volume};

const SITE: Pair = (&FT, &M);
const DENSITY: Pair = (&LB_FT3, &KG_M3);
const FORCE: Pair = (&LBF, &KN);

/// How a unit in the ground stands against flotation.
#[derive(Debug, Clone)]
pub struct Flotation {
    /// Its floor, site datum.
    pub floor: Val<Length>,
    /// Whether it stands there only with a pump behind it, and on the ground with one ahead of it.
    pub behind_pump: bool,
    /// Over its floor: how high the groundwater stands; `None` where nobody said.
    pub groundwater: Option<Val<Length>>,
    /// The groundwater over its floor above which it floats, of an open tank whose weight is known.
    pub floats_above: Option<Val<Length>>,
    /// What lifts it; nothing where the groundwater is not known or stays below it.
    pub uplift: Option<Val<Force>>,
    /// What holds it down, where its weight is known.
    pub held: Option<Held>,
    /// The factor that is asked for.
    pub asked: &'static FlotationFactor,
    /// The same as a number.
    pub wanted: Val<Ratio>,
    /// How soil counts.
    pub counts: &'static SoilMethod,
}

impl Flotation {
    /// Whether the way to count soil that was named has planes beside the unit, and they are not counted: those of units in
    /// parallel would overlap, and beside another body than a lying cylinder under the ground none is published.
    #[must_use]
    pub fn leaves_planes_out(&self) -> bool {
        self.counts.wedge.is_some() && self.held.as_ref().is_some_and(|held| held.wedge.is_none())
    }
}

/// What holds a unit down.
#[derive(Debug, Clone)]
pub struct Held {
    /// Its own weight, empty.
    pub weight: Val<Force>,
    /// Soil straight above it; `None` where none lies over it, or none counts.
    pub soil: Option<Val<Force>>,
    /// Soil beside that, where planes that lean outward count.
    pub wedge: Option<Val<Force>>,
    /// Concrete that is anchored to it, under water; `None` where none was stated.
    pub anchors: Option<Val<Force>>,
    /// All of it over the uplift.
    pub factor: Val<Ratio>,
    /// What anchors must still add.
    pub needed: Val<Force>,
    /// As concrete under water.
    pub concrete: Val<Volume>,
}

/// Finds it; `None` for a unit that is not known to stand in the ground.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn flotation<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    train: &Train,
    installation: &Installation,
) -> Result<Option<Flotation>, Stop> {
    let unit = &train.unit;
    let behind = installation.over_ground_ahead_of_pump.filter(|over| over.q.si() < 0.0);
    let (floor, behind_pump) = match (installation.stands.q, behind.and(installation.floor_ahead_of_pump)) {
        (Stands::InPit | Stands::Buried, _) => match installation.floor {
            Some(floor) => (floor, false),
            None => return Ok(None),
        },
        (_, Some(floor)) => (floor, true),
        _ => return Ok(None),
    };
    t.section("flotation of the empty unit");
    let asked = e.site.flotation.as_deref().and_then(factor).unwrap_or(&FACTORS[0]);
    let wanted = given(
        t,
        "factor against flotation that is asked for",
        Some((&ONE, &ONE)),
        stillrise_units::ratio(asked.factor),
        &say!(T, "{}", asked.source),
        asked.title,
    );
    let counts = e.site.soil_counts.as_deref().and_then(method).unwrap_or(&METHODS[PRISM]);
    // Planes of units beside one another would overlap: the soil between them is not counted twice, nor at all.
    let wedge = counts.wedge.filter(|_| train.bought() < 1.5);
    let (own, _) = stated_weight(t, e, unit)?;
    let weight = own.map(|mass| reckon!(t, "weight of the empty unit", [LBF, KN], (mass = mass) mass * G));
    let water = basis.fluids.cold.density;
    let mut found = Flotation {
        floor,
        behind_pump,
        groundwater: None,
        floats_above: None,
        uplift: None,
        held: None,
        asked,
        wanted,
        counts,
    };
    // Groundwater stands around the walls and under the floor: where their thickness is known, it counts.
    let wall = unit.particulars.wall;
    let outside = match wall {
        Some(wall) => unit.body.outside(t, wall),
        None => unit.body.clone(),
    };
    let Some(groundwater) = stated(t, w, "groundwater at its highest, site datum", &e.site.groundwater) else {
        if let (Some(plan), Some(weight)) = (outside.plan(t)?, weight) {
            let lifts = reckon!(t, "volume under water that lifts the empty unit", [FT3, M3],
                (weight = weight, rho = water, wanted = wanted) weight / (rho * G * wanted));
            let walls = match &unit.hopper {
                Some(hopper) => reckon!(t, "part of it that floor and walls displace", [FT3, M3],
                    (lifts = lifts, hopper = hopper.volume) lifts - hopper),
                None => lifts,
            };
            found.floats_above = Some(match wall {
                Some(wall) => {
                    reckon!(t, FLOATS_ABOVE, [FT, M], (lifts = walls, plan = plan, floor = wall) lifts / plan - floor)
                }
                None => reckon!(t, FLOATS_ABOVE, [FT, M], (lifts = walls, plan = plan) lifts / plan),
            });
        }
        return Ok(Some(found));
    };
    let level = reckon!(t, "groundwater over the floor of the unit", [FT, M], (water = groundwater, floor = floor) water - floor);
    found.groundwater = Some(level);
    if level.q.si() <= 0.0 {
        return Ok(Some(found));
    }
    let over_underside = match wall {
        Some(wall) => {
            reckon!(t, "groundwater over the underside of the unit", [FT, M], (level = level, floor = wall) level + floor)
        }
        None => level,
    };
    let shell = outside.under_water(t, over_underside)?;
    let shell = match &unit.hopper {
        Some(hopper) => {
            reckon!(t, "volume under the groundwater, hopper included", [FT3, M3], (walls = shell, below = hopper.volume) walls + below)
        }
        None => shell,
    };
    let over = over(t, e, unit, wedge, (floor, level), water)?;
    let volume = match over.as_ref().and_then(|over| over.risers) {
        Some(risers) => {
            reckon!(t, "volume under the groundwater, risers included", [FT3, M3], (shell = shell, risers = risers) shell + risers)
        }
        None => shell,
    };
    let soil = over.as_ref().filter(|_| counts.prism).map(|over| over.soil);
    let wedge = over.as_ref().and_then(|over| over.wedge);
    let uplift = by!(t, "uplift on the empty unit", uplift_force::force(volume, water))?;
    found.uplift = Some(uplift);
    let Some(weight) = weight else { return Ok(Some(found)) };
    let concrete = given(
        t,
        "density of concrete",
        Some(DENSITY),
        Density::of(150.0, &LB_FT3),
        &say!(T, "{BUOYANCY_PERMIT}"),
        "{150 lb/ft3|2403 kg/m3}",
    );
    let anchors = match stated(t, w, "concrete anchored to the unit", &e.site.anchors) {
        Some(volume) => {
            Some(by!(t, "weight of the anchors under water", submerged_weight::weight(volume, concrete, water))?)
        }
        None => None,
    };
    let nothing = given(t, "no weight", Some(FORCE), Force::from_si(0.0), Whence::Definition, "none");
    let (over, tied) = (soil.unwrap_or(nothing), anchors.unwrap_or(nothing));
    let mut resisting = reckon!(t, "what holds the unit down", [LBF, KN], (weight = weight, soil = over, anchors = tied) weight + soil + anchors);
    if let Some(wedge) = wedge {
        resisting = reckon!(t, "what holds the unit down, soil beside it included", [LBF, KN], (held = resisting, wedge = wedge) held + wedge);
    }
    let factor = by!(t, "factor against flotation", flotation_factor::factor(resisting, uplift))?;
    let needed = by!(t, "force that anchors must still add", anchorage_needed::force(uplift, resisting, wanted))?;
    let more = by!(t, "the same as concrete under water", ballast_volume::volume(needed, concrete, water))?;
    found.held = Some(Held { weight, soil, wedge, anchors, factor, needed, concrete: more });
    Ok(Some(found))
}

/// The straight prism among the ways to count soil.
const PRISM: usize = 1;

/// Label of that level.
const FLOATS_ABOVE: &str = "groundwater over its floor above which it floats";

/// What lies and stands over a closed vessel.
struct Over {
    /// Weight of the soil straight above it, less what the risers take.
    soil: Val<Force>,
    /// Weight of the soil beside that, where planes that lean outward count.
    wedge: Option<Val<Force>>,
    /// What of the risers is under the groundwater, which lifts too.
    risers: Option<Val<Volume>>,
}

/// What lies and stands over a closed vessel; `None` over an open one, and where the ground is not known or lies below its top.
fn over<T: Trail>(
    t: &mut T,
    e: &Enquiry,
    unit: &Unit,
    wedge: Option<Wedge>,
    (floor, water_level): (Val<Length>, Val<Length>),
    water: Val<Density>,
) -> Result<Option<Over>, Stop> {
    if unit.body.is_open() {
        return Ok(None);
    }
    let top = unit.body.height();
    let Some(ground) = stated(t, &WhatIf::default(), "ground at the unit, site datum", &e.site.ground) else {
        return Ok(None);
    };
    let level =
        reckon!(t, "ground over the floor of the unit", [FT, M], (ground = ground, floor = floor) ground - floor);
    if level.q <= top.q {
        return Ok(None);
    }
    let wet = if water_level.q > level.q { level } else { water_level };
    let wet = choose(
        t,
        "groundwater up to which the soil is under water",
        Some(SITE),
        wet.q,
        "groundwater, ground",
        "the lower",
        &[water_level.at, level.at],
    );
    let all = unit.body.soil_over(t, "soil straight above it", level)?;
    let below = unit.body.soil_over(t, "part of it under the groundwater", wet)?;
    let (all, below, risers) = match &unit.access {
        Some(access) => {
            let one = by!(t, "plan of a riser", circle_area::area(access.opening))?;
            let risers = reckon!(t, "plan of all risers", [FT2, M2], (one = one, n = access.count) one * n);
            let none = Length::from_si(0.0);
            let reach = if wet.q > top.q { wet.q - top.q } else { none };
            let reach = choose(
                t,
                "height of the risers under the groundwater",
                Some(SITE),
                reach,
                "groundwater, top of the vessel",
                "what of the groundwater stands over the top",
                &[wet.at, top.at],
            );
            (
                reckon!(t, "soil straight above it, without the risers", [FT3, M3], (all = all, plan = risers, level = level, top = top) all - plan * (level - top)),
                reckon!(t, "part of that under the groundwater", [FT3, M3], (below = below, plan = risers, reach = reach) below - plan * reach),
                Some(
                    reckon!(t, "risers under the groundwater", [FT3, M3], (plan = risers, reach = reach) plan * reach),
                ),
            )
        }
        None => (all, below, None),
    };
    let [moist, saturated] = backfill(t);
    let soil = by!(
        t,
        "weight of the soil above it, under water where it is",
        soil_weight::weight(all, below, moist, saturated, water)
    )?;
    let wedge = match wedge {
        Some(wedge) => {
            let all = unit.body.soil_beside(t, "soil beside it that leaning planes add", wedge, level)?;
            let wet = unit.body.soil_beside(t, "part of that under the groundwater", wedge, wet)?;
            match all.zip(wet) {
                Some((all, wet)) => Some(by!(
                    t,
                    "weight of the soil beside it, under water where it is",
                    soil_weight::weight(all, wet, moist, saturated, water)
                )?),
                None => None,
            }
        }
        None => None,
    };
    Ok(Some(Over { soil, wedge, risers }))
}

/// Density of the backfill, moist and saturated with water.
pub(super) fn backfill<T: Trail>(t: &mut T) -> [Val<Density>; 2] {
    let backfill = &BACKFILLS[0];
    let mut of = |label: &str, spread: &Spread| {
        given(
            t,
            label,
            Some(DENSITY),
            Density::from_si(spread.typical_si()),
            &say!(T, "{}", spread.source),
            backfill.title,
        )
    };
    [
        of("density of the moist backfill", &backfill.moist),
        of("density of the backfill under water, saturated", &backfill.saturated),
    ]
}

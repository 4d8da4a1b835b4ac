//! How the unit is installed: on the ground, on a plinth, in a pit, buried or behind a lift pump, as ground, incoming
//! pipe and outfall ask for it. Ground and incoming pipe say most of it before the outfall is known.

use crate::provenance::{Node, Pair, Trail, Val, choose, given};
use crate::reckon;
use crate::train::unit::Unit;
use stillrise_handbook::choice;
use stillrise_units::catalog::{FT, IN, M, MM};
use stillrise_units::{Length, System, Typed};

const LEVEL: Pair = (&IN, &MM);
const SITE: Pair = (&FT, &M);

choice! {
    /// How the unit stands.
    Stands {
        /// above ground
        OnGround "on the ground",
        /// above ground, raised
        OnPlinth "on a plinth",
        /// its lowest point below the ground, its walls above it
        InPit "in a pit",
        /// its walls below the ground
        Buried "buried",
        /// above ground, the water lifted to it
        LiftPump "behind a lift pump",
        /// levels that decide it were not said
        Unknown "not known",
    }
}

choice! {
    /// Why it stands so.
    Because {
        /// gravity onto the ground
        Reached "the incoming pipe reaches it there",
        /// any level can be reached
        Pumped "the water is pumped to it",
        /// the outfall asks for a higher floor
        OutfallHigh "its outlet does not drain from lower",
        /// the water at the outfall asks for a higher floor
        WaterHigh "lower down the water at the outfall would stand above the level in it",
        /// the incoming pipe asks for a lower floor
        PipeLow "the incoming pipe does not reach it higher up",
        /// it asks for one lower than the unit is high
        PipeDeep "the incoming pipe comes so low that the walls end below the ground",
        /// the incoming pipe lies too low for the outfall
        NoFall "by gravity it would have to stand high enough for its outlet to drain and low enough for the incoming pipe to reach it, and no level is both",
        /// the incoming pipe lies too low for the water at the outfall
        WaterOver "where the incoming pipe reaches it, the water at the outfall would stand above the level in it",
        /// made to lie in the ground, and pumped to
        Covered "as high as the cover that must lie over it allows",
        /// made to lie in the ground; the incoming pipe asks for a lower floor than the cover
        PipeReaches "as high as the incoming pipe reaches it",
        /// made to lie in the ground; the outfall is higher than any level at which it could
        OutfallOver "so low that its outlet does not drain",
        /// no ground
        NoGround "the ground's elevation was not said",
        /// no incoming pipe
        NoIncoming "the elevation of the incoming pipe was not said",
    }
}

/// How the unit is installed. Elevations in the site's datum.
#[derive(Debug, Clone, Copy)]
pub struct Installation {
    /// How it stands.
    pub stands: Val<Stands>,
    /// Why.
    pub because: Because,
    /// Its floor, where the levels decide it. Behind a lift pump it is that of pumped water.
    pub floor: Option<Val<Length>>,
    /// The lowest floor from which its outlet drains, where the outfall is known: what the fall is held against.
    pub drains_from: Option<Val<Length>>,
    /// How far the water at the outfall would stand above the crest, with the unit as high as the incoming pipe reaches;
    /// where it decides how the unit stands.
    pub water_over_crest: Option<Val<Length>>,
    /// Its lowest point, drain included, over the ground; negative in a pit.
    pub over_ground: Option<Val<Length>>,
    /// Where a pump has to lift the water: the floor that the incoming pipe lets it have with that pump behind it.
    pub floor_ahead_of_pump: Option<Val<Length>>,
    /// Its lowest point over the ground there; negative in the ground.
    pub over_ground_ahead_of_pump: Option<Val<Length>>,
    /// Of one that lies in the ground: how far its top lies below the ground, negative above it.
    pub cover: Option<Val<Length>>,
    /// Of one that lies in the ground: the least cover that is asked for.
    pub least_cover: Option<Val<Length>>,
    /// Whether it lies so low that a pump behind it must lift the water to the outfall.
    pub pump_behind: bool,
    /// Room for the drain below the hopper.
    pub drain_room: Val<Length>,
    /// The highest outfall that would still do, where the outfall's invert was not said: with the unit as high as
    /// the incoming pipe reaches or, for pumped water, on the ground. Nothing where the outfall's water decides already.
    pub highest_outfall: Option<Val<Length>>,
}

/// The levels of the site that decide, in its datum.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known {
    pub(super) pumped: bool,
    pub(super) ground: Option<Val<Length>>,
    pub(super) incoming: Option<Val<Length>>,
    pub(super) outfall: Option<Val<Length>>,
    /// Invert at the outfall, above the unit's floor.
    pub(super) outfall_over_floor: Val<Length>,
    /// Water at the outfall.
    pub(super) tailwater: Option<Val<Length>>,
    /// Units of print: a unit made to measure gets rooms that are round in them.
    pub(super) system: System,
    /// The least cover over a unit that lies in the ground.
    pub(super) cover: Option<Val<Length>>,
}

/// Finds how the unit is installed.
pub(super) fn installation<T: Trail>(t: &mut T, unit: &Unit, known: &Known) -> Installation {
    let hopper = unit.hopper.as_ref().map_or_else(
        || given(t, "depth of the hopper", Some(LEVEL), Length::from_si(0.0), "unit", "no hopper"),
        |hopper| hopper.depth,
    );
    let metric = known.system == System::Si && !unit.particulars.described;
    let (room, why) = match (unit.hopper.is_some(), metric) {
        (false, _) => (Length::from_si(0.0), "{6 in|152 mm} under a hopper"),
        (true, false) => (Length::of(6.0, &IN), "{6 in|152 mm} under a hopper"),
        (true, true) => (Length::of(150.0, &MM), "150 mm under a hopper"),
    };
    let drain_room = given(t, "room for the drain below the hopper", Some(LEVEL), room, "our proposal", why);
    let stand = known.ground.map(|ground| {
        reckon!(t, "floor of the unit when it stands on the ground, site datum", [FT, M], (ground = ground, hopper = hopper, room = drain_room) ground + hopper + room)
    });
    let lowest = known.outfall.map(|z| {
        reckon!(t, "lowest floor from which the outlet drains, site datum", [FT, M], (z = z, outfall = known.outfall_over_floor) z - outfall)
    });
    let clear = known.tailwater.map(|z| {
        reckon!(t, "lowest floor from which the unit's level stands above the water at the outfall, site datum", [FT, M], (z = z, crest = unit.outlet.crest) z - crest)
    });
    let highest = known.incoming.filter(|_| !known.pumped).map(|z| {
        reckon!(t, "highest floor that the incoming pipe reaches, site datum", [FT, M], (z = z, nozzle = unit.inlet.invert) z - nozzle)
    });
    let ground = known.ground.map(|ground| ground.q);
    let covered = known.ground.zip(known.cover).map(|(ground, cover)| {
        reckon!(t, "highest floor under the cover that is asked for, site datum", [FT, M], (ground = ground, cover = cover, height = unit.body.height()) ground - cover - height)
    });
    let (stands, because, floor) = match (known.cover, covered) {
        (None, _) => decide(known.pumped, ground, unit.body.height().q, [stand, lowest, clear, highest]),
        (Some(_), covered) => in_ground(known.pumped, [covered, lowest, clear, highest]),
    };
    let nodes: Vec<Node> = [stand, covered, lowest, clear, highest].into_iter().flatten().map(|v| v.at).collect();
    let among = "ground, lowest and highest floor";
    let floor = floor
        .map(|floor| choose(t, "floor of the unit, site datum", Some(SITE), floor.q, among, because.word(), &nodes));
    let stands = choose(t, "how the unit stands", None, stands, among, because.word(), &nodes);
    let over_ground = stand.zip(floor).map(|(stand, floor)| {
        reckon!(t, "lowest point of the unit, hopper drain included, over the ground", [FT, M], (floor = floor, stand = stand) floor - stand)
    });
    let cover = known.ground.zip(floor).filter(|_| known.cover.is_some()).map(|(ground, floor)| {
        reckon!(t, "cover over the top of the vessel", [FT, M], (ground = ground, floor = floor, height = unit.body.height()) ground - floor - height)
    });
    let open = unit.pump_out.is_none() && known.outfall.is_none() && because != Because::WaterOver;
    let from = if known.cover.is_some() {
        floor
    } else if known.pumped {
        stand
    } else {
        highest
    };
    let highest_outfall = from.filter(|_| open).map(|floor| {
        reckon!(t, "highest invert at the outfall that would still do, site datum", [FT, M], (floor = floor, outfall = known.outfall_over_floor) floor + outfall)
    });
    let water_over_crest = known.tailwater.zip(highest).filter(|_| because == Because::WaterOver).map(|(z, floor)| {
        reckon!(t, "water at the outfall over the crest, with the unit as high as the incoming pipe reaches", [IN, MM], (z = z, floor = floor, crest = unit.outlet.crest) z - floor - crest)
    });
    let floor_ahead_of_pump = highest.filter(|_| stands.q == Stands::LiftPump);
    let over_ground_ahead_of_pump = stand.zip(floor_ahead_of_pump).map(|(stand, floor)| {
        reckon!(t, "lowest point of the unit over the ground, with the pump behind it", [FT, M], (floor = floor, stand = stand) floor - stand)
    });
    Installation {
        stands,
        because,
        floor,
        floor_ahead_of_pump,
        over_ground_ahead_of_pump,
        drains_from: lowest,
        water_over_crest,
        over_ground,
        cover,
        least_cover: known.cover,
        pump_behind: because == Because::OutfallOver,
        drain_room,
        highest_outfall,
    }
}

type Floor = Option<Val<Length>>;

/// How a unit lies that is made to lie in the ground: as high as cover and incoming pipe let it; where its outlet does not
/// drain from there, pumped water would let it lie under the least cover, and where even that is too low a pump stands behind.
fn in_ground(pumped: bool, [covered, lowest, clear, highest]: [Floor; 4]) -> (Stands, Because, Floor) {
    let by_water = clear.filter(|clear| lowest.is_none_or(|lowest| clear.q > lowest.q));
    let least = by_water.or(lowest);
    let Some(covered) = covered else { return (Stands::Unknown, Because::NoGround, None) };
    let highest = highest.filter(|_| !pumped);
    if highest.is_none() && !pumped {
        return (Stands::Unknown, Because::NoIncoming, None);
    }
    let (floor, because) = match highest.filter(|highest| highest.q < covered.q) {
        Some(highest) => (highest, Because::PipeReaches),
        None => (covered, Because::Covered),
    };
    match least {
        Some(least) if least.q > floor.q => (Stands::Buried, Because::OutfallOver, Some(floor)),
        _ => (Stands::Buried, because, Some(floor)),
    }
}

/// How and why the unit stands, and at which floor: on the ground if the outlet then drains, above the water at the outfall,
/// and the inlet is reached; on a plinth if outfall or water are too high for that; in a pit if the incoming pipe is too low.
fn decide(
    pumped: bool,
    ground: Option<Length>,
    walls: Length,
    [stand, lowest, clear, highest]: [Floor; 4],
) -> (Stands, Because, Floor) {
    let by_water = clear.filter(|clear| lowest.is_none_or(|lowest| clear.q > lowest.q));
    let least = by_water.or(lowest);
    // Whatever the ground: the outlet needs a floor above the highest that the water reaches.
    if let (Some(least), Some(highest)) = (least, highest)
        && least.q > highest.q
    {
        // Behind a lift pump it stands as pumped water lets it: on the ground, or higher where the outfall asks for it.
        let floor = stand.filter(|stand| stand.q > least.q).unwrap_or(least);
        let no_fall = lowest.is_some_and(|lowest| lowest.q > highest.q);
        return (Stands::LiftPump, if no_fall { Because::NoFall } else { Because::WaterOver }, Some(floor));
    }
    let (Some(stand), Some(ground)) = (stand, ground) else { return (Stands::Unknown, Because::NoGround, lowest) };
    let raised = least.filter(|least| stand.q < least.q);
    let raises = if by_water.is_some() { Because::WaterHigh } else { Because::OutfallHigh };
    let Some(highest) = highest else {
        return match (pumped, raised) {
            (true, Some(floor)) => (Stands::OnPlinth, raises, Some(floor)),
            (true, None) => (Stands::OnGround, Because::Pumped, Some(stand)),
            // The outfall alone places the floor, for levels to be read; whether the water reaches it stays open.
            (false, _) => {
                let floor = lowest.map(|lowest| if stand.q < lowest.q { lowest } else { stand });
                (Stands::Unknown, Because::NoIncoming, floor)
            }
        };
    };
    if let Some(floor) = raised {
        (Stands::OnPlinth, raises, Some(floor))
    } else if stand.q <= highest.q {
        (Stands::OnGround, Because::Reached, Some(stand))
    } else if highest.q + walls <= ground {
        (Stands::Buried, Because::PipeDeep, Some(highest))
    } else {
        (Stands::InPit, Because::PipeLow, Some(highest))
    }
}

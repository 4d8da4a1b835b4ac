//! The room that the units need: in plan with walkways, several side by side or in line; and overhead, to lift the pack.

use super::installation::{Installation, Stands};
use crate::basis::stated::{declared, stand_in, stated_or, usual_of};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Arrangement, Site};
use crate::provenance::{Pair, Trail, Val, WhatIf, Whence, choose, given};
use crate::reckon;
use crate::train::Train;
use stillrise_units::catalog::{FT, IN, M, MM};
use stillrise_units::{Length, Ratio, Typed, ratio};

const ROOM: Pair = (&FT, &M);
const LEVEL: Pair = (&IN, &MM);

/// The units in one arrangement. Length runs along the flow.
#[derive(Debug, Clone, Copy)]
pub struct Way {
    /// How they stand to one another; of one unit no matter.
    pub arrangement: Arrangement,
    /// Length of the units, over all where that was stated and else inside, with the walkways between them.
    pub row_length: Val<Length>,
    /// Their width in the same way.
    pub row_width: Val<Length>,
    /// Length that they take up, over all where that was stated, with the walkway around them.
    pub length: Val<Length>,
    /// Width in the same way.
    pub width: Val<Length>,
}

/// The room that the units need.
#[derive(Debug, Clone)]
pub struct Fit {
    /// Walkway around and between units.
    pub access: Val<Length>,
    /// The arrangements that were looked at: both where none was asked for and there are several units.
    pub ways: Vec<Way>,
    /// Which of them is taken.
    pub taken: usize,
    /// The choice between them, if there was one.
    pub choice: Option<Val<Arrangement>>,
    /// Top of the walls, over the ground.
    pub top: Val<Length>,
    /// What comes on top of that to lift a module of the pack out or, where none lifts out, to reach in.
    pub above: Val<Length>,
    /// Clear height over the ground that both need.
    pub headroom: Val<Length>,
}

impl Fit {
    /// The arrangement that is taken.
    #[must_use]
    pub fn way(&self) -> &Way {
        &self.ways[self.taken]
    }
}

/// Finds the room that the units need.
pub(super) fn fit<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, train: &Train, installation: &Installation) -> Fit {
    t.section("room that the units need");
    let buried = installation.stands.q == Stands::Buried || train.unit.arrangement.is_in_ground();
    let several = train.count.q.si() > 1.0;
    let label = if buried && several { "room between units in the ground" } else { "walkway around and between units" };
    let key = e.site.access().asked_if(!buried);
    let access = stated_or(t, w, key, label, || match (buried, several) {
        (true, true) => stand_in(
            (Length::of(0.5, &M), usual_of(&e.site.access()), Length::of(1.0, &M)),
            "common practice: room to fill in and compact between shells in the ground",
        ),
        (true, false) => {
            let none = Length::from_si(0.0);
            stand_in((none, none, none), "common practice: nobody walks round a unit in the ground")
        }
        _ => declared(e.site.access().spec),
    });
    let asked = e.site.arrangement.0;
    let arrangements: &[Arrangement] = match asked {
        Some(Arrangement::InLine) if several => &[Arrangement::InLine],
        None if several => Arrangement::ALL,
        _ => &[Arrangement::SideBySide],
    };
    let ways: Vec<Way> = arrangements.iter().map(|arrangement| way(t, train, access, *arrangement)).collect();
    // The first of those that fit best: with walkways around, or at least the units themselves.
    let mut taken = 0;
    for (place, way) in ways.iter().enumerate() {
        if way.fits(&e.site) > ways[taken].fits(&e.site) {
            taken = place;
        }
    }
    let choice = several.then(|| {
        let because = match (asked, ways[taken].fits(&e.site)) {
            (Some(_), _) => "the enquiry asks for it",
            (None, _) if taken > 0 => "side by side they do not fit",
            (None, Room::None) => "the shortest way from one splitter to all; neither fits",
            (None, _) => "the shortest way from one splitter to all",
        };
        let nodes: Vec<_> = ways.iter().flat_map(|way| [way.length.at, way.width.at]).collect();
        choose(
            t,
            "how the units stand to one another",
            None,
            ways[taken].arrangement,
            "side by side, in line",
            because,
            &nodes,
        )
    });
    let unit = &train.unit;
    let bottom = installation.over_ground.unwrap_or_else(|| {
        given(
            t,
            "lowest point of the unit over the ground, for the room overhead",
            Some(ROOM),
            Length::from_si(0.0),
            "engineering judgement",
            "levels are open: on the ground",
        )
    });
    let top = match &unit.hopper {
        Some(hopper) => reckon!(t, "top of the walls over the ground", [FT, M],
            (bottom = bottom, room = installation.drain_room, hopper = hopper.depth, height = unit.body.height())
            bottom + room + hopper + height),
        None => reckon!(t, "top of the walls over the ground", [FT, M],
            (bottom = bottom, room = installation.drain_room, height = unit.body.height()) bottom + room + height),
    };
    let lifted = unit.pack.as_ref().filter(|_| unit.particulars.lifts_out != Some(false));
    let above = if let Some(pack) = lifted {
        let hook = given(
            t,
            "height of sling and hook",
            Some(LEVEL),
            Length::of(12.0, &IN),
            "engineering judgement",
            "{12 in|305 mm} over a module",
        );
        reckon!(t, "height over the walls to lift a module of the pack out", [IN, MM], (pack = pack.laid.height, hook = hook) pack + hook)
    } else {
        given(
            t,
            "room over open walls to reach in",
            Some(LEVEL),
            Length::of(24.0, &IN),
            "engineering judgement",
            "{24 in|610 mm}: nothing lifts out",
        )
    };
    // What comes out of the manways of one that lies in the ground is lifted over the ground, not over its top.
    let headroom = if installation.least_cover.is_some() {
        above
    } else {
        reckon!(t, "clear height over the ground that the unit needs", [FT, M], (top = top, above = above) top + above)
    };
    Fit { access, ways, taken, choice, top, above, headroom }
}

/// How far units fit a room that is known in part or not at all; what is not known bars nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Room {
    None,
    Units,
    Walkways,
}

impl Way {
    fn fits(&self, site: &Site) -> Room {
        let within = |length: Length, width: Length| {
            site.max_length.q().is_none_or(|room| length <= room) && site.max_width.q().is_none_or(|room| width <= room)
        };
        if within(self.length.q, self.width.q) {
            Room::Walkways
        } else if within(self.row_length.q, self.row_width.q) {
            Room::Units
        } else {
            Room::None
        }
    }
}

fn way<T: Trail>(t: &mut T, train: &Train, access: Val<Length>, arrangement: Arrangement) -> Way {
    let (n, body) = (train.count, &train.unit.body);
    let (long, wide) =
        train.unit.particulars.shipping.map_or((body.over_all(), body.width()), |[long, wide, _]| (long, wide));
    let one: Val<Ratio> = given(t, "one", None, ratio(1.0), Whence::Definition, "1");
    let (along, across) = match arrangement {
        Arrangement::SideBySide => (one, n),
        Arrangement::InLine => (n, one),
    };
    let words = arrangement.word();
    let named = |what: &str| if n.q.si() > 1.0 { format!("{what}, {words}") } else { what.to_owned() };
    Way {
        arrangement,
        row_length: reckon!(t, &named("length of the units, walkways between"), [FT, M],
            (n = along, length = long, access = access) n * length + (n - ratio(1.0)) * access),
        row_width: reckon!(t, &named("width of the units, walkways between"), [FT, M],
            (n = across, width = wide, access = access) n * width + (n - ratio(1.0)) * access),
        length: reckon!(t, &named("length taken up, walkways around"), [FT, M],
            (n = along, length = long, access = access) n * length + (n + ratio(1.0)) * access),
        width: reckon!(t, &named("width taken up, walkways around"), [FT, M],
            (n = across, width = wide, access = access) n * width + (n + ratio(1.0)) * access),
    }
}

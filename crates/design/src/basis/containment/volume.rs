//! What one containment holds: area, depth, stone and what stands in it.

use super::reach::{Open, Reach, asked};
use crate::basis::stated::{declared, stand_in, stated};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Containment, ContainmentKind};
use crate::enquiry::containments::{covered, same_name};
use crate::provenance::{Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::vessel::containment_void;
use stillrise_units::catalog::{FT2, GAL, IN, M2, M3, MM, PERCENT};
use stillrise_units::{Area, Length, Ratio, Typed, Volume, ratio};

/// Sizes of a containment.
#[derive(Debug, Clone)]
pub struct Shape {
    /// Area in plan.
    pub area: Reach<Area>,
    /// Area less foundations.
    pub clear: Val<Area>,
    /// Usable depth.
    pub depth: Val<Length>,
    /// Share of the depth that is open, on average.
    pub open_share: Val<Ratio>,
    /// Volume of what else stands in it.
    pub taken: Val<Volume>,
}

/// What it holds up to its overflow, and its sizes where they are what it follows from.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn holds<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    c: &Containment,
    name: &str,
    open: &mut Vec<Open>,
) -> Result<(Reach<Volume>, Option<Shape>), Stop> {
    let head = c.at.head();
    if c.volume.is_given() {
        let none = Volume::from_si(0.0);
        let label = format!("what {name} holds");
        let none = stand_in((none, none, none), "stated");
        return Ok((asked(t, w, c.volume().unasked(), &label, none, open), None));
    }
    let area = area(t, w, e, c, name, open);
    let key = c.depth().of(name);
    let usual = declared(key.spec);
    let depth = asked(t, w, key, &format!("usable depth of {name}"), usual, open);
    let (stone, voids) = stone(t, w, e, c, name, &depth, open);
    let taken_area = deducted(t, w, c, name, &area, open);
    let taken =
        stated(t, w, &say!(T, "volume of what else stands in {name}"), &c.deducted_volume).unwrap_or_else(|| {
            let none = Volume::from_si(0.0);
            given(t, &format!("volume of what else stands in {name}"), Some((&GAL, &M3)), none, head, "nothing stated")
        });
    let val = by!(
        t,
        &say!(T, "what {name} holds"),
        containment_void::volume(area.val, taken_area.val, depth.val, stone.val, voids.val, taken)
    )?;
    let end = |a, less, d, s, v| containment_void::volume(a, less, d, s, v, taken.q).map_err(Stop::from);
    let low = end(area.low, taken_area.high, depth.low, stone.high, voids.low)?;
    let high = end(area.high, taken_area.low, depth.high, stone.low, voids.high)?;
    let clear =
        reckon!(t, &say!(T, "clear area of {name}"), [FT2, M2], (area = area.val, taken = taken_area.val) area - taken);
    let open_share = reckon!(
        t,
        &say!(T, "share of the depth of {name} that is open"),
        [PERCENT, PERCENT],
        (depth = depth.val, stone = stone.val, voids = voids.val)(depth - stone.min(depth) + voids * stone.min(depth))
            / depth
    );
    let shape = Shape { area, clear, depth: depth.val, open_share, taken };
    Ok((Reach { val, low: low.min(val.q), high: high.max(val.q) }, Some(shape)))
}

/// Its area in plan: stated, that of the surfaces it covers, or asked.
fn area<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    c: &Containment,
    name: &str,
    open: &mut Vec<Open>,
) -> Reach<Area> {
    let label = format!("area of {name}");
    // One surface that bears its name is itself.
    let all: Vec<&str> = covered(e, c).filter_map(|s| s.name.as_deref()).collect();
    let own = all.iter().find(|s| all.len() == 1 || same_name(s, name));
    if let (false, Some(surface)) = (c.area.is_given(), own.and_then(|s| surface(t, w, e, s))) {
        let because = "no area of its own is stated; the surface that it covers is taken for it";
        let units = Some((&FT2, &M2) as crate::provenance::Pair);
        let area = choose(t, &label, units, surface.q, "the surfaces that it covers", because, &[surface.at]);
        return Reach::known(area);
    }
    let key = c.area().of(name);
    let usual = declared(key.spec);
    asked(t, w, key, &label, usual, open)
}

/// The area of a surface by its name, as stated.
fn surface<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, name: &str) -> Option<Val<Area>> {
    let found = e.surfaces.iter().find(|s| s.name.as_deref().is_some_and(|own| same_name(own, name)))?;
    stated(t, w, &say!(T, "area of {name}"), &found.area)
}

/// Places whose pits are filled with stone.
const OF_TRANSFORMERS: [&str; 2] = ["transformer-yard", "substation"];

/// Depth of the stone and its voids.
fn stone<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    c: &Containment,
    name: &str,
    depth: &Reach<Length>,
    open: &mut Vec<Open>,
) -> (Reach<Length>, Reach<Ratio>) {
    let head = c.at.head();
    let label = format!("depth of the stone in {name}");
    let none = Length::from_si(0.0);
    let units = (&IN, &MM) as crate::provenance::Pair;
    let stone = match c.kind.0 {
        _ if c.stone_depth.is_given() => {
            asked(t, w, c.stone_depth(), &label, stand_in((none, none, none), "stated"), open)
        }
        _ if c.voids.is_given() => {
            let because = "voids are stated and no depth of the stone: it is taken to reach to the overflow";
            let full =
                choose(t, &label, Some(units), depth.val.q, "none, and the whole depth", because, &[depth.val.at]);
            Reach { val: full, low: depth.low, high: depth.high }
        }
        Some(ContainmentKind::Bund | ContainmentKind::CatchBasin) => {
            Reach::known(given(t, &label, Some(units), none, head, "none stated, and none usual there"))
        }
        // Stone lies in the pits of transformers; at a place that is said to be another none is usual.
        None if e.head.facility.as_deref().is_some_and(|place| !OF_TRANSFORMERS.contains(&place))
            && !c.vessel_oil.is_given() =>
        {
            Reach::known(given(t, &label, Some(units), none, head, "none stated, and none usual at such a place"))
        }
        Some(ContainmentKind::Pit) | None => {
            let full = stand_in(
                (none, depth.val.q, depth.high),
                "IEEE 980, Annex B: pits of transformers are filled with stone; the safe side is a fill to the overflow",
            );
            asked(t, w, c.stone_depth().of(name), &label, full, open)
        }
    };
    let label = format!("voids of the stone in {name}");
    let percent = (&PERCENT, &PERCENT) as crate::provenance::Pair;
    if stone.high == none {
        return (stone, Reach::known(given(t, &label, Some(percent), ratio(1.0), head, "no stone")));
    }
    let key = c.voids().of(name);
    let usual = declared(key.spec);
    (stone, asked(t, w, key, &label, usual, open))
}

/// Area that foundations and equipment take.
fn deducted<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    c: &Containment,
    name: &str,
    area: &Reach<Area>,
    open: &mut Vec<Open>,
) -> Reach<Area> {
    let label = format!("area of {name} that foundations and equipment take");
    let none = Area::from_si(0.0);
    if c.kind.0 == Some(ContainmentKind::CatchBasin) && !c.deducted_area.is_given() {
        return Reach::known(given(t, &label, Some((&FT2, &M2)), none, c.at.head(), "nothing stands in a basin"));
    }
    let share = stand_in(
        (none, area.val.q * ratio(0.1), area.val.q * ratio(0.25)),
        "engineering judgement; the example of IEEE 980, Annex B, has 18 of 195 m2",
    );
    asked(t, w, c.deducted_area().of(name), &label, share, open)
}

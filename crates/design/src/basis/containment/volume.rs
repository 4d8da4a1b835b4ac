//! What one containment holds: area, depth, stone and what stands in it.

use super::reach::{Open, Reach, asked};
use crate::basis::stated::{block_of, key_of, line_of, standby, stated};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Containment, ContainmentKind};
use crate::enquiry::containments::{covered, same_name};
use crate::provenance::{Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::vessel::containment_void;
use stillrise_units::catalog::{FT2, GAL, IN, M, M2, M3, MM, PERCENT};
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
    let key = block_of("containment", name);
    if c.volume.is_given() {
        let none = Volume::from_si(0.0);
        let label = format!("what {name} holds");
        let ask = standby(&label, (&GAL, &M3), line_of(&key, "volume"), "", (none, none, none), "stated");
        return Ok((asked(t, w, &c.volume, ask, open), None));
    }
    let area = area(t, w, e, c, name, open);
    let depth = asked(
        t,
        w,
        &c.depth,
        standby(
            &format!("usable depth of {name}"),
            (&IN, &MM),
            line_of(&key, "depth"),
            format!("How deep is the {name}, from its floor to its overflow or the lowest point of its rim?"),
            (Length::of(0.15, &M), Length::of(0.5, &M), Length::of(1.5, &M)),
            "engineering judgement: a kerb to a deep pit",
        ),
        open,
    );
    let (stone, voids) = stone(t, w, e, c, name, &depth, open);
    let taken_area = deducted(t, w, c, name, &area, open);
    let taken =
        stated(t, w, &say!(T, "volume of what else stands in {name}"), &c.deducted_volume).unwrap_or_else(|| {
            let none = Volume::from_si(0.0);
            given(t, &format!("volume of what else stands in {name}"), Some((&GAL, &M3)), none, &key, "nothing stated")
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
    let square = |x: f64| Area::of(x, &M2);
    let ask = standby(
        &label,
        (&FT2, &M2),
        key_of("containment", name, "area"),
        format!("What is the area of the {name} in plan?"),
        (square(10.0), square(50.0), square(500.0)),
        "engineering judgement: the bund of a small tank to the pit of a large transformer",
    );
    asked(t, w, &c.area, ask, open)
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
    let key = block_of("containment", name);
    let label = format!("depth of the stone in {name}");
    let none = Length::from_si(0.0);
    let units = (&IN, &MM) as crate::provenance::Pair;
    let stone = match c.kind.0 {
        _ if c.stone_depth.is_given() => {
            let ask = standby(&label, units, line_of(&key, "stone_depth"), "", (none, none, none), "stated");
            asked(t, w, &c.stone_depth, ask, open)
        }
        _ if c.voids.is_given() => {
            let because = "voids are stated and no depth of the stone: it is taken to reach to the overflow";
            let full =
                choose(t, &label, Some(units), depth.val.q, "none, and the whole depth", because, &[depth.val.at]);
            Reach { val: full, low: depth.low, high: depth.high }
        }
        Some(ContainmentKind::Bund | ContainmentKind::CatchBasin) => {
            Reach::known(given(t, &label, Some(units), none, &key, "none stated, and none usual there"))
        }
        // Stone lies in the pits of transformers; at a place that is said to be another none is usual.
        None if e.head.facility.as_deref().is_some_and(|place| !OF_TRANSFORMERS.contains(&place))
            && !c.vessel_oil.is_given() =>
        {
            Reach::known(given(t, &label, Some(units), none, &key, "none stated, and none usual at such a place"))
        }
        Some(ContainmentKind::Pit) | None => {
            let ask = standby(
                &label,
                units,
                line_of(&key, "stone_depth"),
                format!("Is the {name} filled with stone, and how deep?"),
                (none, depth.val.q, depth.high),
                "IEEE 980, Annex B: pits of transformers are filled with stone; the safe side is a fill to the overflow",
            );
            asked(t, w, &c.stone_depth, ask, open)
        }
    };
    let label = format!("voids of the stone in {name}");
    let percent = (&PERCENT, &PERCENT) as crate::provenance::Pair;
    if stone.high == none {
        return (stone, Reach::known(given(t, &label, Some(percent), ratio(1.0), &key, "no stone")));
    }
    let ask = standby(
        &label,
        percent,
        line_of(&key, "voids"),
        format!("What share of the stone in the {name} is void?"),
        (ratio(0.30), ratio(0.35), ratio(0.40)),
        "IEEE 980, Annex B: 35 % for stone of 1.5 in; the range is engineering judgement",
    );
    (stone, asked(t, w, &c.voids, ask, open))
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
    let key = block_of("containment", name);
    let none = Area::from_si(0.0);
    if c.kind.0 == Some(ContainmentKind::CatchBasin) && !c.deducted_area.is_given() {
        return Reach::known(given(t, &label, Some((&FT2, &M2)), none, &key, "nothing stands in a basin"));
    }
    let ask = standby(
        &label,
        (&FT2, &M2),
        line_of(&key, "deducted_area"),
        format!("Which area do foundations and equipment take in the {name}?"),
        (none, area.val.q * ratio(0.1), area.val.q * ratio(0.25)),
        "engineering judgement; the example of IEEE 980, Annex B, has 18 of 195 m2",
    );
    asked(t, w, &c.deducted_area, ask, open)
}

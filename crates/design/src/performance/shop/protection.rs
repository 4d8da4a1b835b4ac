//! Cathodic protection of a coated steel cylinder in the ground, by magnesium anodes: the size of it.

use super::super::shell::metal;
use super::{SHOP, plate};
use crate::basis::stated::stated_or_usual;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, WhatIf, choose, given};
use crate::train::unit::Unit;
use crate::{by, record, say};
use stillrise_handbook::shop::strengths::Metal;
use stillrise_handbook::shop::{anode_current, anode_mass, protection_current};
use stillrise_handbook::sources::UFC_3_570_02A;
use stillrise_units::catalog::{KG, LB, ONE};
use stillrise_units::{Area, Mass, Ratio, Time, Typed, ratio};

const PURE: Pair = (&ONE, &ONE);
/// Magnesium that an ampere takes in a year, and the share of it that protects.
const MAGNESIUM_LB: f64 = 8.8;
const EFFICIENCY: f64 = 0.5;
/// Mass of the anode that the page counts with.
const ANODE_LB: f64 = 17.0;

record! {
    /// The protection.
    Protection {
        /// coated steel in the ground
        area: Area;
        /// share of it that is bare
        bare: Ratio;
        /// current for bare steel, mA for each square foot
        density: Ratio;
        /// current, A
        current: Ratio;
        /// how long the anodes last
        life: Time;
        /// magnesium that is used up
        mass: Mass;
        /// resistivity of the soil, ohm cm
        soil: Ratio;
        /// current that one anode gives, A
        one: Ratio;
        /// anodes of 17 lb
        anodes: Ratio;
    }
}

/// Finds it; `None` for a unit that is no cylinder of carbon steel made for the ground.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn protection<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    unit: &Unit,
) -> Result<Option<Protection>, Stop> {
    let steel = metal(unit).is_some_and(|strength| strength.metal == Metal::Carbon);
    if !unit.arrangement.is_in_ground() || !steel {
        return Ok(None);
    }
    t.section(format_args!("{SHOP}: cathodic protection"));
    let area = plate::area(t, unit, 0.0)?;
    let source = &say!(T, "{UFC_3_570_02A}");
    let own = &e.installation;
    let bare = stated_or_usual(t, w, own.bare(), "share of the coated steel that is bare");
    let density = stated_or_usual(t, w, own.current(), "current for bare steel in mA for each square foot");
    let life = stated_or_usual(t, w, own.anode_life(), "life of the anodes");
    let soil = stated_or_usual(t, w, own.soil_resistivity(), "resistivity of the soil in ohm centimetres");
    let current = by!(t, "current that protects it, A", protection_current::current(area, bare, density))?;
    let rate = given(
        t,
        "magnesium that an ampere takes in a year",
        Some((&LB, &KG)),
        Mass::of(MAGNESIUM_LB, &LB),
        source,
        "{8.8 lb|3.99 kg}",
    );
    let share = given(t, "efficiency of magnesium", Some(PURE), ratio(EFFICIENCY), source, "0.50");
    let mass = by!(t, "magnesium that is used up", anode_mass::mass(life, rate, current, share))?;
    let size = given(t, "factor of the anode's size", Some(PURE), ratio(1.0), source, "an anode of {17 lb|7.7 kg}");
    let one = by!(t, "current that one anode gives, A", anode_current::current(soil, size))?;
    let by_mass = (mass.q.in_unit(&LB) / ANODE_LB).ceil();
    let by_current = (current.q.si() / one.q.si()).ceil();
    let anodes = choose(
        t,
        "anodes of {17 lb|7.7 kg}",
        Some(PURE),
        ratio(by_mass.max(by_current).max(1.0)),
        "by their mass, by their current",
        if by_current > by_mass {
            "the next whole number by their current"
        } else {
            "the next whole number by their mass"
        },
        &[mass.at, current.at, one.at],
    );
    Ok(Some(Protection { area, bare, density, current, life, mass, soil, one, anodes }))
}

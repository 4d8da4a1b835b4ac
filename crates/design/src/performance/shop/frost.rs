//! Frost on a unit that stands outdoors over the ground: what its walls lose, how soon standing water begins to freeze, what a
//! heater has to give.

use super::super::installation::{Installation, Stands};
use super::weights::Weights;
use super::{SHOP, plate};
use crate::basis::Basis;
use crate::basis::stated::{stand_in, stated, stated_or, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, given};
use crate::train::unit::Unit;
use crate::{by, reckon, say};
use stillrise_handbook::shop::insulation::{INSULATIONS, SURFACES};
use stillrise_handbook::shop::{cooling_time, wall_heat_loss};
use stillrise_units::catalog::{DEG_C, DEG_F, IN, MM, ONE, PERCENT};
use stillrise_units::{Area, Length, Power, Temperature, Time, Typed, ratio};

const PURE: Pair = (&ONE, &ONE);
const WARM: Pair = (&DEG_F, &DEG_C);
const THICK: Pair = (&IN, &MM);
/// Insulation that is proposed where none is stated.
const PROPOSED_IN: f64 = 2.0;
/// What a heater gets on top of the loss, common practice.
const SPARE: f64 = 0.25;

/// A unit in frost.
#[derive(Debug, Clone)]
pub struct Frost {
    /// Coldest air.
    pub air: Val<Temperature>,
    /// All of its surface.
    pub area: Val<Area>,
    /// Insulation, as stated; `None` where nothing was said of it, and bare walls are counted.
    pub insulation: Option<Val<Length>>,
    /// What it loses as it stands, at the temperature of the coldest water.
    pub loss: Val<Power>,
    /// Temperature of that water.
    pub water: Val<Temperature>,
    /// Until that water, standing still, begins to freeze; `None` where it is no warmer than that.
    pub freezes_in: Option<Val<Time>>,
    /// Temperature at which a heater keeps it.
    pub kept: Val<Temperature>,
    /// Insulation with which the heater is worked: as stated, else as proposed.
    pub with: Val<Length>,
    /// What the heater gives.
    pub heater: Val<Power>,
    /// The same without insulation.
    pub heater_bare: Val<Power>,
}

/// Finds it; `None` in a heated room, in the ground, or where the air is not known to be below freezing.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn frost<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    unit: &Unit,
    installation: &Installation,
    weights: &Weights,
) -> Result<Option<Frost>, Stop> {
    let in_ground = unit.arrangement.is_in_ground() || unit.arrangement.is_built_in();
    let freezing = Temperature::of(0.0, &DEG_C);
    let below = e.site.coldest_air.q().is_some_and(|air| air < freezing);
    if in_ground || installation.stands.q == Stands::Buried || *e.site.indoors == Some(true) || !below {
        return Ok(None);
    }
    t.section(format_args!("{SHOP}: frost"));
    let Some(air) = stated(t, w, "coldest air", &e.site.coldest_air) else { return Ok(None) };
    let area = plate::area(t, unit, 1.0)?;
    let kind = &INSULATIONS[0];
    let k = stated_or(t, w, e.installation.conductivity(), "conductivity of the insulation in W/(m K)", || {
        let range = (ratio(0.025), ratio(kind.conductivity), ratio(0.06));
        stand_in(range, say!(T, "{}, {}", kind.source, kind.title))
    });
    let row = &SURFACES[0];
    let surface = given(
        t,
        "resistance of the outside surface in m2 K/W",
        Some(PURE),
        ratio(row.resistance),
        &say!(T, "{}", row.source),
        row.title,
    );
    let kept = stated_or_usual(t, w, e.installation.kept_at(), "temperature at which a heater keeps the water");
    let insulation = stated(t, w, "thickness of the insulation", &e.installation.insulation);
    let bare = given(t, "no insulation", Some(THICK), Length::from_si(0.0), Whence::Definition, "bare walls");
    let with = insulation.filter(|stated| stated.q.si() > 0.0).unwrap_or_else(|| {
        given(
            t,
            "insulation that is proposed",
            Some(THICK),
            Length::of(PROPOSED_IN, &IN),
            "our proposal",
            "{2 in|51 mm}",
        )
    });
    let water = basis.fluids.cold.temperature;
    let label = "heat lost as it stands, at the temperature of the coldest water";
    let loss = by!(t, label, wall_heat_loss::loss(area, water, air, insulation.unwrap_or(bare), k, surface))?;
    let ice = given(t, "water freezes at", Some(WARM), freezing, Whence::Definition, "{32 °F|0 °C}");
    let freezes_in = if water.q > freezing {
        let label = "time until standing water begins to freeze";
        Some(by!(t, label, cooling_time::time(weights.water, loss, water, ice, air))?)
    } else {
        None
    };
    let spare = given(
        t,
        "on top of the loss for a heater",
        Some((&PERCENT, &PERCENT)),
        ratio(SPARE),
        "common practice",
        "a quarter",
    );
    let heater = |label: &str, thickness: Val<Length>, t: &mut T| -> Result<Val<Power>, Stop> {
        let loss =
            by!(t, &say!(T, "heat lost, {label}"), wall_heat_loss::loss(area, kept, air, thickness, k, surface))?;
        Ok(reckon!(t, &say!(T, "heater, {label}"), [KW, KW], (loss = loss, spare = spare) loss + loss * spare))
    };
    let insulated = heater("insulated", with, t)?;
    let heater_bare = heater("bare", bare, t)?;
    Ok(Some(Frost { air, area, insulation, loss, water, freezes_in, kept, with, heater: insulated, heater_bare }))
}

//! Caps on a layer of oil: what it would reach, stage by stage, and the margins that are kept.

use super::hydraulics::Profile;
use crate::basis::fluids::{Fluids, OilState};
use crate::basis::stated::{declared, stand_in, stated_or, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, WhatIf};
use crate::stages::{Reach, Stage};
use crate::train::Train;
use crate::train::unit::Unit;
use crate::{by, reckon};
use stillrise_handbook::vessel::wall_cap;
use stillrise_units::catalog::IN;
use stillrise_units::{Density, Length, Typed};

/// What the caps of one oil are worked from.
pub struct Caps<'a> {
    /// The profile at the largest flow, fouled.
    pub highest: &'a Profile,
    /// Loss between where oil is held and the clear well, at that flow.
    pub loss: Val<Length>,
    /// The oil.
    pub oil: &'a OilState,
    /// Density of the coldest water.
    pub cold: Val<Density>,
    /// Density of the warmest water.
    pub warm: Val<Density>,
}

/// One cap on the oil layer.
#[derive(Debug, Clone)]
pub struct Cap {
    /// What the oil would reach.
    pub of: Reach,
    /// Thickest layer that does not.
    pub thickness: Val<Length>,
}

/// Margins that hold for all oils.
pub struct Margins {
    /// Water kept over the lip of the downcomer.
    pub lip: Val<Length>,
    /// Water kept over the plates.
    pub pack: Val<Length>,
    /// Freeboard.
    pub freeboard: Val<Length>,
    /// Gap kept under the inlet's invert.
    pub inlet: Val<Length>,
    /// Lowest level of the clear well.
    pub lowest: Val<Length>,
}

/// The margins: proposals of the handbook, unless the site says otherwise.
pub fn margins<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, unit: &Unit) -> Margins {
    t.section("oil levels");
    let inches = |x: f64| Length::of(x, &IN);
    let own = &e.unit;
    let small = unit.outlet.crest.q < inches(36.0);
    let label = "water kept over the lip";
    // Over a lip in shallow water the usual margin would leave no room for oil.
    let lip = stated_or(t, w, own.lip_margin(), label, || match small {
        true => stand_in((inches(2.0), inches(3.0), inches(6.0)), "our proposal"),
        false => declared(own.lip_margin().spec),
    });
    let pack = stated_or_usual(t, w, own.pack_margin(), "water kept over the pack");
    let freeboard = stated_or_usual(t, w, own.freeboard(), "freeboard");
    let inlet = stated_or_usual(t, w, own.inlet_gap(), "gap kept under the inlet invert");
    let fall = stated_or_usual(t, w, own.evaporation(), "evaporation and leakage below the crest");
    let lowest =
        reckon!(t, "lowest level of the clear well", [IN, MM], (crest = unit.outlet.crest, fall = fall) crest - fall);
    Margins { lip, pack, freeboard, inlet, lowest }
}

/// The caps on one oil, from the outlet upstream, and the top of the vessel.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn caps<T: Trail>(
    t: &mut T,
    train: &Train,
    m: &Margins,
    highest: &Profile,
    oil: &OilState,
    fluids: &Fluids,
) -> Result<Vec<Cap>, Stop> {
    let unit = &train.unit;
    let (cold, warm) = (&fluids.cold, &fluids.warm);
    let loss = reckon!(t, "loss between oil zone and clear well, largest flow", [IN, MM], (chamber = highest.chamber, well = highest.well) chamber - well);
    // Deepest interface: heavy, cold oil on the lowest water. Highest surface: light, warm oil at the largest flow.
    let mut caps = Vec::new();
    let own = Caps { highest, loss, oil, cold: cold.density, warm: warm.density };
    for stage in unit.stages.all().into_iter().rev() {
        caps.extend(stage.cap(t, m, &own)?);
    }
    let wall = by!(
        t,
        "cap by the wall",
        wall_cap::thickness(unit.body.height(), m.freeboard, highest.well, loss, oil.warm, warm.density)
    )?;
    caps.push(Cap { of: Reach::Wall, thickness: wall });
    Ok(caps)
}

//! Droplets and solids at the inlet of the unit: as stated, or as assumed and then sheared by the
//! pump ahead.

use super::cases::FeedState;
use super::fluids::Fluids;
use super::stated::{standby, standby_spread, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, WhatIf, assume, choose};
use crate::{by, record};
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::fluids::facilities::facility;
use stillrise_handbook::separation::{hinze_droplet, sheared_median};
use stillrise_units::catalog::{KG_M3, LB_FT3, MN_M, ONE, PERCENT, UM, W_KG};
use stillrise_units::{Density, Dissipation, Length, Ratio, SurfaceTension, Typed, ratio};

record! {
    /// Droplets of the free oil.
    Droplets {
        /// volume median diameter at the unit
        d50: Length;
        /// geometric standard deviation
        spread: Ratio;
    }
}

record! {
    /// Solids and the sludge they make.
    Solids {
        /// median grain size
        d50: Length;
        /// density of the grains
        density: Density;
        /// dry solids in settled sludge, by mass
        in_sludge: Ratio;
        /// density of settled sludge
        sludge_density: Density;
    }
}

/// What the pump does to the droplets.
#[derive(Debug, Clone)]
pub struct Shear {
    /// Largest droplet that survives the pump.
    pub survives: Val<Length>,
    /// Volume median it leaves.
    pub median: Val<Length>,
    /// Whether it is below what would have come without the pump.
    pub governs: bool,
}

/// Finds the droplets at the unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn droplets<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    feed: &FeedState,
) -> Result<(Droplets, Option<Shear>), Stop> {
    t.section("droplets");
    let um = |x: f64| Length::of(x, &UM);
    let site = e.head.facility.as_deref().and_then(facility);
    let question = "Has the droplet size at the separator been measured, or what shears the oil ahead of it?";
    let width = "How far do the droplet sizes spread: one source, or several mixed?";
    let spread = stated_or(
        t,
        w,
        &e.droplets.spread,
        match site {
            Some(site) => {
                standby_spread("geometric standard deviation", (&ONE, &ONE), "droplets.spread", width, &site.spread)
            }
            None => standby(
                "geometric standard deviation",
                (&ONE, &ONE),
                "droplets.spread",
                width,
                (ratio(1.5), ratio(2.0), ratio(3.0)),
                "engineering judgement",
            ),
        },
    );
    if let Some(d50) = stated(t, w, "volume median diameter at the unit", &e.droplets.d50) {
        return Ok((Droplets { d50, spread }, None));
    }
    // Ahead of a pump the answer stands for what arrives; else for what reaches the unit.
    let key = if feed.pumped { "droplets.arriving" } else { "droplets.d50" };
    let arriving = match stated(t, w, "volume median diameter arriving", &e.droplets.arriving) {
        Some(arriving) => arriving,
        None => assume(
            t,
            w,
            match site {
                Some(site) => {
                    standby_spread("volume median diameter arriving", (&UM, &UM), key, question, &site.droplet_d50)
                }
                None => standby(
                    "volume median diameter arriving",
                    (&UM, &UM),
                    key,
                    question,
                    (um(30.0), um(75.0), um(150.0)),
                    "engineering judgement; no kind of place was named",
                ),
            },
        ),
    };
    if !feed.pumped {
        return Ok((Droplets { d50: arriving, spread }, None));
    }
    // The oil with the lowest tension breaks into the finest droplets.
    let mut clean = fluids.oils[0].tension;
    for oil in &fluids.oils {
        if oil.tension.q < clean.q {
            clean = oil.tension;
        }
    }
    let detergent =
        e.chemicals.iter().filter_map(|c| c.kind.as_deref().and_then(chemical)).any(|c| c.effect == Effect::Emulsifies);
    let tension = if detergent {
        assume(
            t,
            w,
            standby(
                "interfacial tension with detergent",
                (&MN_M, &MN_M),
                "chemical.tension",
                "",
                (SurfaceTension::of(1.0, &MN_M), SurfaceTension::of(4.0, &MN_M), SurfaceTension::of(15.0, &MN_M)),
                "from memory: 3 to 5 mN/m with surfactant, less with strong detergent",
            ),
        )
    } else {
        clean
    };
    let at = |x: f64| Dissipation::of(x, &W_KG);
    let (range, question, source) = match feed.class {
        Some(class) => {
            let [low, likely, high] = class.dissipation();
            ((low, likely, high), "", class.shear_mark.text())
        }
        None => (
            (at(1.0), at(1000.0), at(10_000.0)),
            "Which pump lifts the water to the separator?",
            "kind of pump not said; taken as the centrifugal pump of most sumps, engineering judgement".to_owned(),
        ),
    };
    let epsilon =
        assume(t, w, standby("power dissipated in the pump", (&W_KG, &W_KG), "inlet.pump", question, range, source));
    let survives = by!(
        t,
        "largest droplet that survives the pump",
        hinze_droplet::diameter(tension, fluids.cold.density, epsilon)
    )?;
    let median = by!(t, "median the pump leaves", sheared_median::diameter(survives, spread))?;
    let governs = median.q < arriving.q;
    let d50 = if governs {
        choose(
            t,
            "volume median diameter at the unit",
            Some((&UM, &UM)),
            median.q,
            "what arrives, and what the pump leaves",
            "the pump breaks the droplets",
            &[arriving.at, median.at],
        )
    } else {
        arriving
    };
    Ok((Droplets { d50, spread }, Some(Shear { survives, median, governs })))
}

/// Finds the solids.
pub fn solids<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Solids {
    t.section("solids");
    let um = |x: f64| Length::of(x, &UM);
    let rho = |x: f64| Density::of(x, &KG_M3);
    Solids {
        d50: stated_or(
            t,
            w,
            &e.solids.d50,
            standby(
                "median grain size",
                (&UM, &UM),
                "solids.d50",
                "How fine are the solids?",
                (um(20.0), um(60.0), um(200.0)),
                "engineering judgement: silt to fine sand off paved yards",
            ),
        ),
        density: stated_or(
            t,
            w,
            &e.solids.density,
            standby(
                "density of the grains",
                (&LB_FT3, &KG_M3),
                "solids.density",
                "What are the solids made of?",
                (rho(1200.0), rho(2650.0), rho(2650.0)),
                "quartz; the low end for organic or oil-coated solids",
            ),
        ),
        in_sludge: stated_or(
            t,
            w,
            &e.solids.in_sludge,
            standby(
                "dry solids in settled sludge",
                (&PERCENT, &PERCENT),
                "solids.in_sludge",
                "How thick does the sludge settle?",
                (ratio(0.10), ratio(0.20), ratio(0.40)),
                "engineering judgement",
            ),
        ),
        sludge_density: stated_or(
            t,
            w,
            &e.solids.sludge_density,
            standby(
                "density of settled sludge",
                (&LB_FT3, &KG_M3),
                "solids.sludge_density",
                "How heavy is the settled sludge?",
                (rho(1041.0), rho(1121.0), rho(1201.0)),
                "from memory: 65 to 75 lb/ft3 wet",
            ),
        ),
    }
}

//! Solids at the inlet of the unit, and the sludge they make.

use super::fluids::{Fluids, Season};
use super::stated::{standby, stated, stated_or_by_hand};
use crate::enquiry::Enquiry;
use crate::provenance::Val;
use crate::provenance::{Pair, Stop, Trail, WhatIf, given};
use crate::{by, record};
use stillrise_handbook::droplets::measured_median;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::coated_density;
use stillrise_units::catalog::{KG_M3, LB_FT3, ONE, PERCENT, UM};
use stillrise_units::{Density, Length, Ratio, Typed, ratio};

record! {
    /// Solids and the sludge they make.
    Solids {
        /// median grain size
        d50: Length;
        /// geometric standard deviation of the sizes
        spread: Ratio;
        /// sieved: size, and share of the mass that is finer
        table: Series;
        /// density of the grains, bare
        bare: Density;
        /// density of the grains with the oil that clings to them
        density: Density;
        /// dry solids in settled sludge, by mass
        in_sludge: Ratio;
        /// density of settled sludge
        sludge_density: Density;
    }
}

/// Finds the solids, and the oil that clings to them if it is stated.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn solids<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
) -> Result<(Solids, Option<Val<Ratio>>), Stop> {
    t.section("solids");
    let um = |x: f64| Length::of(x, &UM);
    let rho = |x: f64| Density::of(x, &KG_M3);
    let size = Some((&UM, &UM) as Pair);
    let sieved = &e.solids.table;
    let table = if sieved.is_given() {
        given(t, "sieved grains", size, sieved.rows.clone(), &sieved.claims.source(&sieved.claims.place), &sieved.text)
    } else {
        given(t, "sieved grains", size, Series::default(), "definition", "none sieved")
    };
    let d50 = if sieved.is_given() {
        by!(t, "median grain size", measured_median::diameter(table))?
    } else {
        stated_or_by_hand(t, w, &e.solids.d50, || {
            standby(
                "median grain size",
                (&UM, &UM),
                "solids.d50",
                "How fine are the solids?",
                (um(20.0), um(60.0), um(200.0)),
                "engineering judgement: silt to fine sand off paved yards",
            )
        })
    };
    let spread = stated_or_by_hand(t, w, &e.solids.spread, || {
        standby(
            "geometric standard deviation of the grains",
            (&ONE, &ONE),
            "solids.spread",
            "",
            (ratio(1.5), ratio(2.5), ratio(4.0)),
            "engineering judgement: graded silt and sand",
        )
    });
    let bare = stated_or_by_hand(t, w, &e.solids.density, || {
        standby(
            "density of the grains",
            (&LB_FT3, &KG_M3),
            "solids.density",
            "What are the solids made of?",
            (rho(1200.0), rho(2650.0), rho(2650.0)),
            "quartz; the low end for organic or oil-coated solids",
        )
    });
    let oil = stated(t, w, "oil on the grains", &e.solids.oil);
    let density = match oil {
        Some(oil) => {
            let on = fluids.heaviest(Season::Cold).cold;
            by!(t, "density of the grains with their oil", coated_density::density(bare, on, oil))?
        }
        None => bare,
    };
    Ok((
        Solids {
            d50,
            spread,
            table,
            bare,
            density,
            in_sludge: stated_or_by_hand(t, w, &e.solids.in_sludge, || {
                standby(
                    "dry solids in settled sludge",
                    (&PERCENT, &PERCENT),
                    "solids.in_sludge",
                    "How thick does the sludge settle?",
                    (ratio(0.10), ratio(0.20), ratio(0.40)),
                    "engineering judgement",
                )
            }),
            sludge_density: stated_or_by_hand(t, w, &e.solids.sludge_density, || {
                standby(
                    "density of settled sludge",
                    (&LB_FT3, &KG_M3),
                    "solids.sludge_density",
                    "How heavy is the settled sludge?",
                    (rho(1041.0), rho(1121.0), rho(1201.0)),
                    "from memory: 65 to 75 lb/ft3 wet",
                )
            }),
        },
        oil,
    ))
}

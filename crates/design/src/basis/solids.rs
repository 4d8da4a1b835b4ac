//! Solids at the inlet of the unit, and the sludge they make.

use super::fluids::{Fluids, Season};
use super::stated::{stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, WhatIf, Whence, given};
use crate::provenance::{Part, Val};
use crate::{by, record};
use stillrise_handbook::droplets::measured_median;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::coated_density;
use stillrise_units::catalog::{KG_M3, LB_FT3, UM};
use stillrise_units::{Density, Length, Ratio};

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
    t.part(Part::Solids, "solids");
    let size = Some((&UM, &UM) as Pair);
    let sieved = &e.solids.table;
    let table = if sieved.is_given() {
        given(t, "sieved grains", size, sieved.rows.clone(), sieved.claims.source(&sieved.claims.place), &sieved.text)
    } else {
        given(t, "sieved grains", size, Series::default(), Whence::Definition, "none sieved")
    };
    let d50 = if sieved.is_given() {
        by!(t, "median grain size", measured_median::diameter(table))?
    } else {
        stated_or_usual(t, w, e.solids.d50(), "median grain size")
    };
    let spread = stated_or_usual(t, w, e.solids.spread(), "geometric standard deviation of the grains");
    let bare = stated_or_usual(t, w, e.solids.density().in_units(&LB_FT3, &KG_M3), "density of the grains");
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
            in_sludge: stated_or_usual(t, w, e.solids.in_sludge(), "dry solids in settled sludge"),
            sludge_density: stated_or_usual(t, w, e.solids.sludge_density(), "density of settled sludge"),
        },
        oil,
    ))
}

//! Rule: oil that hardly rises

use crate::ask::{OILS, oil_is_named};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{KG_M3, LB_FT3, PERCENT};
use stillrise_units::{Density, Typed, print};

rule! {
    "oil-hardly-rises" "Oil that hardly rises", Enquiry;
    client "The oil is nearly as heavy as the water and hardly rises."
    looks "By how much the heaviest oil is lighter than the coldest water: less than {3.12 lb/ft3|50 kg/m3} warns; 2 % of the water or less, some {1.25 lb/ft3|20 kg/m3}, fails. Where no oil was named, or its density is assumed in a range that reaches there, it cannot judge."
    matters "Rise goes with the difference. Near zero, a few degrees, a little salt or grit in the droplets decide whether oil rises at all."
    remedy "Ask for a certificate of the oil's density; heat the water, or use flotation."
    source "EN 858-1 and UFGS 44 42 53: scope to an oil of 0.95, {3.12 lb/ft3|50 kg/m3} lighter than water; 2 % is our proposal, the same as in the triage"
    limits "Densities of named oils are typical values of wide ranges; grit in the oil makes it heavier still."
}

/// Least difference within the scope of the standards.
const SCOPE: f64 = 50.0;
/// Share of the water's density at which the triage no longer speaks of a gravity duty.
const NONE: f64 = 0.02;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let water = basis.fluids.cold.density;
    let Some(oil) = basis.fluids.oils.iter().max_by(|a, b| a.cold.q.si().total_cmp(&b.cold.q.si())) else {
        return s.stopped();
    };
    let lighter = water.q - oil.cold.q;
    let show = |q| s.show(q, (&LB_FT3, &KG_M3));
    let share = (lighter / water.q).si();
    let side = if share < 0.0 { "heavier" } else { "lighter" };
    let says = format!(
        "{} weighs {} in the coldest water of {}: {} {side}",
        oil.name,
        show(oil.cold.q),
        show(water.q),
        print::in_prose(share.abs(), &PERCENT)
    );
    if lighter <= water.q * NONE {
        Verdict::fails(says, oil.cold.at)
    } else if lighter < Density::of(SCOPE, &KG_M3) {
        Verdict::warns(says, oil.cold.at)
    } else if !oil_is_named(s) {
        Verdict::cannot_judge(format!("{says}; no oil was named, and a heavier one may come"), [OILS], oil.cold.at)
    } else {
        // Cold oil is heavier than at 15 °C by nearly the same share, whatever its density.
        let colder = oil.cold.q / oil.density_15.q;
        let clear = |at_15: Density| water.q - at_15 * colder >= Density::of(SCOPE, &KG_M3);
        let doubt = s.rests_on(&says, oil.density_15, (&LB_FT3, &KG_M3), clear);
        doubt.unwrap_or_else(|| Verdict::passes(says))
    }
}

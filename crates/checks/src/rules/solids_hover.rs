//! Rule: solids hover

use super::hopper_missing::most_solids;
use crate::ask::OIL_ON_SOLIDS;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{KG_M3, LB_FT3, PERCENT};
use stillrise_units::{Typed, ratio};

rule! {
    "solids-hover" "Solids too light to settle", Hopper;
    client "Some of the solids are so light that they neither settle nor rise, and leave with the oil on them."
    looks "The density of the grains, with the oil that clings to them, against the water's: no heavier fails, less than a twentieth heavier warns. Where nobody said whether oil clings to them it cannot judge."
    matters "Such grains neither settle nor rise; they carry their oil through the unit, and no plate area helps."
    remedy "A filter or flotation behind the separator; less detergent and no grinding of oily grit ahead of it."
    source "Common practice: solids that carry oil pass as nearly weightless; a twentieth is our proposal"
    limits "One density for all grains; what clings differs from grain to grain."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(basis), Some(performance)) = (&s.design.basis, &s.design.performance) else {
        return s.stopped();
    };
    if most_solids(basis).is_some_and(|solids| solids.q.si() <= 0.0) {
        return Verdict::skips("the water carries no solids");
    }
    let (grains, water) = (basis.solids.density, basis.fluids.cold.density);
    let density = (&LB_FT3, &KG_M3);
    let settled = performance.storage.settled;
    let says = format!(
        "grains of {} in water of {}; {} of the solids settle",
        s.show(grains.q, density),
        s.show(water.q, density),
        s.show(settled.q, (&PERCENT, &PERCENT))
    );
    if grains.q <= water.q {
        Verdict::fails(says, grains.at)
    } else if grains.q < water.q * ratio(1.05) {
        Verdict::warns(says, grains.at)
    } else if basis.oil_on_solids.is_none() {
        Verdict::cannot_judge(
            format!("{says}; that is for bare grains, whether oil clings to them was not said"),
            [OIL_ON_SOLIDS],
            grains.at,
        )
    } else {
        Verdict::passes(says)
    }
}

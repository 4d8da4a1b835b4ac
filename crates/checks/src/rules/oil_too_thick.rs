//! Rule: oil too thick to be drawn off

use crate::ask::{Ask, OILS, oil_is_named};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::{CST, MM2_S};

rule! {
    "oil-too-thick" "Oil too thick to be drawn off in the cold", OilZone;
    client "In the cold the oil is too thick, or nearly so, to run to its draw-off."
    looks "The viscosity of each oil in the coldest water: above 1000 mm2/s it warns, above 10 000 mm2/s it fails. Where no oil was named, or the viscosity of one has no answer at that temperature, it cannot judge."
    matters "Thick oil does not run to the draw-off and clogs plates and mesh, so the layer grows past its alarm."
    remedy "Heat the oil zone, draw off while warm, or skim by hand through the cover."
    source "Our proposal; suction pumps are commonly held to some 1000 mm2/s (common practice)"
    limits "The handbook's viscosity of a typical oil of the kind, by ASTM D341 between two points; below the cloud point it is not valid."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let unknown: Vec<_> = basis.fluids.oils.iter().filter(|o| o.viscosity.is_none()).collect();
    let names = unknown.iter().map(|o| o.name.as_str()).collect::<Vec<_>>().join(" and ");
    let open = |says: String| {
        let at = unknown.first().map(|o| o.density_15.at);
        Verdict::cannot_judge(says, [Ask::open(format!("What is the viscosity of {names} in the coldest water?"))], at)
    };
    let known = basis.fluids.oils.iter().filter_map(|o| o.viscosity.map(|v| (o, v)));
    let Some((oil, v)) = known.max_by(|a, b| a.1.q.si().total_cmp(&b.1.q.si())) else {
        return open(format!("the viscosity of {names} in the coldest water is not known"));
    };
    let says = format!("{} has {} in the coldest water", oil.name, s.show(v.q, (&CST, &MM2_S)));
    let mm2_s = v.q.in_unit(&MM2_S);
    if mm2_s > 10_000.0 {
        Verdict::fails(says, v.at)
    } else if mm2_s > 1000.0 {
        Verdict::warns(says, v.at)
    } else if !oil_is_named(s) {
        Verdict::cannot_judge(format!("{says}; no oil was named, and a thicker one may come"), [OILS], v.at)
    } else if !unknown.is_empty() {
        open(format!("{says}; that of {names} is not known"))
    } else {
        Verdict::passes(says)
    }
}

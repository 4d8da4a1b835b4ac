//! Rule: oil too thick to be drawn off

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::{CST, MM2_S};

rule! {
    "oil-too-thick" "Oil too thick to be drawn off in the cold", OilZone;
    looks "The viscosity of each oil in the coldest water: above 1000 mm2/s it warns, above 10 000 mm2/s it fails."
    matters "Thick oil does not run to the draw-off and clogs plates and mesh, so the layer grows past its alarm."
    remedy "Heat the oil zone, draw off while warm, or skim by hand through the cover."
    source "Our proposal; suction pumps are commonly held to some 1000 mm2/s (common practice)"
    limits "The handbook's viscosity of a typical oil of the kind, by ASTM D341 between two points; below the cloud point it is not valid."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    let known = basis.fluids.oils.iter().filter_map(|o| o.viscosity.map(|v| (o, v)));
    let Some((oil, v)) = known.max_by(|a, b| a.1.q.si().total_cmp(&b.1.q.si())) else {
        return Verdict::skips("no oil's viscosity is known at that temperature");
    };
    let says = format!("{} has {} in the coldest water", oil.name, s.show(v.q, (&CST, &MM2_S)));
    let mm2_s = v.q.in_unit(&MM2_S);
    if mm2_s > 10_000.0 {
        Verdict::fails(says, v.at)
    } else if mm2_s > 1000.0 {
        Verdict::warns(says, v.at)
    } else {
        Verdict::passes(says)
    }
}

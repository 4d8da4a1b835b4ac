//! Rule: droplets sheared ahead of the unit

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::separation::floors;
use stillrise_units::catalog::UM;

rule! {
    "sheared-before-unit" "Droplets sheared ahead of the unit", Inlet;
    looks "Whether the pump, not the site, sets the droplets that reach the unit: then it warns; where the median it leaves is below what is called free oil, it fails."
    matters "Rise goes with the square of the diameter: half the droplet asks for four times the plates."
    remedy "A slow positive-displacement pump, gravity feed, or the pump behind the separator."
    source "Hinze 1955 for the largest droplet; UFGS 44 42 53 for free oil, larger than 20 µm; the dissipation in pumps is judgement, no measurement was found"
    limits "The likely dissipation of the class of pump; the judged range of a class spans ten times and more. Droplets that join again in the pipe are not counted."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    if !basis.feed.pumped {
        return Verdict::skips("the water runs by gravity");
    }
    let Some(shear) = &basis.shear else {
        return Verdict::skips("the droplets at the unit are stated, or the kind of pump is not known");
    };
    let show = |q| s.show(q, (&UM, &UM));
    if !shear.governs {
        return Verdict::passes(format!(
            "the pump would leave a median of {}; what arrives has {}",
            show(shear.median.q),
            show(basis.droplets.d50.q)
        ));
    }
    let free = floors::free_droplet();
    let says = format!(
        "no droplet above {} survives the pump; the median it leaves is {}",
        show(shear.survives.q),
        show(shear.median.q)
    );
    if shear.median.q < free.value {
        Verdict::fails(format!("{says}, below the {} of free oil", show(free.value)), shear.median.at)
    } else {
        Verdict::warns(says, shear.median.at)
    }
}

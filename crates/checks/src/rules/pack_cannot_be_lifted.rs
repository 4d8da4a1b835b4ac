//! Rule: pack cannot be lifted

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{KG, LB};

rule! {
    "pack-cannot-be-lifted" "Pack cannot be lifted out", Pack;
    looks "Whether the pack lifts out from above, and whether the site can lift its heaviest module: a pack that does not lift out or a module too heavy fails, not knowing warns."
    matters "Plates foul. A pack that stays inside is cleaned by somebody in a confined space, or not at all."
    remedy "Lighter or more modules, a hoist or crane at the site, or a pack that lifts out."
    source "UFGS 46 25 14: plates removable without dismantling and without entry; MIL-HDBK-1005/16, 1997, allows hosing in place"
    limits "The weight is that of a wet and fouled module as the range states it; headroom and reach of the lifting gear are not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return Verdict::skips("no unit was laid out") };
    let unit = &train.unit.particulars;
    let mass = |m| s.show(m, (&LB, &KG));
    if unit.lifts_out == Some(false) {
        return Verdict::fails("the pack does not lift out from above", None);
    }
    let lifting = s.enquiry.site.lifting.q();
    if let (Some(weight), Some(lifting)) = (unit.module_weight, lifting)
        && weight.q > lifting
    {
        let says = format!("the heaviest module weighs {}, the site lifts {}", mass(weight.q), mass(lifting));
        return Verdict::fails(says, weight.at);
    }
    if unit.lifts_out.is_none() {
        return Verdict::warns("nothing says whether the pack lifts out from above", None);
    }
    match (unit.module_weight, lifting) {
        (Some(weight), Some(lifting)) => Verdict::passes(format!(
            "the pack lifts out; its heaviest module weighs {}, the site lifts {}",
            mass(weight.q),
            mass(lifting)
        )),
        (None, Some(lifting)) => Verdict::warns(
            format!("the site lifts {}, the weight of the heaviest module is not known", mass(lifting)),
            None,
        ),
        (Some(weight), None) => Verdict::warns(
            format!("the heaviest module weighs {}; what the site can lift over the unit was not said", mass(weight.q)),
            weight.at,
        ),
        (None, None) => Verdict::warns("the pack lifts out; neither its weight nor what the site can lift over the unit was said", None),
    }
}

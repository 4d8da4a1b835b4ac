//! Rule: pack cannot be lifted

use crate::ask::{Ask, LIFTING};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{KG, LB};

rule! {
    "pack-cannot-be-lifted" "Pack cannot be lifted out", Pack;
    client "The plates cannot be lifted out for cleaning."
    looks "Whether the pack lifts out from above, and whether the site can lift its heaviest module: a pack that does not lift out or a module too heavy fails, not knowing it cannot judge."
    matters "Plates foul. A pack that stays inside is cleaned by somebody in a confined space, or not at all."
    remedy "Lighter or more modules, a hoist or crane at the site, or a pack that lifts out."
    source "UFGS 46 25 14: plates removable without dismantling and without entry; MIL-HDBK-1005/16, 1997, allows hosing in place"
    limits "The weight is that of a wet and fouled module as the range states it; headroom and reach of the lifting gear are not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    if train.unit.pack.is_none() {
        return Verdict::skips("no plates");
    }
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
    let weight = unit.module_weight;
    let mut asks = Vec::new();
    let mut says = Vec::new();
    if unit.lifts_out.is_some() {
        says.push("the pack lifts out".to_owned());
    } else {
        says.push("nothing says whether the pack lifts out from above".to_owned());
        asks.push(Ask::unit(s, "pack_lifts_out", "Does the pack lift out from above, without entering the vessel?"));
    }
    match weight {
        Some(weight) => says.push(format!("its heaviest module weighs {}", mass(weight.q))),
        None => {
            says.push("the weight of its heaviest module is not known".to_owned());
            asks.push(Ask::unit(
                s,
                "module_weight",
                "What does the heaviest module of the pack weigh, wet and fouled?",
            ));
        }
    }
    match lifting {
        Some(lifting) => says.push(format!("the site lifts {}", mass(lifting))),
        None => {
            says.push("what the site can lift over the unit was not said".to_owned());
            asks.push(LIFTING);
        }
    }
    let says = says.join("; ");
    if asks.is_empty() { Verdict::passes(says) } else { Verdict::cannot_judge(says, asks, weight.map(|w| w.at)) }
}

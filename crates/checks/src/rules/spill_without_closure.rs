//! Rule: spill without closure

use super::spill_above_room::{declared, holders};
use crate::ask::{CLOSURE, SPILL};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Receiver;

rule! {
    "spill-without-closure" "Spill declared, but nothing shuts the outlet", Outlet;
    client "A spill was stated, and nothing shuts the outlet when it comes."
    looks "Whether a closure shuts the outlet where a spill is declared, or containments ahead hold all of it: without either it fails when the outlet goes to storm water, and warns otherwise. Where nobody spoke of a spill, or of a closure, it cannot judge."
    matters "An alarm only calls somebody. Until he comes, nothing but a closure keeps a spill larger than the store out of the water."
    remedy "An outlet closure that floats in water and sinks in oil, or a valve shut by the alarm, and room for the water that then stands back."
    source "EN 858-1 requires automatic closures (from memory); the distinction by receiver is our proposal"
    limits "Whether the closure itself fits the oil's density is not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(spill) = &basis.spill else {
        return match basis.closure {
            Some(true) => Verdict::passes("an outlet closure is said to be there or asked for; of a spill nobody spoke"),
            Some(false) => Verdict::cannot_judge(
                "nothing shuts the outlet, and nobody said whether a spill must stay in",
                [SPILL],
                None,
            ),
            None => Verdict::cannot_judge(
                "nobody said whether a spill must stay in, nor what shuts the outlet then",
                [SPILL, CLOSURE],
                None,
            ),
        };
    };
    let declared = declared(s, spill);
    if basis.closure == Some(true) {
        let says = if s.enquiry.unit_stands() {
            format!("a closure is said to shut the outlet before {declared} reaches it")
        } else {
            format!("an outlet closure is asked for and stands in the train; what trips it, and that it shuts before {declared} reaches the outlet, its data sheet has to show")
        };
        return Verdict::passes(says);
    }
    if let (true, Some(ahead)) = (spill.is_held_ahead(), &basis.containment) {
        let holders = holders(ahead);
        return Verdict::passes(format!("{declared} is held ahead ({holders}), before it comes to the outlet"));
    }
    if basis.closure.is_none() {
        let says = format!("{declared} is declared; whether anything shuts the outlet was not said");
        return Verdict::cannot_judge(says, [CLOSURE], spill.volume.at);
    }
    let says = format!("{declared} is declared and nothing shuts the outlet");
    match s.enquiry.outlet.to.0 {
        Some(Receiver::StormWater) => Verdict::fails(format!("{says} to storm water"), spill.volume.at),
        Some(Receiver::SanitarySewer) => Verdict::warns(format!("{says} to the sewer"), spill.volume.at),
        None => Verdict::warns(format!("{says}; where it leads was not said"), spill.volume.at),
    }
}

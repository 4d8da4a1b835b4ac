//! Rule: spill without closure

use crate::ask::{CLOSURE, SPILL};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Receiver;
use stillrise_units::catalog::{GAL, M3};

rule! {
    "spill-without-closure" "Spill declared, but nothing shuts the outlet", Outlet;
    looks "Whether a closure shuts the outlet where a spill is declared, or containments ahead hold all of it: without either it fails when the outlet goes to storm water, and warns otherwise. Where nobody spoke of a spill, or of a closure, it cannot judge."
    matters "An alarm only calls somebody. Until he comes, nothing but a closure keeps a spill larger than the store out of the water."
    remedy "An outlet closure that floats in water and sinks in oil, or a valve shut by the alarm, and room for the water that then stands back."
    source "EN 858-1 requires automatic closures (from memory); the distinction by receiver is our proposal"
    limits "Whether the closure itself fits the oil's density is not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(spill) = s.design.basis.as_ref().and_then(|b| b.spill.as_ref()) else {
        return Verdict::cannot_judge(
            "nobody said whether a spill must stay in, nor what shuts the outlet then",
            [SPILL, CLOSURE],
            None,
        );
    };
    let volume = s.show(spill.volume.q, (&GAL, &M3));
    if spill.closure {
        return Verdict::passes(format!("a closure shuts the outlet before a spill of {volume} reaches it"));
    }
    if let (true, Some(ahead)) = (spill.is_held_ahead(), s.design.basis.as_ref().and_then(|b| b.containment.as_ref())) {
        let holders = super::spill_above_room::holders(ahead);
        return Verdict::passes(format!(
            "a spill of {volume} is held ahead ({holders}), before it comes to the outlet"
        ));
    }
    if s.enquiry.spill.as_ref().is_some_and(|block| block.closure.is_none()) {
        let says = format!("a spill of {volume} is declared; whether anything shuts the outlet was not said");
        return Verdict::cannot_judge(says, [CLOSURE], spill.volume.at);
    }
    let says = format!("a spill of {volume} is declared and nothing shuts the outlet");
    match s.enquiry.outlet.to.0 {
        Some(Receiver::StormWater) => Verdict::fails(format!("{says} to storm water"), spill.volume.at),
        Some(Receiver::SanitarySewer) => Verdict::warns(format!("{says} to the sewer"), spill.volume.at),
        None => Verdict::warns(format!("{says}; where it leads was not said"), spill.volume.at),
    }
}

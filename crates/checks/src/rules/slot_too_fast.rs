//! Rule: slot too fast

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::stages::underflow::Underflow;
use stillrise_units::catalog::{FT_S, MM_S};
use stillrise_units::{Typed, Velocity};

rule! {
    "slot-too-fast" "Water too fast under the downcomer", Downcomer, bars_pick;
    client "The water passes under the last baffle so fast that it may pull oil or sludge with it."
    looks "The velocity under the downcomer's lip at the largest flow: above {0.15 ft/s|45.7 mm/s} it warns, above {0.3 ft/s|91.4 mm/s} it fails."
    matters "A fast underflow pulls oil down from the interface and sludge up from the floor."
    remedy "A higher lip, a wider unit, or less flow through each unit."
    source "Common practice for {0.1 to 0.15 ft/s|30.5 to 45.7 mm/s}; {0.3 ft/s|91.4 mm/s} is our proposal"
    limits "The slot is taken as free of sludge and as wide as the unit. What a dip pipe draws is looked at by its height under the oil."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let dips = s.design.train.as_ref().is_some_and(|train| matches!(train.unit.underflow, Underflow::DipPipe(_)));
    if dips {
        return Verdict::skips("a dip pipe takes the place of the slot");
    }
    let slot = performance.velocities.slot;
    let (usual, most) = (Velocity::of(0.15, &FT_S), Velocity::of(0.3, &FT_S));
    let show = |v| s.show(v, (&FT_S, &MM_S));
    let says = format!("{} under the downcomer at the largest flow", show(slot.q));
    if slot.q > most {
        Verdict::fails(format!("{says}: above {}", show(most)), slot.at)
    } else if slot.q > usual {
        Verdict::warns(format!("{says}: above {}", show(usual)), slot.at)
    } else {
        Verdict::passes(format!("{says}, at most {}", show(usual)))
    }
}

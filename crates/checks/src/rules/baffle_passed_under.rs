//! Rule: water passes under the diffusion baffle

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM, PERCENT};

rule! {
    "baffle-passed-under" "Water passes under the diffusion baffle", Chamber;
    client "Some of the water passes under the inlet baffle and is not spread evenly over the plates."
    looks "The share of the flow that passes through the opening under the diffusion baffle, over an open hopper or above the floor: above a twentieth it warns. Where a hopper reaches under the baffle and nobody said whether the baffle reaches down into it, it cannot judge."
    matters "What passes underneath is spread by nothing: it sweeps the sludge in the hopper and feeds the lowest gaps of the plates more than the others."
    remedy "A plate from the baffle down to the floor of the hopper, with a slot no higher than sludge needs to pass."
    source "Both ways lose the same head, with 0.6 for the opening (FHWA HDS-2); a twentieth is our proposal"
    limits "The opening is taken as wide as the unit. How unequally the gaps are fed then is a judgement, which the prediction counts."
}

/// Share that is let pass without a word.
const MOST: f64 = 0.05;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some(baffle) = &train.unit.baffle else { return Verdict::skips("there is no diffusion baffle") };
    let show = |q| s.show(q, (&IN, &MM));
    let says = if baffle.under.q.si() > 0.0 {
        format!("an opening of {} is left under it", show(baffle.under.q))
    } else {
        "it is closed down to the floor".to_owned()
    };
    if let Some(doubt) = s.rests_on(&says, baffle.under, (&IN, &MM), |gap| gap.si() <= 0.0) {
        return doubt;
    }
    if baffle.under.q.si() <= 0.0 {
        return Verdict::passes(says);
    }
    let zones = s.design.performance.as_ref().and_then(|performance| performance.zones.as_ref());
    let Some(under) = zones.and_then(|zones| zones.baffle.as_ref()?.under) else { return s.stopped() };
    let says = format!("{says}, through which {} of the flow pass", s.show(under.q, (&PERCENT, &PERCENT)));
    if under.q.si() > MOST { Verdict::warns(says, under.at) } else { Verdict::passes(says) }
}

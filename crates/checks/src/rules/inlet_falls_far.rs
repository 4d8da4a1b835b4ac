//! Rule: inlet falls far

use super::not_enough_fall::open;
use crate::ask::{GROUND, INLET_INVERT, outfall};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::installation::Stands;
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Length, Typed};

rule! {
    "inlet-falls-far" "Water falls far into the unit", Inlet;
    client "The water falls freely into the unit, which makes oil droplets finer and harder to catch."
    looks "The incoming invert over the unit's inlet invert, where the water comes by gravity: more than {3.28 ft|1 m} warns. Without the levels that place the unit it cannot judge."
    matters "Water that falls freely breaks oil into finer droplets and carries air and oil down; what it splashes leaves the pipe."
    remedy "A drop pipe that ends under water or a stilling manhole ahead of the unit, a steeper or lower pipe, or a unit raised on a plinth."
    source "Engineering judgement for the {3.28 ft|1 m}; geometry of the enquiry's inverts and the unit's"
    limits "No droplet size is taken from the fall: it is not in the prediction of what leaves. A drop pipe that is there already is not seen."
}

/// Fall that a stilled inlet takes.
fn most() -> Length {
    Length::of(1.0, &M)
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    if s.design.basis.as_ref().is_some_and(|b| b.feed.pumped) {
        return Verdict::skips("the water is pumped");
    }
    if performance.site.installation.stands.q == Stands::LiftPump {
        return Verdict::skips("the water has to be lifted to the unit");
    }
    let known = |ground: bool, outlet: bool| {
        let levels = [(ground, GROUND), (s.enquiry.inlet.invert.is_given(), INLET_INVERT), (outlet, outfall(s))];
        open(levels)
    };
    let ground = s.enquiry.site.ground.is_given();
    let Some(spare) = performance.site.spare_fall else {
        let says = "the levels that place the unit are not all known: how far the water falls into it is open";
        return Verdict::cannot_judge(says, known(ground, s.enquiry.outlet.invert.is_given() || ground), None);
    };
    let show = |x: Length| s.show(x, (&FT, &M));
    if spare.q <= most() {
        // A unit that stands higher than this has less of a fall.
        return Verdict::passes(format!("it falls no more than {} in {}", show(spare.q), show(most())));
    }
    let says = format!("the water falls {} into the unit, more than {}", show(spare.q), show(most()));
    if ground {
        Verdict::warns(says, spare.at)
    } else {
        let says = format!("{says}, if it stands as low as its outlet drains; the ground's elevation was not said");
        Verdict::cannot_judge(says, known(false, true), spare.at)
    }
}

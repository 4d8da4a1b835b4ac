//! Rule: inlet submerged

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM};

rule! {
    "inlet-submerged" "Inlet under water", Inlet, bars_pick;
    client "The incoming pipe ends under water or nearly so: oil and grit may settle in the drain ahead."
    looks "The level in the inlet chamber at the largest flow, end of the interval, against the inlet nozzle: above its invert it warns, above its top it fails. A pumped inlet only warns."
    matters "A submerged nozzle backs up the drain ahead of it: oil and grit settle there, and oil floats up into the drains."
    remedy "A unit with more fall from inlet to outlet, a larger outlet pipe, cleaner mesh and plates, or a pumped inlet."
    source "Geometry of the unit; that the nozzle should drain freely is common practice"
    limits "Oil stored in the unit lifts the level further; the cap by the inlet counts that."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance), Some(basis)) = (&s.design.train, &s.design.performance, &s.design.basis)
    else {
        return s.stopped();
    };
    let inlet = &train.unit.inlet;
    let level = performance.highest().inlet;
    let over = level.q - inlet.invert.q;
    if over.si() <= 0.0 {
        let under = s.show(-over, (&IN, &MM));
        return Verdict::passes(format!("the inlet chamber stands {under} below the inlet invert at the largest flow"));
    }
    let (shown, bore) = (s.show(over, (&IN, &MM)), s.show(inlet.bore.q, (&IN, &MM)));
    let says = format!("the inlet chamber stands {shown} above the inlet invert at the largest flow, bore {bore}");
    if over > inlet.bore.q && !basis.feed.pumped {
        Verdict::fails(format!("{says}: the nozzle is wholly under water"), level.at)
    } else {
        Verdict::warns(says, level.at)
    }
}

//! Rule: the flow scours settled sludge

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT_S, M_S};

rule! {
    "sludge-scoured" "Flow scours settled sludge", Hopper;
    client "The flow may stir up sludge that has settled."
    looks "The velocity along the unit at the largest flow against Camp's scouring velocity for grains of the median size and density."
    matters "Sludge that is stirred up takes oil with it, fouls the plates and leaves."
    remedy "A wider or deeper unit, several in parallel, or a hopper baffle that keeps the stream off the sludge."
    source "Camp's scour velocity with a constant of 0.04 and a friction factor of 0.03, from memory"
    limits "Grains without cohesion on a level floor; the mean velocity, not that of a jet."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(zones) = &performance.zones else { return s.stopped() };
    let along = performance.velocities.along;
    let Some(scour) = zones.scour else { return Verdict::skips("the solids are no heavier than the water") };
    let speed = (&FT_S, &M_S);
    let says = format!("{} along the unit, {} would scour", s.show(along.q, speed), s.show(scour.q, speed));
    if along.q > scour.q { Verdict::warns(says, along.at) } else { Verdict::passes(says) }
}

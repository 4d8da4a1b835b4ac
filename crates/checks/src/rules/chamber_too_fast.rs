//! Rule: chamber too fast

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT_MIN, MM_S};
use stillrise_units::{Typed, Velocity};

rule! {
    "chamber-too-fast" "Water too fast along the unit", Chamber, bars_pick;
    client "The water runs so fast along the unit that it may carry collected oil away with it."
    looks "The mean velocity along the unit at the largest flow, over the whole wetted section: above {2 ft/min|10.2 mm/s} it warns, above {3 ft/min|15.2 mm/s} it fails."
    matters "A fast stream is turbulent, breaks up the layer that has collected and carries it on."
    remedy "A wider or deeper unit, more units in parallel, or a flow cap with equalisation ahead."
    source "MIL-HDBK-1005/16, 1997: below {3 ft/min|15.2 mm/s} in the main chamber; API 421, 1990, at second hand: {3 ft/min|15.2 mm/s} or 15 times the rise; {2 ft/min|10.2 mm/s} is the low end that agency manuals give"
    limits "Written for basins without plates. The section is taken up to the crest and free of sludge."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let along = performance.velocities.along;
    let (usual, most) = (Velocity::of(2.0, &FT_MIN), Velocity::of(3.0, &FT_MIN));
    let show = |v| s.show(v, (&FT_MIN, &MM_S));
    let says = format!("{} along the unit at the largest flow", show(along.q));
    if along.q > most {
        Verdict::fails(format!("{says}: above {}", show(most)), along.at)
    } else if along.q > usual {
        Verdict::warns(format!("{says}: above {}", show(usual)), along.at)
    } else {
        Verdict::passes(format!("{says}, at most {}", show(usual)))
    }
}

//! Rule: slings too flat

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::DEG;
use stillrise_units::{Angle, Typed};

rule! {
    "sling-too-flat" "Slings too flat", Unit;
    client "The slings pull flatter than they should when the unit is lifted."
    looks "The angle of the slings from the level when the empty unit is lifted, as stated or as is usual. Less than 45° warns."
    matters "The flatter a sling, the harder it pulls, and the more it squeezes the walls together: at 30° each of two legs carries all of the weight."
    remedy "Longer slings, or a spreader that lets them hang upright."
    source "A published guide of wire rope slings; 45° as the least is common practice"
    limits "The angle alone; lugs, walls and crane are for a licensed engineer and a lift plan."
}

/// The least angle from the level, in degrees.
const LEAST: f64 = 45.0;

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(_)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    if s.enquiry.unit_stands() {
        return Verdict::skips("the unit stands already");
    }
    let Some(lifting) = performance.shop.as_ref().and_then(|shop| shop.lifting.as_ref()) else {
        return Verdict::skips("it is built into the ground, in its place or of sections, each lifted by a plan of its own");
    };
    let least = Angle::of(LEAST, &DEG);
    let show = |angle| s.show(angle, (&DEG, &DEG));
    let says = format!("slings {} from the level, at least {} is asked for", show(lifting.angle.q), show(least));
    // Half a thousandth of a degree is no difference that anybody measures.
    let passes = |angle: Angle| angle.si() > least.si() - 1e-5;
    if !passes(lifting.angle.q) {
        return Verdict::warns(says, lifting.angle.at);
    }
    s.rests_on(&says, lifting.angle, (&DEG, &DEG), passes).unwrap_or_else(|| Verdict::passes(says))
}

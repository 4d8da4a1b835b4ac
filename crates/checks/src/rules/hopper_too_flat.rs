//! Rule: hopper too flat

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::print::digits;

rule! {
    "hopper-too-flat" "Hopper sides flatter than 45 degrees", Hopper;
    client "The sides of the hopper are so flat that sludge may stay on them."
    looks "The depth of the hopper against half the difference of top and bottom, along and across: flatter than 45 degrees warns."
    matters "Sludge stays on a flat side, turns foul and is not drawn off with the rest."
    remedy "A deeper or a smaller hopper, two side by side, or sluicing it at every pump-out."
    source "API Publication 421 (1990), 45 degrees or steeper, from memory"
    limits "Plane sides; the bottom is taken as square."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some(f) = &train.unit.hopper else { return Verdict::skips("the unit has no hopper") };
    let flat = |top: f64| 2.0 * f.depth.q.si() / (top - f.bottom.q.si()).max(1e-6);
    let (along, across) = (flat(f.length.q.si()), flat(train.unit.body.width().q.si()));
    let rise = along.min(across);
    let says = format!("the flattest side falls {} on 1", digits(rise, 3));
    if rise < 1.0 - 1e-6 { Verdict::warns(says, f.depth.at) } else { Verdict::passes(says) }
}

//! Rule: deeper than may be dug

use crate::ask::GROUND;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Length, Typed};

rule! {
    "dug-too-deep" "Deeper in the ground than may be dug", Site, bars_pick;
    client "The unit would lie deeper in the ground than may be dug."
    looks "How far the lowest point of the unit lies below the ground, against the depth to which the site lets dig. Where a depth is stated and the ground or the levels are not known it cannot judge."
    matters "A hole deeper than was thought of wants shoring, dewatering and another price, or cannot be dug at all."
    remedy "An incoming pipe that arrives higher, a lower unit, a lift ahead that spares the oil, or leave to dig deeper."
    source "The site"
    limits "To the lowest point of the unit, inside: its floor, a slab under it and bedding come on top."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(most) = s.enquiry.site.max_depth.q() else {
        return Verdict::skips("nobody said how deep may be dug");
    };
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let installation = &performance.site.installation;
    let Some(over) = installation.over_ground else {
        return Verdict::cannot_judge("how deep it lies is not known", [GROUND], None);
    };
    let show = |q: Length| s.show(q, (&FT, &M));
    let deep = Length::from_si(-over.q.si());
    if deep.si() <= 0.0 {
        return Verdict::passes("it stands on the ground");
    }
    let says = format!("its lowest point lies {} below the ground, {} may be dug", show(deep), show(most));
    if deep > most { Verdict::fails(says, over.at) } else { Verdict::passes(format!("{says}; floor and bedding come on top")) }
}

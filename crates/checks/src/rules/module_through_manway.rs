//! Rule: a module of the pack does not pass the manway

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed, math};

rule! {
    "module-through-manway" "Pack does not pass the manway", Pack;
    client "The plates do not pass through the manway."
    looks "The narrowest face of a module of the pack, corner to corner, against the clear opening of a manway, where the vessel is closed: wider fails. Where the size of a module is not stated it cannot judge."
    matters "A pack that cannot be lifted out is cleaned by a person in the vessel, or not at all."
    remedy "Smaller modules, a wider manway over the pack, or a unit with an open top."
    source "Geometry; that packs are to come out without entry is common practice"
    limits "Whether each module can be brought under a manway from outside is not looked at: one that cannot takes a person in the vessel. Slings and lifting rings need room of their own, and a riser with a ladder leaves less."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let unit = &train.unit;
    let Some(access) = &unit.access else { return Verdict::skips("the vessel is open at the top") };
    let Some(pack) = &unit.pack else { return Verdict::skips("the unit has no plates") };
    let show = |x: Length| s.show(x, (&IN, &MM));
    let opening = access.opening;
    let Some([length, width]) = unit.particulars.module else {
        let asks = [
            Ask::unit(s, "module_length", "How long is a module of the pack?"),
            Ask::unit(s, "module_width", "How wide is a module of the pack?"),
        ];
        let says = format!("the size of a module is not stated; the manways are {} wide", show(opening.q));
        return Verdict::cannot_judge(says, asks, opening.at);
    };
    let sides = [length.q.si(), width.q.si(), pack.laid.height.q.si()];
    let corner = |a: f64, b: f64| math::sqrt(a * a + b * b);
    let faces = [corner(sides[0], sides[1]), corner(sides[0], sides[2]), corner(sides[1], sides[2])];
    let narrowest = Length::from_si(faces.into_iter().fold(f64::INFINITY, f64::min));
    let says = format!("a module measures {} corner to corner, the manways are {} wide", show(narrowest), show(opening.q));
    if narrowest > opening.q { Verdict::fails(says, opening.at) } else { Verdict::passes(says) }
}

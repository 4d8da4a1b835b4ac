//! Rule: does not fit

use crate::ask::{MAX_LENGTH, MAX_WIDTH};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Node;
use stillrise_units::Length;
use stillrise_units::catalog::{FT, M};

rule! {
    "does-not-fit" "Unit too large for its place", Site, bars_pick;
    looks "Inside length and width of one unit against what the site has room for: larger fails. A stated shipping size that is larger warns. Where length or width of the room was not said it cannot judge."
    matters "A unit that does not fit is found out when the crane is there."
    remedy "A shorter and wider unit, units in parallel, or another place."
    source "Geometry of the site and the unit"
    limits "Inside measures: walls, nozzles, ladders and room to walk come on top. Units in parallel need a place each."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let (site, frame) = (&s.enquiry.site, &train.unit.frame);
    let rows = [
        (site.max_length.q(), frame.length, "long", 0, MAX_LENGTH),
        (site.max_width.q(), frame.width, "wide", 1, MAX_WIDTH),
    ];
    let show = |x: Length| s.show(x, (&FT, &M));
    let mut fits = Vec::new();
    let mut asks = Vec::new();
    let mut shipped: Option<(String, Node)> = None;
    for (room, inside, word, place, ask) in rows {
        let Some(room) = room else {
            fits.push(format!("{} {word} inside, the room for it was not said", show(inside.q)));
            asks.push(ask);
            continue;
        };
        if inside.q > room {
            let says = format!("the unit is {} {word} inside, there is room for {}", show(inside.q), show(room));
            return Verdict::fails(says, inside.at);
        }
        if let Some(size) = train.unit.particulars.shipping.map(|sizes| sizes[place]).filter(|size| size.q > room) {
            let says = format!("it is shipped {} {word}, there is room for {}", show(size.q), show(room));
            shipped.get_or_insert((says, size.at));
        }
        fits.push(format!("{} {word} inside in {}", show(inside.q), show(room)));
    }
    match shipped {
        Some((says, at)) => Verdict::warns(format!("the unit fits inside to inside, but {says}"), at),
        None if !asks.is_empty() => Verdict::cannot_judge(fits.join(", "), asks, frame.length.at),
        None => Verdict::passes(fits.join(", ")),
    }
}

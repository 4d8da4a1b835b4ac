//! Containment ahead: sizes, rain, drains, and each spill against what holds it.

use super::blocks::{Table, number, slim, wide};
use super::{Report, capital, sentence};
use crate::summary::containment::{drain, overflows_to, rows, sentence as says, unthrottled};
use stillrise_design::basis::Basis;
use stillrise_design::basis::containment::Containments;
use stillrise_design::provenance::Pair;
use stillrise_units::catalog::{D, FT2, GAL, GPM, IN, M2, M3, M3_H, MM};

const STORE: Pair = (&GAL, &M3);

/// A part of the basis; nothing where nothing stands ahead.
pub(super) fn containment(r: &mut Report<'_>, basis: &Basis) {
    let Some(ahead) = &basis.containment else { return };
    r.out.heading("Containment ahead");
    sizes(r, ahead);
    let mut nodes = Vec::new();
    nodes.extend(ahead.rain_depth.map(|d| d.val.at));
    nodes.push(ahead.fire.val.at);
    for c in &ahead.all {
        nodes.push(c.valve.is.at);
        nodes.extend(c.shape.iter().flat_map(|s| [s.area.val.at, s.clear.at, s.depth.at, s.open_share.at]));
    }
    let table = r.rows(nodes);
    r.out.table(&table);
    for b in &ahead.balances {
        let mut table = Table::new([wide("A spill against what holds it", 2.6), slim("Value"), number("No.", "")]);
        for (what, at) in rows(ahead, b) {
            let value = r.entry(at).map_or_else(String::new, |e| e.told(r.system));
            table.row([capital(&what), value, r.no(at)]);
        }
        r.out.table(&table);
        r.out.para(&sentence(&says(ahead, b)));
    }
    r.out.remark(
        "The largest vessel loses all of its oil, one design rain falls on drained containments, and fire water comes on top. \
         Oil floats: what overflows first is oil, and a containment full of rain holds none. Where water leaves under a baffle, \
         the water that the oil pushes out goes first. No stage behind is sized for a spill that is held here; only what is drained comes to it. \
         The storm counts the surfaces that are listed; of those that a containment with a closed or metered drain holds back it counts none.",
    );
    if let Some(text) = unthrottled(r.settled) {
        r.out.para(&text);
    }
}

fn sizes(r: &mut Report<'_>, ahead: &Containments) {
    let mut table = Table::new([
        wide("Containment", 1.2),
        number("Holds", r.symbol(STORE)),
        number("Takes rain|from", r.symbol((&FT2, &M2))),
        number("Design|rain", r.symbol(STORE)),
        wide("Drain", 1.0),
        number("Drained|at", r.symbol((&GPM, &M3_H))),
        number("Rain drains|in", "d"),
        wide("Overflows to", 1.2),
    ]);
    for c in &ahead.all {
        table.row([
            capital(&c.name),
            r.digits(c.holds.val.q, STORE, 3),
            c.catch.map_or_else(|| "roofed".to_owned(), |a| r.digits(a.val.q, (&FT2, &M2), 3)),
            r.digits(c.rain.val.q, STORE, 3),
            drain(c),
            c.drain.as_ref().map_or_else(|| "not said".to_owned(), |d| r.digits(d.rate.q, (&GPM, &M3_H), 3)),
            c.drain.as_ref().and_then(|d| d.time).map_or_else(|| "–".to_owned(), |t| r.digits(t.q, (&D, &D), 3)),
            overflows_to(ahead, c),
        ]);
    }
    r.out.table(&table);
    if let Some(depth) = ahead.rain_depth {
        r.out.remark(&format!(
            "Design rain {}: all of it stays.",
            r.digits(depth.val.q, (&IN, &MM), 3) + " " + r.symbol((&IN, &MM))
        ));
    }
}

//! What stands ahead of the separator, and each spill against what holds it.

use super::{capital, section};
use crate::render::text::{Table, hang};
use stillrise_design::basis::containment::balance::Balance;
use stillrise_design::basis::containment::drain::Shut;
use stillrise_design::basis::containment::{Containment, Containments};
use stillrise_design::provenance::{Node, Pair};
use stillrise_search::Settled;
use stillrise_units::catalog::{D, FT2, GAL, GPM, H, IN, M2, M3, M3_H, MM};
use stillrise_units::{System, Time, Typed, print};

const STORE: Pair = (&GAL, &M3);

/// Three digits and the unit.
fn three<Q: Typed>(system: System, q: Q, units: Pair) -> String {
    let unit = system.pick(units);
    format!("{} {}", print::digits(unit.from_si(q.si()), 3), unit.symbol).trim_end().to_owned()
}

/// A time in hours below two days, else in days.
fn span(system: System, time: Time) -> String {
    let unit = if time < Time::of(2.0, &D) { &H } else { &D };
    three(system, time, (unit, unit))
}

/// How the drain stands, in words.
pub(crate) fn drain(c: &Containment) -> String {
    match c.valve.shut() {
        Shut::Unknown => format!("not known, counted as {}", c.valve.is.q.word()),
        _ => c.valve.is.q.word().to_owned(),
    }
}

/// Where it overflows to.
pub(crate) fn overflows_to(ahead: &Containments, c: &Containment) -> String {
    match (c.to, c.to_said) {
        (Some(next), _) => ahead.all[next].name.clone(),
        // A closed drain leads nothing anywhere.
        (None, _) if c.valve.shut() == Shut::Closed => "over its wall; where it runs then was not said".to_owned(),
        (None, true) => "separator".to_owned(),
        (None, false) => "not said; taken to be the separator".to_owned(),
    }
}

/// Whether a chain holds, in a word.
pub(crate) fn verdict(b: &Balance) -> &'static str {
    match b.spare.holds() {
        Some(true) => "holds",
        Some(false) => "short",
        None => "not known",
    }
}

/// What the drains along the chain mean for it; nothing to say where all are closed.
pub(crate) fn reliance(b: &Balance) -> Option<&'static str> {
    match b.shut {
        Shut::Closed => None,
        Shut::Device => Some("Held only if a device shuts the drain in time."),
        Shut::Unknown => Some("Whether anything is held is not known: nobody said for sure how the drain stands."),
        Shut::Open => Some("The drain stands open: nothing is held, whatever the volume."),
    }
}

/// Each quantity of a balance with its place in the trail.
pub(crate) fn rows(ahead: &Containments, b: &Balance) -> Vec<(String, Node)> {
    let place = &ahead.all[b.place].name;
    let mut rows = vec![
        (format!("oil spilled in {place}"), b.oil.val.at),
        ("design rain on the chain".to_owned(), b.rain.at),
        ("fire water".to_owned(), ahead.fire.val.at),
        ("to hold, together".to_owned(), b.need.at),
        (format!("held by {}", ahead.names(&b.chain)), b.held.at),
        ("left, below zero short".to_owned(), b.spare.val.at),
        ("left without fire water".to_owned(), b.dry.val.at),
    ];
    let mut add = |what: &str, at: Option<Node>| rows.extend(at.map(|at| (what.to_owned(), at)));
    add("oil with the prescribed allowance", b.allowance.map(|v| v.at));
    add("oil and a tenth, a rule of thumb only", Some(b.thumb.at));
    add("depth that would hold all", b.further.and_then(|f| f.depth).map(|v| v.at));
    add("area that would hold all", b.further.and_then(|f| f.area).map(|v| v.at));
    add("or as many more of its size", b.further.and_then(|f| f.count).map(|v| v.at));
    add("water that the oil pushes out first, under a baffle", b.displaced.map(|d| d.water.at));
    add("oil surface above the water's", b.displaced.and_then(|d| d.rise).map(|v| v.at));
    rows
}

/// What runs to the separator through open drains while it rains, which no case holds; nothing where none stands open.
pub(crate) fn unthrottled(settled: &Settled) -> Option<String> {
    let basis = settled.job.design.basis.as_ref()?;
    let (ahead, storm) = (basis.containment.as_ref()?, basis.storm.as_ref()?);
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: Pair| print::told(si, system.pick(pair));
    let each: Vec<String> = ahead
        .unthrottled()
        .map(|(c, area)| {
            let flow = area.val.q * storm.intensity.q;
            format!("{}: {} of rain on {}", c.name, show(flow.si(), (&GPM, &M3_H)), show(area.val.q.si(), (&FT2, &M2)))
        })
        .collect();
    (!each.is_empty()).then(|| {
        format!(
            "A drain that stands open, at no rate that was said, lets the rain through as it falls, as far as its pipe does. At the \
             intensity of the storm that is, and no case holds it: {}. Shut it as a rule, or say its rate.",
            each.join("; ")
        )
    })
}

pub(super) fn containment(out: &mut String, settled: &Settled, width: usize) {
    let Some(ahead) = settled.job.design.basis.as_ref().and_then(|b| b.containment.as_ref()) else { return };
    let system = settled.job.enquiry.system();
    out.push_str(&section("Containment ahead"));
    let mut table = Table::new(["containment", "holds", "design rain", "drain", "drains it in", "overflows to"]);
    for c in &ahead.all {
        let time = c.drain.as_ref().map_or_else(
            || "no rate said".to_owned(),
            |d| {
                let rate = three(system, d.rate.q, (&GPM, &M3_H));
                d.time.map_or_else(|| rate.clone(), |t| format!("{} at {rate}", span(system, t.q)))
            },
        );
        table.row([
            c.name.clone(),
            three(system, c.holds.val.q, STORE),
            if c.catch.is_some() { three(system, c.rain.val.q, STORE) } else { "under a roof".to_owned() },
            drain(c),
            time,
            overflows_to(ahead, c),
        ]);
    }
    out.push_str(&table.render(width));
    if let Some(depth) = ahead.rain_depth {
        out.push_str(&format!("Design rain: {}.\n", three(system, depth.val.q, (&IN, &MM))));
    }
    for b in &ahead.balances {
        let mut table = Table::new(["a spill against what holds it", "value"]);
        for (what, at) in rows(ahead, b) {
            let Some(entry) = settled.job.ledger.entry(at) else { continue };
            let value = match (&entry.value, entry.units) {
                (stillrise_handbook::page::Arg::Number(si), Some(units)) => {
                    let unit = system.pick(units);
                    format!("{} {}", print::digits(unit.from_si(*si), 3), unit.symbol).trim_end().to_owned()
                }
                _ => entry.told(system),
            };
            table.row([what, value]);
        }
        out.push_str(&table.render(width));
        out.push_str(&hang(&sentence(ahead, b), width, 0, 2));
    }
    if let Some(text) = unthrottled(settled) {
        out.push_str(&hang(&text, width, 0, 2));
    }
}

/// What a balance comes to, in plain words.
pub(crate) fn sentence(ahead: &Containments, b: &Balance) -> String {
    let names = capital(&ahead.names(&b.chain));
    let verb = if b.chain.len() > 1 { "hold" } else { "holds" };
    let mut says = match b.spare.holds() {
        Some(true) if b.shut == Shut::Open => {
            format!("{names} would hold it with the drain closed; the largest part is {}.", b.largest.word())
        }
        Some(true) => format!("{names} {verb} it; the largest part is {}.", b.largest.word()),
        Some(false) => format!("{names} cannot hold it; the largest part is {}.", b.largest.word()),
        None => {
            let open: Vec<&str> = b.open.iter().map(|o| o.what.as_str()).collect();
            format!("Whether {} {verb} it cannot be judged: nobody said {}.", ahead.names(&b.chain), open.join(", "))
        }
    };
    if let Some(more) = reliance(b) {
        says.push(' ');
        says.push_str(more);
    }
    says
}

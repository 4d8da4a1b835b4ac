//! The trail: every value with its origin, numbered; derived ones worked out in full.

use super::blocks::set;
use super::worked::{lines, plainly};
use super::{Report, capital};
use crate::Edition;
use crate::render::text::plain;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use stillrise_design::Node;
use stillrise_design::provenance::{Entry, Origin, show, told};
use stillrise_handbook::equation::{parse, plain_symbol, typst_symbol};
use stillrise_handbook::page::Arg;
use stillrise_units::Typed;
use stillrise_units::print::digits;

/// Section 10.
pub(super) fn trail(r: &mut Report<'_>) {
    r.out.section("Trail of every value");
    r.out.para(
        "Numbered in the order of calculation. A formula is written out where it is first used, in the units in which it works, with the numbers put in; \
         later uses show the numbers only. Values given, assumed or chosen say by whom, from what and why. Numbers in brackets point to other lines of the trail.",
    );
    let count = r.settled.job.ledger.entries.len();
    if r.edition == Edition::Client {
        let path = governing(r);
        r.out.heading("The governing path, worked out");
        r.out.para("Everything that the verdicts on the limits, the oil's thickest layer, the spill's room and the days to fill rest on.");
        parts(r, path.iter().copied(), true, 3);
        r.out.heading("All other values");
        parts(r, (0..count).filter(|k| !path.contains(k)), false, 3);
    } else {
        r.out.para("Studies beside the design (other flows, sizes, stages alone) stand with values and origins; they are worked out line by line in the file trail.txt of the package, as is everything else.");
        parts(r, 0..count, true, 2);
    }
}

/// What the results rest on: their entries, and those behind them.
fn governing(r: &Report<'_>) -> BTreeSet<usize> {
    let mut open: Vec<Node> = Vec::new();
    if let Some(p) = &r.settled.job.design.performance {
        open.extend(p.limits.iter().flat_map(|l| [Some(l.expected.at), l.mixed.map(|mixed| mixed.at)]).flatten());
        open.extend(p.worst().map(|w| w.total.expected.at));
        open.extend(p.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si())).map(|l| l.limit.at));
        open.extend(p.storage.sludge_days.map(|d| d.at));
        open.extend(p.storage.spill.as_ref().map(|s| s.spare.at));
        let ahead = r.settled.job.design.basis.as_ref().and_then(|b| b.containment.as_ref());
        open.extend(ahead.iter().flat_map(|a| &a.balances).map(|b| b.spare.val.at));
    } else if let Some(flow) = r.settled.job.design.basis.as_ref().and_then(|b| b.design_flow()) {
        open.push(flow.at);
    }
    r.behind(open)
}

/// The entries, a table for each part of the work, under headings of this level.
fn parts(r: &mut Report<'_>, entries: impl Iterator<Item = usize>, full: bool, level: u8) {
    let settled = r.settled;
    let all = &settled.job.ledger.entries;
    let mut written: BTreeSet<&'static str> = BTreeSet::new();
    let mut rows: Vec<Value> = Vec::new();
    let mut section: Option<&str> = None;
    let mut tables: Vec<Value> = Vec::new();
    for k in entries {
        let Some(entry) = all.get(k) else { continue };
        if section != Some(entry.section.as_str()) {
            if let Some(title) = section {
                tables.push(json!({ "t": "trail", "level": level, "title": capital(&plain(title)), "rows": core::mem::take(&mut rows) }));
            }
            section = Some(&entry.section);
        }
        let full = full && !entry.part.is_study();
        rows.push(row(r, k, entry, full, &mut written));
    }
    if let Some(title) = section {
        tables.push(json!({ "t": "trail", "level": level, "title": capital(&plain(title)), "rows": rows }));
    }
    tables.into_iter().for_each(|table| r.out.other(table));
}

fn row(r: &Report<'_>, k: usize, entry: &Entry, full: bool, written: &mut BTreeSet<&'static str>) -> Value {
    let mut row = json!({
        "n": (k + 1).to_string(), "label": capital(&plain(&entry.label)), "value": set(&entry.shown(r.system)),
        "origin": set(&origin(r, entry)), "notes": entry.notes.iter().map(|n| set(n)).collect::<Vec<_>>(),
    });
    if let (true, Origin::Derived { page, inputs }) = (full, &entry.origin) {
        let first = written.insert(page.id);
        let args: Option<Vec<Arg>> = inputs.iter().map(|at| r.settled.job.ledger.value(*at).cloned()).collect();
        if let Some(args) = args {
            row["eqs"] = Value::Array(lines(entry, page, &args, first, r.system));
        }
        row["origin"] = Value::String(if first {
            format!("by {}", page.title)
        } else {
            format!("by {}, with {}", page.title, list(r, inputs))
        });
        if first {
            let symbols = page.args.iter().zip(inputs).map(|(a, at)| {
                let maths: Vec<String> = a.math.split('|').map(typst_symbol).collect();
                let plains: Vec<String> = a.math.split('|').map(plain_symbol).collect();
                json!({ "m": maths.join(", "), "alt": plains.join(", "), "s": format!("{} [{}]", a.meaning, r.no(*at)) })
            });
            let helpers = page.helpers.iter().map(
                |h| json!({ "m": typst_symbol(h.math), "alt": plain_symbol(h.math), "s": h.meaning.replace('`', "") }),
            );
            row["with"] = Value::Array(symbols.chain(helpers).collect());
        }
    }
    row
}

/// Where a value comes from, in a phrase.
pub(super) fn origin(r: &Report<'_>, entry: &Entry) -> String {
    match &entry.origin {
        Origin::Given { source, text } => format!("given, {source}: {text}"),
        Origin::Assumed(a) => {
            format!(
                "assumed; plausibly {} to {}; {}",
                show(&a.low, entry.units, r.system),
                show(&a.high, entry.units, r.system),
                a.source
            )
        }
        Origin::Chosen { among, because, inputs, .. } => {
            let from = if inputs.is_empty() { String::new() } else { format!(" {}", list(r, inputs)) };
            format!("chosen among {among}: {because}{from}")
        }
        Origin::Derived { page, inputs } => format!("by {}, with {}", page.title, list(r, inputs)),
        Origin::Reckoned { text, inputs } => reckoned(r, text, inputs),
        Origin::Gathered { inputs } => format!("gathered of {}", list(r, inputs)),
    }
}

/// The same in a table of prose: three digits, and of plain arithmetic the words alone.
pub(super) fn origin_in_prose(r: &Report<'_>, entry: &Entry) -> String {
    match &entry.origin {
        Origin::Assumed(a) => {
            let [low, high] = [&a.low, &a.high].map(|end| told(end, entry.units, r.system));
            format!("assumed; plausibly {low} to {high}; {}", a.source)
        }
        Origin::Reckoned { text, inputs } => {
            let nodes: Vec<Node> = inputs.iter().map(|(_, at)| *at).collect();
            let words =
                parse(text).map_or_else(|_| (*text).to_owned(), |tree| plainly(&tree, &|name| name.replace('_', " ")));
            format!("= {words}, with {}", list(r, &nodes))
        }
        _ => origin(r, entry),
    }
}

/// Numbers of entries, in brackets.
fn list(r: &Report<'_>, inputs: &[Node]) -> String {
    format!("[{}]", inputs.iter().map(|at| r.no(*at)).collect::<Vec<_>>().join(", "))
}

/// `= feed / n = 162.2 gpm / 1`, with the lines the names stand for.
fn reckoned(r: &Report<'_>, text: &str, inputs: &[(&'static str, Node)]) -> String {
    let nodes: Vec<Node> = inputs.iter().map(|(_, at)| *at).collect();
    let Ok(tree) = parse(text) else { return format!("= {text}, with {}", list(r, &nodes)) };
    let number = |name: &str| {
        let entry = inputs.iter().find(|(n, _)| *n == name).and_then(|(_, at)| r.entry(*at));
        match entry.map(|e| (&e.value, e.units)) {
            Some((Arg::Number(si), Some(pair))) => {
                let unit = r.system.pick(pair);
                format!("{} {}", digits(unit.from_si(*si), 6), unit.symbol).trim_end().to_owned()
            }
            Some((Arg::Number(si), None)) => digits(*si, 6),
            _ => name.to_owned(),
        }
    };
    let words = plainly(&tree, &|name| name.replace('_', " "));
    format!("= {words} = {}, with {}", plainly(&tree, &number), list(r, &nodes))
}

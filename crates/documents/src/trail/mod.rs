//! The trail as plain text: every value, in order, with its origin, numbers substituted.

use crate::render::svg::escape;
use crate::render::text::hang;
use stillrise_design::provenance::{Entry, Ledger, Origin, show};
use stillrise_handbook::equation::{Style, block, mathml_number, parse, plain_symbol, printed, render};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::{System, print};

/// The whole trail.
#[must_use]
pub fn trail(settled: &Settled, width: usize) -> String {
    let system = settled.job.enquiry.system();
    let mut out = String::new();
    let mut section = None;
    for (k, entry) in settled.job.ledger.entries.iter().enumerate() {
        if section != Some(&entry.section) {
            section = Some(&entry.section);
            out.push_str(&format!("\n{}\n", entry.section));
        }
        out.push_str(&line(&settled.job.ledger, entry, Some(k + 1), system, width));
    }
    out
}

/// One value: its number, if it has one, label, value, origin; the equation of a formula on lines of its own.
#[must_use]
pub fn line(ledger: &Ledger, entry: &Entry, no: Option<usize>, system: System, width: usize) -> String {
    let no = no.map_or_else(String::new, |no| format!("{no}  "));
    let text = format!("{no}{} = {}   {}", entry.label, entry.shown(system), origin(entry, system));
    let mut out = hang(&text, width, 2, 6);
    out.push('\n');
    for equation in equations(ledger, entry) {
        out.push_str(&hang(&equation, width, 6, 8));
    }
    for note in &entry.notes {
        out.push_str(&hang(&format!("note: {note}"), width, 6, 8));
    }
    out
}

/// Where a value comes from, in a phrase.
#[must_use]
pub fn origin(entry: &Entry, system: System) -> String {
    match &entry.origin {
        Origin::Given { source, text } => format!("given: {source}: {text}"),
        Origin::Assumed(a) => {
            let range = format!("{} to {}", show(&a.low, entry.units, system), show(&a.high, entry.units, system));
            format!("assumed, plausibly {range}: {}", a.source)
        }
        Origin::Chosen { among, because, .. } => format!("chosen among {among}: {because}"),
        Origin::Derived { page, .. } => format!("by {}", page.id),
        Origin::Reckoned { .. } => "reckoned".to_owned(),
        Origin::Gathered { inputs } => {
            let places: Vec<String> = inputs.iter().filter_map(|n| n.index()).map(|k| (k + 1).to_string()).collect();
            format!("gathered of {}", places.join(", "))
        }
    }
}

/// The equation of a formula and the same with its numbers, each one `<math>`; nothing for other lines.
#[must_use]
pub fn mathml(ledger: &Ledger, entry: &Entry) -> Vec<String> {
    let Origin::Derived { page, inputs } = &entry.origin else { return Vec::new() };
    let args: Option<Vec<Arg>> = inputs.iter().map(|n| ledger.value(*n).cloned()).collect();
    let Some(args) = args else { return Vec::new() };
    let plain = printed(page, &args, &entry.value, Style::Plain);
    let unit = page.working_unit(&page.out).map_or("", |u| u.symbol);
    let last = plain.len().saturating_sub(1);
    let equals = "<mo>=</mo>";
    let typeset = printed(page, &args, &entry.value, Style::MathMl).into_iter().zip(plain).enumerate();
    typeset
        .map(|(k, (math, plain))| {
            let value = mathml_number(math.value);
            let unit = if k == last && !unit.is_empty() {
                format!("<mspace width=\"0.25em\"></mspace><mtext>{}</mtext>", escape(unit))
            } else {
                String::new()
            };
            let numbers = if math.numbers.is_empty() { String::new() } else { format!("{equals}{}", math.numbers) };
            block(
                &format!("{}{equals}{}{numbers}{equals}{value}{unit}", math.symbol, math.equation),
                &format!(
                    "{} = {} = {} = {}",
                    plain.symbol,
                    plain.equation,
                    plain.numbers,
                    print::digits(plain.value, 6)
                ),
            )
        })
        .collect()
}

/// Equation and substitution, in plain text.
#[must_use]
pub fn equations(ledger: &Ledger, entry: &Entry) -> Vec<String> {
    match &entry.origin {
        Origin::Derived { page, inputs } => {
            let args: Option<Vec<Arg>> = inputs.iter().map(|n| ledger.value(*n).cloned()).collect();
            let Some(args) = args else { return Vec::new() };
            let unit = page.working_unit(&page.out).map_or("", |u| u.symbol);
            let lines = printed(page, &args, &entry.value, Style::Plain);
            let last = lines.len().saturating_sub(1);
            lines
                .into_iter()
                .enumerate()
                .map(|(i, p)| (p, if i == last { unit } else { "" }))
                .map(|(p, unit)| match p.numbers.as_str() {
                    "" => format!("{} = {}", p.symbol, p.equation),
                    // A solved relation shows both sides with the root in them.
                    numbers if page.holds.is_some() => format!(
                        "{} = {}: {numbers}; {} = {} {unit}",
                        p.symbol,
                        p.equation,
                        plain_symbol(page.out.math),
                        print::digits(p.value, 6)
                    ),
                    numbers => {
                        format!("{} = {} = {numbers} = {} {unit}", p.symbol, p.equation, print::digits(p.value, 6))
                    }
                })
                .map(|line| line.trim_end().to_owned())
                .collect()
        }
        Origin::Reckoned { text, inputs } => {
            let Ok(tree) = parse(text) else { return Vec::new() };
            let name = |n: &str| plain_symbol(n);
            let number = |n: &str| {
                let value = inputs.iter().find(|(name, _)| *name == n).and_then(|(_, at)| ledger.value(*at));
                match value {
                    Some(Arg::Number(si)) => print::digits(*si, 6),
                    _ => n.to_owned(),
                }
            };
            let same = |f: &str| f.to_owned();
            vec![format!(
                "= {} = {}, SI",
                render(&tree, Style::Plain, &name, &same),
                render(&tree, Style::Plain, &number, &same)
            )]
        }
        _ => Vec::new(),
    }
}

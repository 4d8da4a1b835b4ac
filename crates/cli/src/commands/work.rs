//! `work`: one formula of the handbook, with its equation and the numbers in it.

use crate::{End, out};
use serde_json::json;
use stillrise_documents::package::pretty;
use stillrise_documents::render::text::{Table, hang, heading, item};
use stillrise_handbook::equation::{Style, plain_symbol, printed};
use stillrise_handbook::page::{Arg, Group, Kind, Page, Symbol};
use stillrise_handbook::{page, pages, read};
use stillrise_units::{Fault, nearest, print};

/// Works one formula of the handbook
#[derive(clap::Args)]
pub struct Args {
    /// The formula, as `stillrise work --list` names it; without arguments its page is shown
    #[arg(required_unless_present = "list")]
    formula: Option<String>,
    /// Its arguments, as d="60 um"
    #[arg(value_name = "NAME=VALUE")]
    given: Vec<String>,
    /// Lists all formulas
    #[arg(long)]
    list: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    if args.list {
        return list(args.json);
    }
    let name = args.formula.as_deref().unwrap_or("");
    let Some(page) = page(name) else {
        let near = nearest(name, pages().map(|p| p.id));
        let remedy =
            near.map_or_else(|| "see `stillrise work --list`".to_owned(), |near| format!("did you mean {near}?"));
        return End::Refused(vec![Fault::new(name, "is not a formula of the handbook", remedy)]);
    };
    if args.given.is_empty() && !args.json {
        out::print(&about(page));
        return End::Done;
    }
    let given: Vec<&str> = args.given.iter().map(String::as_str).collect();
    let values = match read::arguments(page, &given) {
        Ok(values) => values,
        Err(faults) => return End::Refused(faults.into_iter().map(|f| f.at(page.id)).collect()),
    };
    match (page.call)(&values) {
        Err(outside) => End::Refused(vec![Fault::new(
            format!("{}: {}", page.id, outside.argument),
            outside.reason,
            "give a value inside the domain",
        )]),
        Ok(result) => {
            if args.json {
                out::print(&String::from_utf8_lossy(&pretty(&as_json(page, &values, &result))));
            } else {
                out::print(&worked(page, &values, &result));
            }
            End::Done
        }
    }
}

fn list(json: bool) -> End {
    if json {
        let all: Vec<_> = pages().map(|p| json!({ "formula": p.id, "title": p.title, "file": p.file, "arguments": p.args.iter().map(|a| a.name).collect::<Vec<_>>() })).collect();
        out::print(&String::from_utf8_lossy(&pretty(&json!(all))));
        return End::Done;
    }
    let mut table = Table::new(["formula", "arguments", "title"]);
    for p in pages() {
        table.row([p.id.to_owned(), p.args.iter().map(|a| a.name).collect::<Vec<_>>().join(" "), p.title.to_owned()]);
    }
    out::print(&table.render(out::width()));
    End::Done
}

/// A value in US and SI print units.
fn shown(symbol: &Symbol, value: &Arg) -> String {
    match (value, symbol.units) {
        (Arg::Number(si), Some((us, metric))) if us == metric => print::with_unit(*si, us),
        (Arg::Number(si), Some((us, metric))) => {
            format!("{} = {}", print::with_unit(*si, us), print::with_unit(*si, metric))
        }
        (Arg::Number(si), None) => print::digits(*si, 6),
        (Arg::Choice(word), _) => (*word).to_owned(),
        (Arg::Series(pairs), _) if pairs.is_empty() => "none".to_owned(),
        (Arg::Series(pairs), _) => pairs
            .iter()
            .map(|(x, y)| format!("{}: {}", print::digits(*x, 5), print::digits(*y, 5)))
            .collect::<Vec<_>>()
            .join("; "),
        (Arg::Group(group, fields), _) => {
            let each =
                group.fields.iter().zip(fields).map(|(field, arg)| format!("{} {}", field.name, shown(field, arg)));
            format!("{}({})", group.word, each.collect::<Vec<_>>().join(", "))
        }
        (Arg::Groups(groups), _) => groups.iter().map(|group| shown(symbol, group)).collect::<Vec<_>>().join("; "),
    }
}

fn worked(page: &Page, values: &[Arg], result: &Arg) -> String {
    let width = out::width();
    let mut text = format!("{} ({})\n", page.title, page.id);
    for (symbol, value) in page.args.iter().zip(values) {
        text.push_str(&hang(
            &format!("{} = {}, {}", plain_symbol(symbol.math), shown(symbol, value), symbol.meaning),
            width,
            2,
            6,
        ));
    }
    let lines = printed(page, values, result, Style::Plain);
    for (line, unit) in lines.iter().zip(units(page, lines.len())) {
        text.push_str(&hang(&format!("{} = {}", line.symbol, line.equation), width, 2, 6));
        if !line.numbers.is_empty() {
            // A solved relation shows both sides with the root in them.
            let lead = if page.holds.is_some() { "" } else { "= " };
            let root =
                if page.holds.is_some() { format!("; {} =", plain_symbol(page.out.math)) } else { " =".to_owned() };
            text.push_str(&hang(
                format!("{lead}{}{root} {} {unit}", line.numbers, print::digits(line.value, 6)).trim_end(),
                width,
                4,
                6,
            ));
        }
    }
    text.push_str(&format!("{}: {}\n", page.out.meaning, shown(&page.out, result)));
    for note in page.notes(values) {
        text.push_str(&item("note", &note, width));
    }
    for source in page.sources {
        text.push_str(&item("source", &source.to_string(), width));
    }
    text
}

/// The unit of each line of a worked equation: the result's for the last, none for what leads to it. A line on the
/// way has a unit of its own that the code does not name, and the result's would be false there.
fn units(page: &Page, lines: usize) -> impl Iterator<Item = &'static str> {
    let unit = page.working_unit(&page.out).map_or("", |u| u.symbol);
    (1..=lines).map(move |line| if line == lines { unit } else { "" })
}

/// One row for an argument, then those of the fields that go together under it.
fn argument(table: &mut Table, a: &Symbol, under: &str) {
    let units = match (a.kind, a.units) {
        (Kind::Choice(words), _) => words.iter().map(|(w, _)| *w).collect::<Vec<_>>().join(" | "),
        (Kind::Series, Some((us, _))) => format!("[{}: {}; ..]", us.symbol, a.second.map_or("", |(u, _)| u.symbol)),
        (Kind::Group(_), _) => "(name=value, ..)".to_owned(),
        (Kind::Groups(kinds), _) => {
            let words: Vec<String> = kinds.iter().map(|group| format!("{}(..)", group.word)).collect();
            format!("[one; ..] of {}", words.join(" | "))
        }
        (_, Some((us, si))) if us == si => us.symbol.to_owned(),
        (_, Some((us, si))) => format!("{}, {}", us.symbol, si.symbol),
        _ => String::new(),
    };
    let range = a
        .range
        .map_or_else(String::new, |(low, high)| format!("{} to {}", print::digits(low, 4), print::digits(high, 4)));
    table.row([format!("{under}{}", a.name), plain_symbol(a.math), units, range, a.meaning.to_owned()]);
    let (single, several): (Option<&Group>, &[&Group]) = match a.kind {
        Kind::Group(group) => (Some(group), &[]),
        Kind::Groups(kinds) => (None, kinds),
        _ => (None, &[]),
    };
    for field in single.into_iter().flat_map(|group| group.fields) {
        argument(table, field, &format!("{}.", a.name));
    }
    for group in several {
        group.fields.iter().for_each(|field| argument(table, field, &format!("{}.", group.word)));
    }
}

fn about(page: &Page) -> String {
    let width = out::width();
    let mut text = heading(&format!("{} ({})", page.title, page.id));
    let note: String = page.note.lines().map(str::trim).collect::<Vec<_>>().join(" ");
    text.push_str(&hang(note.trim(), width, 0, 0));
    let mut table = Table::new(["argument", "symbol", "units", "trusted", "meaning"]);
    for a in page.args {
        argument(&mut table, a, "");
    }
    text.push_str(&table.render(width));
    for source in page.sources {
        text.push_str(&item("source", &source.to_string(), width));
    }
    text.push_str(&format!("corrected in {}\n", page.file));
    if let Some(check) = page.checks.first() {
        let quoted: Vec<String> = read::split(check.given)
            .iter()
            .map(|g| g.split_once('=').map_or_else(String::new, |(n, v)| format!("{n}=\"{v}\"")))
            .collect();
        text.push_str(&hang(&format!("try: stillrise work {} {}", page.id, quoted.join(" ")), width, 0, 4));
    }
    text
}

fn as_json(page: &Page, values: &[Arg], result: &Arg) -> serde_json::Value {
    let lines = printed(page, values, result, Style::Plain);
    json!({
        "formula": page.id, "title": page.title,
        "arguments": page.args.iter().zip(values).map(|(a, v)| json!({ "name": a.name, "value": shown(a, v) })).collect::<Vec<_>>(),
        "worked": lines.iter().zip(units(page, lines.len())).map(|(l, unit)| json!({ "symbol": l.symbol, "equation": l.equation, "numbers": l.numbers, "value": if l.value.is_finite() { json!(l.value) } else { json!(null) }, "unit": unit })).collect::<Vec<_>>(),
        "result": { "shown": shown(&page.out, result), "si": if let Arg::Number(si) = result { json!(si) } else { json!(null) } },
        "notes": page.notes(values),
        "sources": page.sources.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}

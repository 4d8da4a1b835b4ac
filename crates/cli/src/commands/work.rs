//! `work`: one formula of the handbook, with its equation and the numbers in it.

use crate::{End, out};
use serde_json::json;
use stillrise_documents::package::pretty;
use stillrise_documents::render::text::{Table, hang, heading, item};
use stillrise_handbook::equation::{Style, plain_symbol};
use stillrise_handbook::manual::formula::paragraphs;
use stillrise_handbook::manual::{Worked, named, variables, work};
use stillrise_handbook::page::{Arg, Page};
use stillrise_handbook::{pages, read};
use stillrise_units::print;

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
    let page = match named(args.formula.as_deref().unwrap_or("")) {
        Ok(page) => page,
        Err(fault) => return End::Refused(vec![fault]),
    };
    if args.given.is_empty() && !args.json {
        out::print(&about(page));
        return End::Done;
    }
    let given: Vec<&str> = args.given.iter().map(String::as_str).collect();
    match work(page, &given) {
        Err(faults) => End::Refused(faults),
        Ok(found) => {
            if args.json {
                out::print(&String::from_utf8_lossy(&pretty(&as_json(&found))));
            } else {
                out::print(&worked(&found));
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

fn worked(found: &Worked) -> String {
    let (page, width) = (found.page, out::width());
    let mut text = format!("{} ({})\n", page.title, page.id);
    for (symbol, value) in found.given() {
        let line = format!("{} = {value}, {}", plain_symbol(symbol.math), symbol.meaning);
        text.push_str(&hang(&line, width, 2, 6));
    }
    for (line, unit) in found.lines(Style::Plain) {
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
    text.push_str(&format!("{}: {}\n", page.out.meaning, found.result_shown()));
    for note in found.notes() {
        text.push_str(&item("note", &note, width));
    }
    for source in page.sources {
        text.push_str(&item("source", &source.to_string(), width));
    }
    text
}

fn about(page: &Page) -> String {
    let width = out::width();
    let mut text = heading(&format!("{} ({})", page.title, page.id));
    text.push_str(&hang(&paragraphs(page.note).join(" "), width, 0, 0));
    let mut table = Table::new(["argument", "symbol", "units", "trusted", "meaning"]);
    for v in variables(page) {
        let ends = |(low, high)| format!("{} to {}", print::digits(low, 4), print::digits(high, 4));
        let trusted = v.range.map_or_else(String::new, ends);
        table.row([v.name, plain_symbol(v.math), v.takes, trusted, v.meaning.to_owned()]);
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

fn as_json(found: &Worked) -> serde_json::Value {
    let page = found.page;
    json!({
        "formula": page.id, "title": page.title,
        "arguments": found.given().map(|(a, value)| json!({ "name": a.name, "value": value })).collect::<Vec<_>>(),
        "worked": found.lines(Style::Plain).into_iter().map(|(l, unit)| json!({ "symbol": l.symbol, "equation": l.equation, "numbers": l.numbers, "value": if l.value.is_finite() { json!(l.value) } else { json!(null) }, "unit": unit })).collect::<Vec<_>>(),
        "result": { "shown": found.result_shown(), "si": if let Arg::Number(si) = found.result { json!(si) } else { json!(null) } },
        "notes": found.notes(),
        "sources": page.sources.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}

//! A key that does not stand yet: where its line comes, and the tables and the block that it needs.

use crate::container::appended;
use crate::path::Path;
use crate::scan::{indent, line_break, line_end, next_line, statement_start};
use crate::sections::{added, sections};
use crate::splice::{Edit, spliced};
use crate::spot::Spot;
use crate::tree::{Entry, Form, Node};
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_units::Fault;

/// A table with more keys than that gets a header of its own; on one line it could not be read.
const MOST_IN_LINE: usize = 20;

/// The text with a key that did not stand; `value` as TOML writes it.
pub(crate) fn inserted(text: &str, tree: &Node, path: &Path, way: &Spot<'_>, value: &str) -> Result<String, Fault> {
    let refused = || {
        let remedy = "mend it in the text first";
        Err(Fault::new(path.to_string(), "its block stands in a form that cannot be added to", remedy))
    };
    let line = line_break(text);
    let block = path.block().name;
    let is_there = way.tables.len() > 1;
    if let [table, rest @ ..] = way.missing.as_slice()
        && let KeyKind::Table(inner) = table.kind
        && inner().keys().len() > MOST_IN_LINE
        && way.tables.len() <= 2
        && (!is_there || way.table().is_some_and(|t| t.form() == Some(Form::Header)) && !way.is_one_of_list())
    {
        let section = format!("[{block}.{}]{line}{}{line}", table.name, nested(rest, value));
        return Ok(spliced(text, vec![added(text, tree, block, &section)]));
    }
    let statement = nested(&way.missing, value);
    if !is_there {
        let section = format!("[{block}]{line}{statement}{line}");
        return Ok(spliced(text, vec![added(text, tree, block, &section)]));
    }
    let Some((container, names)) = way.container() else { return refused() };
    let statement = names.iter().rev().fold(statement, |inner, name| format!("{name}.{inner}"));
    let edits = match container.form() {
        Some(Form::Inline) => appended(text, container, &statement),
        Some(Form::Header) => {
            let order = if names.is_empty() { keys_of(path, way) } else { Vec::new() };
            let among = way.table().unwrap_or(container);
            vec![own_line(text, container, among, &order, way.missing.first(), &statement)]
        }
        Some(Form::Implied) => {
            let header = format!("[{}]{line}{statement}{line}{line}", way.names().join("."));
            let first = container.whole().start;
            let at = sections(text, tree).into_iter().find(|section| section.header.start >= first);
            let Some(at) = at.map(|section| section.at.start) else { return refused() };
            vec![(at..at, header)]
        }
        _ => return refused(),
    };
    Ok(spliced(text, edits))
}

/// `oil = { mean = "60 mg/L" }` of the keys `oil` and `mean`.
fn nested(keys: &[&'static KeySpec], value: &str) -> String {
    let mut keys = keys.iter().rev();
    let innermost = keys.next().map_or_else(|| value.to_owned(), |key| format!("{} = {value}", key.name));
    keys.fold(innermost, |inner, key| format!("{} = {{ {inner} }}", key.name))
}

/// The keys that are declared for the innermost table that stands, in their order.
fn keys_of(path: &Path, way: &Spot<'_>) -> Vec<&'static str> {
    let tables = path.tables().iter().take(way.tables.len().saturating_sub(2));
    let spec = tables.fold(path.block(), |spec: &'static BlockSpec, table| match table.kind {
        KeyKind::Table(inner) => inner(),
        _ => spec,
    });
    spec.keys().into_iter().map(|key| key.name).collect()
}

/// A line of its own in a table under a header: behind the last key that is declared before it, else right under the
/// header. In a table written by keys with points, behind its last key.
fn own_line(
    text: &str,
    container: &Node,
    among: &Node,
    order: &[&str],
    key: Option<&&'static KeySpec>,
    statement: &str,
) -> Edit {
    let place = |name: &str| order.iter().position(|known| *known == name);
    let own = key.and_then(|key| place(key.name));
    let lines = among.entries().iter().filter(|entry| !entry.node.is_spread());
    let before = lines.filter(|entry| own.is_none() || place(&entry.name) < own);
    let last = before.max_by_key(|entry| (place(&entry.name), entry.node.at.end));
    let line = line_break(text);
    let (after, blanks) = match last {
        Some(entry) => (entry.node.at.end, indent(text, first_of_line(text, entry))),
        None => (container.at.end, ""),
    };
    let at = next_line(text, after);
    let is_ended = at > line_end(text, after);
    if is_ended {
        (at..at, format!("{blanks}{statement}{line}"))
    } else {
        (at..at, format!("{line}{blanks}{statement}{line}"))
    }
}

/// Where the last statement of an entry begins.
fn first_of_line(text: &str, entry: &Entry) -> usize {
    match entry.node.form() {
        Some(Form::Dotted) => {
            let last = entry.node.entries().iter().max_by_key(|inner| inner.node.at.end);
            last.map_or(entry.key.start, |inner| first_of_line(text, inner))
        }
        _ => statement_start(text, entry.key.start),
    }
}

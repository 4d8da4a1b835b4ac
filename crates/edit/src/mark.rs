//! Which bytes of a text a fault speaks of, so that an editor can mark them.

use crate::claims::is_several;
use crate::heading::Heading;
use crate::path::Path;
use crate::scan::{indent, line_end, line_start, next_line};
use crate::set::target;
use crate::spot::spot;
use crate::standing::{all, find};
use crate::tree::{self, Node, What, line_number};
use core::ops::Range;

/// The bytes of a key and its value; none where it does not stand.
#[must_use]
pub fn span_of(text: &str, path: &Path) -> Option<Range<usize>> {
    let tree = tree::read(text).ok()?;
    key_of(&tree, path).map(|(key, node)| key.unwrap_or(node.whole()))
}

/// A key's bytes with its value, and its value.
fn key_of<'a>(tree: &'a Node, path: &Path) -> Option<(Option<Range<usize>>, &'a Node)> {
    let way = spot(tree, path).ok()?;
    let entry = way.entry()?;
    if path.item().is_some() {
        return Some((None, target(path, &way).ok()??));
    }
    let is_whole = !entry.node.is_spread() && entry.node.at.start > entry.key.start;
    Some((is_whole.then_some(entry.key.start..entry.node.at.end), &entry.node))
}

/// The bytes that a fault speaks of by its place, as the reader of enquiries writes it: `line 12, stream "wash": oil:
/// mean`, `rain: table`, `solids: table, row 2`, `line 3, the file`. A block or a table stands for a key that does not
/// stand in it; a line for what is not found.
#[must_use]
pub fn mark(text: &str, place: &str) -> Option<Range<usize>> {
    let (line, place) = numbered(place);
    let found = tree::read(text).ok().and_then(|tree| within(text, &tree, place));
    match line {
        None => found.map(|(at, _)| at),
        // Of two blocks of one name the line tells which is meant.
        Some(line) => {
            found.filter(|(_, key)| covers(text, key, line)).map(|(at, _)| at).or_else(|| line_of(text, line))
        }
    }
}

/// The line that a place names, and the rest of it.
fn numbered(place: &str) -> (Option<usize>, &str) {
    let split = place.strip_prefix("line ").and_then(|rest| rest.split_once(", "));
    match split.and_then(|(number, rest)| Some((number.parse().ok()?, rest))) {
        Some((number, rest)) => (Some(number), rest),
        None => (None, place),
    }
}

/// Whether a line holds one of the bytes.
fn covers(text: &str, at: &Range<usize>, line: usize) -> bool {
    line_number(text, at.start) <= line && line <= line_number(text, at.end)
}

/// The words of a line, without the blanks around them.
fn line_of(text: &str, number: usize) -> Option<Range<usize>> {
    let mut start = 0;
    for _ in 1..number {
        let next = next_line(text, start);
        if next == start {
            return None;
        }
        start = next;
    }
    let end = line_end(text, start);
    let first = start + text[start..end].len() - text[start..end].trim_start().len();
    let last = start + text[start..end].trim_end().len();
    (number > 0).then_some(first.min(last)..last)
}

/// The bytes of a place without a line, and those of the key that it is about.
fn within(text: &str, tree: &Node, place: &str) -> Option<(Range<usize>, Range<usize>)> {
    let (place, row) = match place.rsplit_once(", ") {
        Some((before, last)) => match last.strip_prefix("row ").or(last.strip_prefix("result ")) {
            Some(number) => (before, number.parse::<usize>().ok()),
            None => (place, None),
        },
        None => (place, None),
    };
    // Names may hold colons; what stands behind the last quote holds none.
    let (head, keys) = place.split_at(place.rfind('"').map_or(0, |quote| quote + 1));
    if let Some(name) = head.strip_prefix("stream or case ") {
        let either = ["stream", "case"].map(|block| within(text, tree, &format!("{block} {name}{keys}")));
        return either.into_iter().flatten().next_back();
    }
    let mut row = row;
    let mut path = format!("{head}{}", keys.replace(": ", "."));
    loop {
        if let Ok(key) = path.parse::<Path>()
            && let Some((own, node)) = key_of(tree, &key)
        {
            let nth = row.and_then(|row| element(&key, node, row));
            let own = own.unwrap_or_else(|| node.at.clone());
            return Some((nth.unwrap_or_else(|| own.clone()), own));
        }
        if let Ok(heading) = path.parse::<Heading>() {
            let at = header(text, tree, &heading, block(tree, &heading)?);
            return Some((at.clone(), at));
        }
        let end = path.rfind('.').filter(|end| *end >= head.len())?;
        row = row.or(path[end + 1..].parse().ok());
        path.truncate(end);
    }
}

/// The block that a fault means: of several that are called the same the last, for it is the one that was not
/// expected. A limit may be called by its pollutant, its statistic and its authority together.
fn block<'a>(tree: &'a Node, heading: &Heading) -> Option<&'a Node> {
    if let Ok(found) = find(tree, heading) {
        return found.map(|standing| standing.node);
    }
    let name = heading.name()?;
    let is_it = |called: Option<&str>| {
        called.is_some_and(|own| {
            let rest =
                name.get(..own.len()).filter(|front| front.eq_ignore_ascii_case(own)).map(|_| &name[own.len()..]);
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(", "))
        })
    };
    all(tree, heading).into_iter().rev().find(|standing| is_it(standing.called.name())).map(|standing| standing.node)
}

/// A row of a curve or a result of a list.
fn element(path: &Path, node: &Node, number: usize) -> Option<Range<usize>> {
    let list = if is_several(path.kind(), node) { return None } else { node.get("value").unwrap_or(node) };
    match &list.what {
        What::List(items) => items.get(number.checked_sub(1)?).map(|item| item.at.clone()),
        _ => None,
    }
}

/// The header of a block, or of what stands of it the first line.
fn header(text: &str, tree: &Node, heading: &Heading, block: &Node) -> Range<usize> {
    if block.at.is_empty() || block.form() != Some(tree::Form::Header) {
        let start = tree.entry(heading.block().name).map_or(0, |entry| entry.key.start);
        let from = line_start(text, start) + indent(text, start).len();
        return from..line_end(text, start);
    }
    block.at.clone()
}

//! A key that goes, with the table and the block that it leaves empty.

use crate::container::{elements, removed};
use crate::path::Path;
use crate::scan::{line_break, line_end, line_start, next_line, past_blanks};
use crate::sections::sections;
use crate::set::{target, things};
use crate::splice::{Edit, spliced};
use crate::spot::{Spot, spot};
use crate::tree::{self, Entry, Form, Node, What};
use core::ops::Range;
use stillrise_units::Fault;

/// The text without a key. The comment behind it on its line goes with it; those on lines of their own stay.
pub(crate) fn unset(text: &str, path: &Path) -> Result<String, Fault> {
    let tree = tree::read(text)?;
    let way = spot(&tree, path)?;
    let Some(entry) = way.entry() else { return Ok(text.to_owned()) };
    if let Some(item) = path.item() {
        let things = things(&entry.node);
        if things.len() > 1 {
            target(path, &way)?;
            return Ok(spliced(text, removed(text, &entry.node, item - 1)));
        }
        if item > 1 {
            return Ok(text.to_owned());
        }
    }
    // Outwards, as long as nothing else stands in the table, but not beyond the block, nor one of several.
    let mut depth = way.entries.len() - 1;
    let least = usize::from(way.is_one_of_list());
    while depth > least && way.tables.get(depth).is_some_and(|table| table.entries().len() == 1) {
        depth -= 1;
    }
    Ok(without(text, &tree, &way, depth))
}

/// The text without the key at a depth of a way.
fn without(text: &str, tree: &Node, way: &Spot<'_>, depth: usize) -> String {
    let Some(entry) = way.entries.get(depth) else { return text.to_owned() };
    let outer = way.tables.iter().take(depth + 1).rev().find(|table| table.form() != Some(Form::Dotted));
    if let Some(braces) = outer.filter(|outer| outer.form() == Some(Form::Inline)) {
        return without_elements(text, braces, entry);
    }
    let mut gone = Vec::new();
    lines(text, entry, &mut gone);
    ended(spliced(text, tidied(text, tree, gone)))
}

/// A text that ends with its last line.
pub(crate) fn ended(mut text: String) -> String {
    let line = line_break(&text);
    while text.ends_with(&line.repeat(2)) {
        text.truncate(text.len() - line.len());
    }
    text
}

/// Where the values of an entry end.
fn ends(entry: &Entry, found: &mut Vec<usize>) {
    match entry.node.form() {
        Some(Form::Dotted) => entry.node.entries().iter().for_each(|inner| ends(inner, found)),
        _ => found.push(entry.node.at.end),
    }
}

/// The statements of an entry in a table between braces.
fn without_elements(text: &str, braces: &Node, entry: &Entry) -> String {
    let all = elements(text, braces);
    let mut own = Vec::new();
    ends(entry, &mut own);
    let is_within = |at: &Range<usize>| own.contains(&at.end);
    let within: Vec<usize> = (0..all.len()).filter(|i| all.get(*i).is_some_and(is_within)).collect();
    match within.as_slice() {
        [one] => spliced(text, removed(text, braces, *one)),
        // Several keys with points of one table: what is left is written anew.
        many => {
            let kept = (0..all.len()).filter(|i| !many.contains(i));
            let kept: Vec<&str> = kept.filter_map(|i| text.get(all.get(i)?.clone())).collect();
            let new = if kept.is_empty() { "{}".to_owned() } else { format!("{{ {} }}", kept.join(", ")) };
            spliced(text, vec![(braces.at.clone(), new)])
        }
    }
}

/// The lines of an entry: of a value its own, of a table under a header that of the header and of all keys in it.
pub(crate) fn lines(text: &str, entry: &Entry, gone: &mut Vec<Range<usize>>) {
    match &entry.node.what {
        What::Table(Form::Inline, _) => gone.push(whole_lines(text, entry.key.start..entry.node.at.end)),
        What::Table(form, inner) => {
            if *form == Form::Header {
                gone.push(whole_lines(text, entry.node.at.clone()));
            }
            inner.iter().for_each(|entry| lines(text, entry, gone));
        }
        What::Tables(nodes) => {
            for node in nodes {
                gone.push(whole_lines(text, node.at.clone()));
                node.entries().iter().for_each(|entry| lines(text, entry, gone));
            }
        }
        _ => gone.push(whole_lines(text, entry.key.start..entry.node.at.end)),
    }
}

/// From the start of the line that a range begins in to the end of the one that it ends in.
fn whole_lines(text: &str, at: Range<usize>) -> Range<usize> {
    let behind = past_blanks(text, at.end);
    line_start(text, at.start)..next_line(text, line_end(text, behind))
}

/// Lines that go. Where nothing but blank lines is left of a section, these go too.
fn tidied(text: &str, tree: &Node, mut gone: Vec<Range<usize>>) -> Vec<Edit> {
    let is_gone = |at: usize| gone.iter().any(|gone| gone.contains(&at));
    let mut bare = Vec::new();
    for section in sections(text, tree).into_iter().filter(|section| is_gone(section.header.start)) {
        let whole = line_start(text, section.header.start)..section.at.end;
        let mut at = whole.start;
        let mut is_left = false;
        while at < whole.end {
            let next = next_line(text, at);
            is_left |= !is_gone(at) && !text[at..next].trim().is_empty();
            at = next;
        }
        if !is_left {
            bare.push(whole);
        }
    }
    gone.retain(|own| !bare.iter().any(|bare| bare.contains(&own.start)));
    gone.extend(bare);
    gone.into_iter().map(|at| (at, String::new())).collect()
}

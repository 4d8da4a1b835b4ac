//! One value for a key, in place of all that was claimed.

use crate::claims::{Claim, claims, is_several, takes_claims, takes_source};
use crate::container::appended;
use crate::insert::inserted;
use crate::path::Path;
use crate::scan::{comments, indent, line_break, line_start};
use crate::splice::{Edit, spliced};
use crate::spot::{Spot, spot};
use crate::tree::{self, Form, Node, What};
use crate::written::{quoted, typed, written};
use core::ops::Range;
use stillrise_design::enquiry::keys::KeyKind;
use stillrise_units::Fault;

/// The text with a key set.
///
/// What is typed as it stands changes nothing, unless it comes from elsewhere than was said. Of several claims the one
/// that says the same stays as it is and the others go. Another value keeps what a claim says of its range; who said
/// the former one and why it was chosen goes with it.
pub(crate) fn set(text: &str, path: &Path, value: &str, from: Option<&str>) -> Result<String, Fault> {
    let kind = path.kind();
    if matches!(kind, KeyKind::Table(_)) {
        return Err(Fault::new(path.to_string(), "holds keys of its own", "set one of them"));
    }
    let source = said_by(from);
    if source.is_some() && !takes_source(kind) {
        let remedy = "leave the source out, or write it into a comment";
        return Err(Fault::new(path.to_string(), "does not say who said so", remedy));
    }
    let tree = tree::read(text)?;
    let way = spot(&tree, path)?;
    let fresh = fresh(kind, value, source);
    let Some(node) = target(path, &way)? else {
        return match way.entry() {
            Some(entry) => one_thing_more(text, path, &way, &entry.node, &fresh),
            None => inserted(text, &tree, path, &way, &first(kind, value, source).unwrap_or(fresh)),
        };
    };
    if let KeyKind::Quantities(_) = kind {
        return Ok(set_things(text, kind, &way, node, value, from));
    }
    let all = claims(kind, node);
    let is_value = |claim: &Claim<'_>| is_same(kind, &claim.typed(text, kind), value);
    let is_source = |claim: &Claim<'_>| from.is_none() || claim.field(text, "from").as_deref() == source;
    let says = |claim: &&Claim<'_>| claim.value.is_some() && is_value(claim) && is_source(claim);
    if let Some(same) = all.iter().find(says) {
        let own = text.get(same.node.at.clone()).unwrap_or_default();
        return Ok(if all.len() == 1 { text.to_owned() } else { replaced(text, &way, &node.at, own) });
    }
    let [claim] = all.as_slice() else { return Ok(replaced(text, &way, &node.at, &fresh)) };
    let Some(old) = claim.value else { return Ok(replaced(text, &way, &node.at, &fresh)) };
    let new = written(kind, value);
    let mut changes = vec![("from", source.map(quoted))];
    if !is_value(claim) {
        changes.extend([("value", Some(new.clone())), ("chosen", None), ("because", None)]);
    }
    let says_more = ["from", "chosen", "because"].iter().any(|name| claim.node.get(name).is_some());
    if source.is_none() && !(claim.is_table() && says_more) {
        return Ok(replaced(text, &way, &old.at, &new));
    }
    Ok(replaced(text, &way, &claim.node.at, &claim.with(text, &changes)))
}

/// Who said so; nobody where that is left blank.
pub(crate) fn said_by(from: Option<&str>) -> Option<&str> {
    from.filter(|from| !from.trim().is_empty())
}

/// Whether what is typed says what stands: `yes` says `true`, and of a list the blanks between its things say nothing.
pub(crate) fn is_same(kind: KeyKind, standing: &str, value: &str) -> bool {
    written(kind, standing) == written(kind, value)
}

/// A value nobody claimed before, as TOML writes it.
pub(crate) fn fresh(kind: KeyKind, value: &str, from: Option<&str>) -> String {
    let Some(from) = from.map(quoted) else { return written(kind, value) };
    if let KeyKind::Quantities(dim) = kind {
        let things = crate::written::items(kind, value);
        let one = |thing| format!("{{ value = {}, from = {from} }}", written(KeyKind::Quantity(dim), thing));
        return format!("[{}]", things.into_iter().map(one).collect::<Vec<_>>().join(", "));
    }
    format!("{{ value = {}, from = {from} }}", written(kind, value))
}

/// One thing alone of a list of quantities, which needs no brackets.
fn first(kind: KeyKind, value: &str, from: Option<&str>) -> Option<String> {
    let KeyKind::Quantities(dim) = kind else { return None };
    match crate::written::items(kind, value).as_slice() {
        [one] => Some(fresh(KeyKind::Quantity(dim), one, from)),
        _ => None,
    }
}

/// The value that a path means: that of the key, or one of the things that it lists; none where it does not stand.
pub(crate) fn target<'a>(path: &Path, way: &Spot<'a>) -> Result<Option<&'a Node>, Fault> {
    let stands = way.entry().map(|entry| &entry.node);
    let found = match (stands, path.item()) {
        (Some(node), Some(item)) => {
            let things = things(node);
            if item > things.len() + 1 {
                let reason = format!("there are {} of them", things.len());
                return Err(Fault::new(path.to_string(), reason, "count from 1, and add one at a time"));
            }
            things.get(item - 1).copied()
        }
        (None, Some(item)) if item > 1 => {
            return Err(Fault::new(path.to_string(), "there is none of them", "begin with the first"));
        }
        (stands, _) => stands,
    };
    let how = match found {
        Some(node) if node.is_spread() => "stands under a header of its own",
        Some(node) if node.form() == Some(Form::Dotted) => "is written by keys with points",
        found => return Ok(found),
    };
    Err(Fault::new(path.to_string(), how, "write its value behind the key in the text first"))
}

/// What a list of quantities lists; a value without brackets is one thing.
pub(crate) fn things(node: &Node) -> Vec<&Node> {
    match &node.what {
        What::List(list) => list.iter().collect(),
        _ => vec![node],
    }
}

/// One thing more in a list of quantities.
fn one_thing_more(text: &str, path: &Path, way: &Spot<'_>, list: &Node, fresh: &str) -> Result<String, Fault> {
    match &list.what {
        What::List(_) => Ok(spliced(text, appended(text, list, fresh))),
        _ if list.is_spread() => target(&path.without_item(), way).map(|_| text.to_owned()),
        _ => {
            let own = text.get(list.at.clone()).unwrap_or_default();
            Ok(replaced(text, way, &list.at, &format!("[{own}, {fresh}]")))
        }
    }
}

/// All things of a list of quantities.
fn set_things(text: &str, kind: KeyKind, way: &Spot<'_>, node: &Node, value: &str, from: Option<&str>) -> String {
    let KeyKind::Quantities(dim) = kind else { return text.to_owned() };
    let one = KeyKind::Quantity(dim);
    let source = said_by(from);
    let from_there = |thing: &&Node| {
        let all = claims(one, thing);
        from.is_none() || all.iter().all(|claim| claim.field(text, "from").as_deref() == source)
    };
    if all_typed(text, one, node).is_some_and(|standing| is_same(kind, &standing, value))
        && things(node).iter().all(from_there)
    {
        return text.to_owned();
    }
    let is_list = matches!(node.what, What::List(_));
    let new = first(kind, value, source).filter(|_| !is_list).unwrap_or_else(|| fresh(kind, value, source));
    replaced(text, way, &node.at, &new)
}

/// All things of a list of quantities as they would be typed; none where several claims stand on one.
pub(crate) fn all_typed(text: &str, one: KeyKind, node: &Node) -> Option<String> {
    let mut words = Vec::new();
    for thing in things(node) {
        match claims(one, thing).as_slice() {
            [claim] if !is_several(one, thing) => words.push(typed(text, one, claim.value?)),
            _ => return None,
        }
    }
    Some(words.join("; "))
}

/// The text with a part of a value written anew. Comments in what goes stand above its line from then on.
pub(crate) fn replaced(text: &str, way: &Spot<'_>, at: &Range<usize>, new: &str) -> String {
    let mut edits = lifted(text, way, at, &[new]);
    edits.push((at.clone(), new.to_owned()));
    spliced(text, edits)
}

/// Comments of a part that goes, on lines of their own above the line of its key, without those that come again.
pub(crate) fn lifted(text: &str, way: &Spot<'_>, gone: &Range<usize>, new: &[&str]) -> Vec<Edit> {
    let mut again: Vec<&str> =
        new.iter().flat_map(|new| comments(new, 0..new.len()).into_iter().map(|at| &new[at])).collect();
    let anchor = way.anchor();
    let start = line_start(text, anchor);
    let blanks = indent(text, anchor);
    let mut lines = String::new();
    for comment in comments(text, gone.clone()) {
        let comment = &text[comment];
        match again.iter().position(|other| *other == comment) {
            Some(at) => drop(again.remove(at)),
            None => lines.extend([blanks, comment, line_break(text)]),
        }
    }
    if lines.is_empty() { Vec::new() } else { vec![(start..start, lines)] }
}

/// That a key takes claims by several.
pub(crate) fn may_claim(path: &Path) -> Result<(), Fault> {
    if takes_claims(path.kind()) {
        return Ok(());
    }
    let remedy = match path.kind() {
        KeyKind::Quantities(_) => format!("say which of them: {}", path.with_item(1)),
        _ => "set it, and write into a comment who says otherwise".to_owned(),
    };
    Err(Fault::new(path.to_string(), "does not hold claims by several", remedy))
}

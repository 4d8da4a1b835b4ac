//! Claims beside each other: one more, the one that is chosen, one less.

use crate::claims::{Claim, claims, is_several};
use crate::container::{appended, removed};
use crate::path::Path;
use crate::scan::comments;
use crate::set::{fresh, is_same, lifted, may_claim, replaced, said_by, set, target};
use crate::splice::spliced;
use crate::spot::{Spot, spot};
use crate::tree::{self, Node};
use crate::unset::unset;
use crate::written::quoted;
use stillrise_units::Fault;

/// The text with one more claim on a key; one that says the same from the same source is not added twice.
pub(crate) fn claim(text: &str, path: &Path, value: &str, from: Option<&str>) -> Result<String, Fault> {
    may_claim(path)?;
    let kind = path.kind();
    let tree = tree::read(text)?;
    let way = spot(&tree, path)?;
    let Some(node) = target(path, &way)? else { return set(text, path, value, from) };
    let from = said_by(from);
    let says = |claim: &Claim<'_>| {
        is_same(kind, &claim.typed(text, kind), value) && claim.field(text, "from").as_deref() == from
    };
    if claims(kind, node).iter().any(says) {
        return Ok(text.to_owned());
    }
    let fresh = fresh(kind, value, from);
    if is_several(kind, node) {
        return Ok(spliced(text, appended(text, node, &fresh)));
    }
    // A list of texts is one curve: two of them would be read as a longer list without the table around the new one.
    let own = text.get(node.at.clone()).unwrap_or_default();
    Ok(replaced(text, &way, &node.at, &format!("[{own}, {fresh}]")))
}

/// A claim of a key by its place, from 0.
struct Nth<'a> {
    way: Spot<'a>,
    node: &'a Node,
    all: Vec<Claim<'a>>,
}

fn nth<'a>(tree: &'a Node, path: &Path, nth: usize) -> Result<Nth<'a>, Fault> {
    may_claim(path)?;
    let way = spot(tree, path)?;
    let Some(node) = target(path, &way)? else {
        return Err(Fault::new(path.to_string(), "nobody said anything of it", "set it first"));
    };
    let all = claims(path.kind(), node);
    if nth >= all.len() {
        let reason = format!("there is no claim {}; there are {}", nth.saturating_add(1), all.len());
        return Err(Fault::new(path.to_string(), reason, "take one of those"));
    }
    Ok(Nth { way, node, all })
}

/// The text with a claim marked as chosen, and no other.
pub(crate) fn choose(text: &str, path: &Path, which: usize, because: &str) -> Result<String, Fault> {
    let tree = tree::read(text)?;
    let Nth { way, all, .. } = nth(&tree, path, which)?;
    let mut edits = Vec::new();
    for (i, claim) in all.iter().enumerate() {
        let is_it = i == which;
        let because = Some(because.trim()).filter(|because| is_it && !because.is_empty()).map(str::to_owned);
        let stands = |name: &str| claim.node.get(name).is_some();
        let is_right = claim.field(text, "because") == because
            && claim.is_chosen() == is_it
            && (is_it || !claim.is_table() || !stands("chosen"));
        if is_right {
            continue;
        }
        let changes = [("chosen", is_it.then(|| "true".to_owned())), ("because", because.as_deref().map(quoted))];
        let new = claim.with(text, &changes);
        edits.extend(lifted(text, &way, &claim.node.at, &[&new]));
        edits.push((claim.node.at.clone(), new));
    }
    Ok(spliced(text, edits))
}

/// The text without a claim; with the last one the key goes, and of two the other stands alone, without brackets.
pub(crate) fn withdraw(text: &str, path: &Path, which: usize) -> Result<String, Fault> {
    let tree = tree::read(text)?;
    let Nth { way, node, all } = nth(&tree, path, which)?;
    match all.as_slice() {
        [_] => unset(text, path),
        [a, b] => {
            let left = if which == 0 { b } else { a };
            let own = text.get(left.node.at.clone()).unwrap_or_default();
            // Comments that stand between the claims need the list's lines.
            let is_plain = comments(text, node.at.clone()).is_empty();
            let new = if is_plain { own.to_owned() } else { return Ok(spliced(text, removed(text, node, which))) };
            Ok(replaced(text, &way, &node.at, &new))
        }
        _ => Ok(spliced(text, removed(text, node, which))),
    }
}

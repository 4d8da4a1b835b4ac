//! Every key that stands in the text of an enquiry, with what was claimed on it as it was typed.

use crate::claims::{self, claims};
use crate::heading::Heading;
use crate::path::Path;
use crate::set::{all_typed, things};
use crate::standing::all;
use crate::tree::{self, Entry, Node};
use crate::written::typed;
use core::ops::Range;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_units::Fault;

/// A key that stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// Its path, as the program calls it.
    pub path: Path,
    /// What is claimed on it, in the order of the file. Of a list of quantities without sources there is one claim, all
    /// things parted by semicolons; else each thing stands by itself, under a path with its number.
    pub claims: Vec<Claimed>,
    /// Its bytes in the text: of the value, without the key.
    pub at: Range<usize>,
}

/// One claim, as it was typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Claimed {
    /// The value.
    pub value: String,
    /// Who or what says so.
    pub from: Option<String>,
    /// Whether a person chose it among several.
    pub chosen: bool,
    /// Why.
    pub because: Option<String>,
    /// The least that it may be.
    pub low: Option<String>,
    /// The most that it may be.
    pub high: Option<String>,
    /// How it spreads between.
    pub distribution: Option<String>,
    /// Its bytes in the text.
    pub at: Range<usize>,
}

/// Every key that stands in a text, block by block in the order of the blocks, each in the order of the text. Blocks
/// and keys that no enquiry has are left out: the reader of enquiries finds them.
///
/// # Errors The text is no TOML.
pub fn said(text: &str) -> Result<Vec<Said>, Fault> {
    let tree = tree::read(text)?;
    let mut found = Vec::new();
    for (block, _) in blocks() {
        let heading = Heading::new(block.name, None, None)?;
        for standing in all(&tree, &heading) {
            gather(text, &standing.called, block, &mut Vec::new(), standing.node, &mut found);
        }
    }
    Ok(found)
}

/// The blocks that stand in a text, in the order of the blocks, each as the program calls it.
///
/// # Errors
/// The text is no TOML.
pub fn headings(text: &str) -> Result<Vec<Heading>, Fault> {
    let tree = tree::read(text)?;
    let mut found = Vec::new();
    for (block, _) in blocks() {
        let heading = Heading::new(block.name, None, None)?;
        found.extend(all(&tree, &heading).into_iter().map(|standing| standing.called.clone()));
    }
    Ok(found)
}

fn gather(
    text: &str,
    heading: &Heading,
    block: &'static BlockSpec,
    tables: &mut Vec<&'static KeySpec>,
    node: &Node,
    found: &mut Vec<Said>,
) {
    let keys = block.keys();
    let mut entries: Vec<(&Entry, &'static KeySpec)> = node
        .entries()
        .iter()
        .filter_map(|entry| Some((entry, *keys.iter().find(|key| key.name == entry.name)?)))
        .collect();
    entries.sort_by_key(|(entry, _)| entry.node.whole().start);
    for (entry, key) in entries {
        if let KeyKind::Table(inner) = key.kind {
            tables.push(key);
            gather(text, heading, inner(), tables, &entry.node, found);
            tables.pop();
            continue;
        }
        let path = Path::known(heading, tables, key);
        if let KeyKind::Quantities(dim) = key.kind {
            let one = KeyKind::Quantity(dim);
            let all = things(&entry.node);
            let is_plain = all.iter().all(|thing| claims(one, thing).iter().all(|claim| !claim.is_table()));
            if let Some(value) = all_typed(text, one, &entry.node).filter(|_| is_plain) {
                let at = entry.node.whole();
                let claim = Claimed { value, at: at.clone(), ..Claimed::default() };
                found.push(Said { path, claims: vec![claim], at });
            } else {
                let said = |(i, thing)| of(text, path.with_item(i + 1), one, thing);
                found.extend(all.into_iter().enumerate().map(said));
            }
            continue;
        }
        found.push(of(text, path, key.kind, &entry.node));
    }
}

fn of(text: &str, path: Path, kind: KeyKind, node: &Node) -> Said {
    let claimed = |claim: claims::Claim<'_>| Claimed {
        value: claim.value.map_or_else(String::new, |value| typed(text, kind, value)),
        from: claim.field(text, "from"),
        chosen: claim.is_chosen(),
        because: claim.field(text, "because"),
        low: claim.field(text, "low"),
        high: claim.field(text, "high"),
        distribution: claim.field(text, "distribution"),
        at: claim.node.whole(),
    };
    Said { path, claims: claims(kind, node).into_iter().map(claimed).collect(), at: node.whole() }
}

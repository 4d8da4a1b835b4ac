//! The claims on a key as they stand in a text: one plain value, a table that says who said so, or a list of either.

use crate::scan::statement_start;
use crate::tree::{Entry, Form, Node, What};
use crate::written::{is_list, typed};
use stillrise_design::enquiry::keys::KeyKind;

/// One claim.
#[derive(Clone, Copy)]
pub(crate) struct Claim<'a> {
    /// All of it.
    pub node: &'a Node,
    /// What is claimed; none where a table has no value.
    pub value: Option<&'a Node>,
}

/// Whether a key of this kind says who said so.
pub(crate) fn takes_source(kind: KeyKind) -> bool {
    !matches!(kind, KeyKind::Pattern(_) | KeyKind::Texts | KeyKind::Results(_) | KeyKind::Table(_))
}

/// Whether a key of this kind may be claimed by several. Of a list of quantities each thing is claimed by itself.
pub(crate) fn takes_claims(kind: KeyKind) -> bool {
    takes_source(kind) && !matches!(kind, KeyKind::Quantities(_))
}

/// Whether a value is a list of claims.
pub(crate) fn is_several(kind: KeyKind, node: &Node) -> bool {
    match &node.what {
        // A list of texts is one curve; a list of tables or of lists is one of claims.
        What::List(list) if is_list(kind) => {
            takes_claims(kind) && list.iter().any(|n| matches!(n.what, What::Table(..) | What::List(_)))
        }
        What::List(_) | What::Tables(_) => takes_claims(kind),
        _ => false,
    }
}

/// The claims of a value.
pub(crate) fn claims(kind: KeyKind, node: &Node) -> Vec<Claim<'_>> {
    let one = |node| Claim::of(kind, node);
    match &node.what {
        What::List(list) | What::Tables(list) if is_several(kind, node) => list.iter().map(one).collect(),
        _ => vec![one(node)],
    }
}

impl<'a> Claim<'a> {
    /// A value, or a table that holds one.
    pub(crate) fn of(kind: KeyKind, node: &'a Node) -> Self {
        let is_table = matches!(node.what, What::Table(..)) && takes_source(kind);
        Self { node, value: if is_table { node.get("value") } else { Some(node) } }
    }
    /// Whether it is a table.
    pub(crate) fn is_table(&self) -> bool {
        self.value.is_none_or(|value| !core::ptr::eq(value, self.node))
    }
    /// The value as it would be typed.
    pub(crate) fn typed(&self, text: &str, kind: KeyKind) -> String {
        self.value.map(|value| typed(text, kind, value)).unwrap_or_default()
    }
    /// What else the table says, as it would be typed: `from`, `because`, `low`, `high`, `distribution`.
    pub(crate) fn field(&self, text: &str, name: &str) -> Option<String> {
        if !self.is_table() {
            return None;
        }
        self.node.get(name).map(|node| typed(text, KeyKind::Text, node))
    }
    /// Whether it is marked chosen.
    pub(crate) fn is_chosen(&self) -> bool {
        self.is_table() && matches!(self.node.get("chosen").map(|c| &c.what), Some(What::Flag(true)))
    }

    /// The claim with some of its fields written anew, or left out; one that becomes a table says its value first.
    pub(crate) fn with(&self, text: &str, changes: &[(&str, Option<String>)]) -> String {
        let mut fields: Vec<(String, String)> = Vec::new();
        if self.is_table() {
            statements(text, self.node, &mut fields);
        } else {
            fields.push(("value".to_owned(), text.get(self.node.at.clone()).unwrap_or_default().to_owned()));
        }
        for (name, new) in changes {
            let at = fields.iter().position(|(own, _)| own == name);
            match (at, new) {
                (Some(at), Some(new)) => fields[at].1.clone_from(new),
                (None, Some(new)) => fields.push(((*name).to_owned(), new.clone())),
                (Some(at), None) => drop(fields.remove(at)),
                (None, None) => {}
            }
        }
        match fields.as_slice() {
            [(_, value)] if !self.is_table() => value.clone(),
            fields => {
                let all: Vec<String> = fields.iter().map(|(name, value)| format!("{name} = {value}")).collect();
                format!("{{ {} }}", all.join(", "))
            }
        }
    }
}

/// The statements of a table between braces, each key as it is written and its value.
fn statements(text: &str, table: &Node, found: &mut Vec<(String, String)>) {
    for Entry { name, key, node } in table.entries() {
        if node.form() == Some(Form::Dotted) {
            statements(text, node, found);
            continue;
        }
        let start = statement_start(text, key.start);
        let written = if start == key.start { name.clone() } else { text[start..key.end].to_owned() };
        found.push((written, text.get(node.at.clone()).unwrap_or_default().to_owned()));
    }
}

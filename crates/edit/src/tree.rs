//! The text of an enquiry as a tree of what stands where in it: every key and value with its bytes. Changes are made
//! in the text itself, between these places, so that whatever is not changed keeps every one of its bytes.

use core::ops::Range;
use stillrise_units::Fault;
use toml_edit::{Array, Document, InlineTable, Item, Key, Table, Value};

/// How a table is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    /// Under a header of its own, `[rain]`, or the file itself.
    Header,
    /// Only by the header of a table in it: `[unit.dimensions]` without `[unit]`.
    Implied,
    /// By keys with points: `oil.mean = "60 mg/L"`.
    Dotted,
    /// Between braces.
    Inline,
}

/// What a value is.
#[derive(Debug, Clone)]
pub(crate) enum What {
    /// A text, as it reads.
    Text(String),
    /// Yes or no.
    Flag(bool),
    /// A number or a day, as it stands in the text.
    Bare,
    /// A list between brackets.
    List(Vec<Node>),
    /// Tables under headers in double brackets.
    Tables(Vec<Node>),
    /// A table.
    Table(Form, Vec<Entry>),
}

/// A value and where it stands.
#[derive(Debug, Clone)]
pub(crate) struct Node {
    /// What it is.
    pub what: What,
    /// Its bytes: of a table under a header those of the header, of one without any those from its first key to its
    /// last.
    pub at: Range<usize>,
}

/// A key and its value.
#[derive(Debug, Clone)]
pub(crate) struct Entry {
    /// The key, as it reads.
    pub name: String,
    /// Its bytes.
    pub key: Range<usize>,
    /// Its value.
    pub node: Node,
}

/// A mark at the head of a file that says nothing but that it is UTF-8.
pub(crate) const MARK: char = '\u{feff}';

/// Reads a text; what stands where counts from its first byte.
pub(crate) fn read(text: &str) -> Result<Node, Fault> {
    // The mark is covered by a blank of the same length, so that places stay what they are.
    let covered = text.strip_prefix(MARK).map(|rest| ["   ", rest].concat());
    let document = Document::parse(covered.as_deref().unwrap_or(text)).map_err(|error| {
        let line = error.span().map(|span| line_number(text, span.start));
        let place = line.map_or_else(|| "the file".to_owned(), |line| format!("line {line}, the file"));
        Fault::new(place, error.message().trim().replace('\n', ", "), "mend the TOML syntax there")
    })?;
    Ok(Node { what: What::Table(Form::Header, entries(document.as_table().iter_with_keys())), at: 0..0 })
}

/// The number of the line that a byte stands in.
pub(crate) fn line_number(text: &str, at: usize) -> usize {
    text.as_bytes()[..at.min(text.len())].iter().filter(|byte| **byte == b'\n').count() + 1
}

/// Keys and items of any table, the same way.
trait Keyed {
    fn iter_with_keys(&self) -> Vec<(&Key, Kept<'_>)>;
}

/// An item of a table, under headers or between braces.
enum Kept<'a> {
    Item(&'a Item),
    Value(&'a Value),
}

impl Keyed for Table {
    fn iter_with_keys(&self) -> Vec<(&Key, Kept<'_>)> {
        self.iter().filter_map(|(name, item)| Some((self.key(name)?, Kept::Item(item)))).collect()
    }
}

impl Keyed for InlineTable {
    fn iter_with_keys(&self) -> Vec<(&Key, Kept<'_>)> {
        self.iter().filter_map(|(name, value)| Some((self.key(name)?, Kept::Value(value)))).collect()
    }
}

fn entries(items: Vec<(&Key, Kept<'_>)>) -> Vec<Entry> {
    let entry = |(key, kept): (&Key, Kept<'_>)| {
        let node = match kept {
            Kept::Item(Item::None) => return None,
            Kept::Item(Item::Value(value)) | Kept::Value(value) => of_value(value),
            Kept::Item(Item::Table(table)) => of_table(table),
            Kept::Item(Item::ArrayOfTables(tables)) => {
                let nodes: Vec<Node> = tables.iter().map(of_table).collect();
                Node { at: hull(nodes.iter()), what: What::Tables(nodes) }
            }
        };
        Some(Entry { name: key.get().to_owned(), key: key.span().unwrap_or_default(), node })
    };
    items.into_iter().filter_map(entry).collect()
}

fn of_table(table: &Table) -> Node {
    let entries = entries(table.iter_with_keys());
    match table.span() {
        _ if table.is_dotted() => dotted(entries),
        Some(at) if !table.is_implicit() => Node { what: What::Table(Form::Header, entries), at },
        _ => Node { at: hull(entries.iter().map(|e| &e.node)), what: What::Table(Form::Implied, entries) },
    }
}

fn dotted(entries: Vec<Entry>) -> Node {
    Node { at: hull(entries.iter().map(|e| &e.node)), what: What::Table(Form::Dotted, entries) }
}

fn of_value(value: &Value) -> Node {
    let what = match value {
        Value::String(text) => What::Text(text.value().clone()),
        Value::Boolean(flag) => What::Flag(*flag.value()),
        Value::Integer(_) | Value::Float(_) | Value::Datetime(_) => What::Bare,
        Value::Array(list) => What::List(elements(list)),
        Value::InlineTable(table) if table.is_dotted() => return dotted(entries(table.iter_with_keys())),
        Value::InlineTable(table) => What::Table(Form::Inline, entries(table.iter_with_keys())),
    };
    Node { what, at: value.span().unwrap_or_default() }
}

fn elements(list: &Array) -> Vec<Node> {
    list.iter().map(of_value).collect()
}

fn hull<'a>(nodes: impl Iterator<Item = &'a Node>) -> Range<usize> {
    nodes.map(|node| node.at.clone()).reduce(|a, b| a.start.min(b.start)..a.end.max(b.end)).unwrap_or_default()
}

impl Node {
    /// The keys in it, if it is a table.
    pub(crate) fn entries(&self) -> &[Entry] {
        match &self.what {
            What::Table(_, entries) => entries,
            _ => &[],
        }
    }
    /// How it is written, if it is a table.
    pub(crate) fn form(&self) -> Option<Form> {
        match &self.what {
            What::Table(form, _) => Some(*form),
            _ => None,
        }
    }
    /// A key in it.
    pub(crate) fn entry(&self, name: &str) -> Option<&Entry> {
        self.entries().iter().find(|entry| entry.name == name)
    }
    /// The value of a key in it.
    pub(crate) fn get(&self, name: &str) -> Option<&Node> {
        self.entry(name).map(|entry| &entry.node)
    }
    /// The text that it is.
    pub(crate) fn text(&self) -> Option<&str> {
        match &self.what {
            What::Text(text) => Some(text),
            _ => None,
        }
    }
    /// Whether it has no bytes in one piece: it stands under headers, which other text may part.
    pub(crate) fn is_spread(&self) -> bool {
        matches!(self.what, What::Tables(_) | What::Table(Form::Header | Form::Implied, _))
    }
    /// Its bytes, and for a table under headers those of its first header and all that stands in it.
    pub(crate) fn whole(&self) -> Range<usize> {
        let inner: &mut dyn Iterator<Item = &Node> = match &self.what {
            What::Tables(nodes) => &mut nodes.iter(),
            What::Table(_, entries) => &mut entries.iter().map(|entry| &entry.node),
            _ => &mut core::iter::empty(),
        };
        inner.fold(self.at.clone(), |all, node| {
            let own = node.whole();
            all.start.min(own.start)..all.end.max(own.end)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_stands_where() -> Result<(), Fault> {
        let text = "\u{feff}# head\n[rain]\noil = { kind = \"diesel\", a.b = 1 }\npath.x = [ 1, \"\\n\" ]\n\n[[stream]]\n[stream.oil]\n";
        let tree = read(text)?;
        let rain = tree.get("rain").ok_or_else(|| Fault::new("", "", ""))?;
        assert_eq!(&text[rain.at.clone()], "[rain]");
        let oil = rain.entry("oil").ok_or_else(|| Fault::new("", "", ""))?;
        assert_eq!((&text[oil.key.clone()], &text[oil.node.at.clone()]), ("oil", "{ kind = \"diesel\", a.b = 1 }"));
        assert_eq!(oil.node.get("a").map(|a| (a.form(), &text[a.at.clone()])), Some((Some(Form::Dotted), "1")));
        let path = rain.get("path").and_then(|path| path.get("x"));
        assert_eq!(path.map(|x| &text[x.at.clone()]), Some("[ 1, \"\\n\" ]"));
        let Some(What::Tables(streams)) = tree.get("stream").map(|s| &s.what) else {
            return Err(Fault::new("", "", ""));
        };
        assert_eq!(streams[0].get("oil").and_then(Node::form), Some(Form::Header));
        Ok(())
    }

    #[test]
    fn a_fault_names_its_line() {
        let fault = read("[rain]\npath = 3 ft\n").err();
        assert!(fault.is_some_and(|f| f.place == "line 2, the file" && !f.reason.is_empty()));
    }
}

//! Where a key stands in a text, or how far the way to it stands.

use crate::heading::Heading;
use crate::path::Path;
use crate::standing;
use crate::tree::{Entry, Form, Node, What};
use stillrise_design::enquiry::keys::{KeyKind, KeySpec};
use stillrise_units::Fault;

/// The way to a key.
pub(crate) struct Spot<'a> {
    /// The tables on the way that stand: the file, the block, each table in it.
    pub tables: Vec<&'a Node>,
    /// The key that leads on in each of them; one less than tables where the key itself does not stand.
    pub entries: Vec<&'a Entry>,
    /// The keys on the way that do not stand, outermost first.
    pub missing: Vec<&'static KeySpec>,
    /// The block, as the program calls it.
    pub called: Heading,
}

/// The way to a key.
pub(crate) fn spot<'a>(tree: &'a Node, path: &Path) -> Result<Spot<'a>, Fault> {
    let mut keys = path.keys();
    let found = standing::find(tree, path.heading())?;
    let Some((entry, block)) = tree.entry(path.block().name).zip(found) else {
        let called = path.heading().clone();
        return Ok(Spot { tables: vec![tree], entries: Vec::new(), missing: keys.collect(), called });
    };
    let mut way =
        Spot { tables: vec![tree, block.node], entries: vec![entry], missing: Vec::new(), called: block.called };
    let mut at = block.node;
    let mut place = way.called.to_string();
    for key in keys.by_ref() {
        if at.form().is_none() {
            let reason = "is a value, where keys of its own are to stand";
            return Err(Fault::new(place, reason, "mend it in the text first"));
        }
        let Some(entry) = at.entry(key.name) else {
            way.missing.push(key);
            break;
        };
        way.entries.push(entry);
        place = format!("{place}.{}", key.name);
        at = &entry.node;
        if matches!(key.kind, KeyKind::Table(_)) && !core::ptr::eq(key, path.key()) {
            way.tables.push(at);
        }
    }
    way.missing.extend(keys);
    Ok(way)
}

impl<'a> Spot<'a> {
    /// The key, where it stands.
    pub(crate) fn entry(&self) -> Option<&'a Entry> {
        if self.missing.is_empty() { self.entries.last().copied() } else { None }
    }
    /// The innermost table that stands.
    pub(crate) fn table(&self) -> Option<&'a Node> {
        self.tables.last().copied()
    }
    /// The innermost table that stands and is not written by keys with points, and the names from there to the
    /// innermost.
    pub(crate) fn container(&self) -> Option<(&'a Node, Vec<&'a str>)> {
        let last = self.tables.iter().rposition(|table| table.form() != Some(Form::Dotted))?;
        let names = self.entries.iter().skip(last).take(self.tables.len() - 1 - last);
        Some((self.tables.get(last)?, names.map(|entry| entry.name.as_str()).collect()))
    }
    /// The names from the file to the innermost table that stands.
    pub(crate) fn names(&self) -> Vec<&'a str> {
        self.entries.iter().take(self.tables.len() - 1).map(|entry| entry.name.as_str()).collect()
    }
    /// Where the line begins that holds the key: of one between braces that of the key outermost.
    pub(crate) fn anchor(&self) -> usize {
        let under = |table: &&Node| table.form() == Some(Form::Header);
        let first = self.tables.iter().take(self.entries.len()).rposition(under).unwrap_or(0);
        let dotted = self.tables.iter().skip(first + 1).take_while(|table| table.form() == Some(Form::Dotted)).count();
        self.entries.get(first + dotted).or(self.entries.last()).map_or(0, |entry| entry.key.start)
    }
    /// Whether the block is one of a list.
    pub(crate) fn is_one_of_list(&self) -> bool {
        self.entries.first().is_some_and(|entry| matches!(entry.node.what, What::List(_) | What::Tables(_)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tree;

    #[test]
    fn the_way_to_a_key() -> Result<(), Fault> {
        let text = "water.coldest = 1\n[rain]\noil = { kind = \"x\" }\ndroplets.d50 = 2\ndroplets.spread = 3\n[[stream]]\n[stream.oil]\nmean = 4\n";
        let tree = tree::read(text)?;
        let tail = |path: &str| {
            let way = spot(&tree, &path.parse()?)?;
            let (container, names) =
                way.container().map_or((0..0, String::new()), |(c, n)| (c.at.clone(), n.join(".")));
            let missing = way.missing.iter().map(|k| k.name).collect::<Vec<_>>().join(".");
            Ok::<_, Fault>((text[way.anchor()..].lines().next(), &text[container], names, missing))
        };
        let no = String::new;
        assert_eq!(tail("water.coldest")?, (Some("coldest = 1"), "", "water".to_owned(), no()));
        assert_eq!(tail("rain.oil.kind")?, (Some("oil = { kind = \"x\" }"), "{ kind = \"x\" }", no(), no()));
        assert_eq!(tail("rain.oil.mean")?.3, "mean");
        assert_eq!(tail("rain.droplets.spread")?, (Some("spread = 3"), "[rain]", "droplets".to_owned(), no()));
        assert_eq!(tail("stream.oil.mean")?, (Some("mean = 4"), "[stream.oil]", no(), no()));
        assert_eq!(tail("stream.droplets.d50")?, (Some("stream]]"), "[[stream]]", no(), "droplets.d50".to_owned()));
        assert_eq!(tail("lift.curve")?.3, "curve");
        Ok(())
    }
}

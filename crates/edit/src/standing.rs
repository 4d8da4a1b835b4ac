//! The blocks that stand in a text, each with the name that the program gives it, and which of them a heading means.

use crate::heading::Heading;
use crate::tree::{Node, What};
use stillrise_design::enquiry::blocks::{Limit, Stream, Surface};
use stillrise_design::enquiry::keys::{Block, BlockSpec, KeyKind};
use stillrise_units::{Fault, nearest};

/// A block that stands.
pub(crate) struct Standing<'a> {
    /// Its keys.
    pub node: &'a Node,
    /// Its number among those of its kind, from 1.
    pub number: usize,
    /// What the program calls it; with its number where another is called the same.
    pub called: Heading,
    /// Other names that it goes by.
    also: Vec<String>,
}

/// All blocks of a kind, in the order of the file.
pub(crate) fn all<'a>(tree: &'a Node, heading: &Heading) -> Vec<Standing<'a>> {
    let block = heading.block();
    let nodes = match tree.get(block.name) {
        None => return Vec::new(),
        Some(node) => match &node.what {
            What::List(nodes) | What::Tables(nodes) => nodes.iter().collect(),
            _ => vec![node],
        },
    };
    let plain = heading.other(None, None);
    if !heading.is_many() {
        let one = |(i, node)| Standing { node, number: i + 1, called: plain.clone(), also: Vec::new() };
        return nodes.into_iter().enumerate().map(one).collect();
    }
    let words: Vec<(Option<String>, Vec<String>)> =
        nodes.iter().enumerate().map(|(i, node)| names(block, i + 1, node)).collect();
    let alike = |word: &Option<String>| words.iter().filter(|(other, _)| other == word).count() > 1;
    let called = |i: usize, word: &Option<String>| {
        let number = (word.is_none() || alike(word)).then_some(i + 1);
        plain.other(number, word.clone())
    };
    let one = |(i, node)| {
        let (word, also): &(Option<String>, Vec<String>) = &words[i];
        Standing { node, number: i + 1, called: called(i, word), also: also.clone() }
    };
    nodes.into_iter().enumerate().map(one).collect()
}

/// The block that a heading means; none where there is but one of the kind and it does not stand.
pub(crate) fn find<'a>(tree: &'a Node, heading: &Heading) -> Result<Option<Standing<'a>>, Fault> {
    let mut standing = all(tree, heading);
    let there = standing.iter().map(|s| s.called.to_string()).collect::<Vec<_>>().join(", ");
    let block = heading.block().name;
    if !heading.is_many() {
        return Ok(standing.into_iter().next());
    }
    if standing.is_empty() {
        let reason = format!("there is no {block}");
        return Err(Fault::new(heading.to_string(), reason, format!("add a [[{block}]] first")));
    }
    if let Some(number) = heading.number() {
        let is_meant = |s: &Standing<'_>| heading.name().is_none_or(|name| s.is_called(name, same));
        let found = standing.drain(..).nth(number - 1);
        let is_there = found.is_some();
        return match found.filter(is_meant) {
            Some(found) => Ok(Some(found)),
            None => {
                let which = if is_there { "is called otherwise" } else { "is not there" };
                let reason = format!("{block} {number} {which}");
                Err(Fault::new(heading.to_string(), reason, format!("there are {there}")))
            }
        };
    }
    let Some(name) = heading.name() else {
        if standing.len() == 1 {
            return Ok(standing.pop());
        }
        let reason = format!("there are {} of them", standing.len());
        return Err(Fault::new(heading.to_string(), reason, format!("say which: {there}")));
    };
    let exactly = standing.iter().any(|s| s.is_called(name, |a, b| a == b));
    standing.retain(|s| if exactly { s.is_called(name, |a, b| a == b) } else { s.is_called(name, same) });
    match standing.len() {
        1 => Ok(standing.pop()),
        0 => {
            let names: Vec<Heading> = all(tree, heading).into_iter().map(|s| s.called).collect();
            let remedy = match nearest(name, names.iter().filter_map(|h| h.name())) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("there are {there}"),
            };
            Err(Fault::new(heading.to_string(), format!("no {block} is called \"{name}\""), remedy))
        }
        several => {
            let which = standing.iter().map(|s| s.called.to_string()).collect::<Vec<_>>().join(", ");
            let reason = format!("{several} of them are called \"{name}\"");
            Err(Fault::new(heading.to_string(), reason, format!("say which: {which}")))
        }
    }
}

impl Standing<'_> {
    fn is_called(&self, name: &str, same: impl Fn(&str, &str) -> bool) -> bool {
        self.called.name().into_iter().chain(self.also.iter().map(String::as_str)).any(|own| same(own, name))
    }
}

/// Names are the same whatever their case, and whether written with blanks, dashes or underscores.
fn same(a: &str, b: &str) -> bool {
    let plain = |text: &str| text.trim().to_lowercase().replace(['-', '_'], " ");
    plain(a) == plain(b)
}

/// Keys that a block may be named by, the first that stands.
const NAMING: [&str; 5] = ["name", "model", "product", "pollutant", "rule"];

/// What the program calls a block, and what else it may be called: a limit goes by the handbook's word for its
/// pollutant, a stream or a surface without a name by the one that it is given.
fn names(block: &'static BlockSpec, number: usize, node: &Node) -> (Option<String>, Vec<String>) {
    let read = NAMING.iter().find_map(|key| node.get(key).and_then(plain_text)).map(str::to_owned);
    if core::ptr::eq(block, Limit::spec()) {
        let word = node.get("pollutant").and_then(plain_text).map(|text| word_of(block, text));
        return match word {
            Some(word) => (Some(word), read.into_iter().collect()),
            None => (read, Vec::new()),
        };
    }
    let is_given = core::ptr::eq(block, Stream::spec()) || core::ptr::eq(block, Surface::spec());
    (read.or_else(|| is_given.then(|| format!("{} {number}", block.name))), Vec::new())
}

/// The handbook's word for a pollutant.
fn word_of(block: &BlockSpec, text: &str) -> String {
    let named = block.keys().into_iter().find(|key| key.name == "pollutant").map(|key| key.kind);
    let known = match named {
        Some(KeyKind::Named(names)) => names().into_iter().find(|name| same(name, text)),
        _ => None,
    };
    known.unwrap_or_else(|| text.to_owned())
}

/// The text that a key holds, whether plain or claimed.
pub(crate) fn plain_text(node: &Node) -> Option<&str> {
    match &node.what {
        What::Text(text) => Some(text),
        What::Table(..) => node.get("value")?.text(),
        What::List(list) | What::Tables(list) => {
            let chosen = list.iter().find(|n| matches!(n.get("chosen").map(|c| &c.what), Some(What::Flag(true))));
            chosen.or(list.first()).and_then(plain_text)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tree;

    const TEXT: &str = "[[stream]]\nflow = \"1 gpm\"\n[[stream]]\nname = \"Wash bay\"\n[[limit]]\npollutant = \"Oil_and Grease\"\n\
                        name = \"city\"\n[[limit]]\npollutant = \"oil and grease\"\n[[case]]\n";

    fn called(text: &str) -> Result<String, Fault> {
        let tree = tree::read(TEXT)?;
        Ok(find(&tree, &text.parse()?)?.map_or_else(String::new, |s| s.called.to_string()))
    }

    #[test]
    fn blocks_are_found_by_what_they_are_called() -> Result<(), Fault> {
        for (text, found) in [
            ("stream \"stream 1\"", "stream \"stream 1\""),
            ("stream 2", "stream \"Wash bay\""),
            ("stream \"wash-bay\"", "stream \"Wash bay\""),
            ("limit \"city\"", "limit 1 \"oil and grease\""),
            ("limit 2 \"oil and grease\"", "limit 2 \"oil and grease\""),
            ("case", "case 1"),
            ("water", ""),
        ] {
            assert_eq!(called(text)?, found, "{text}");
        }
        Ok(())
    }

    #[test]
    fn what_is_not_there_or_not_one_is_refused() {
        for (text, words) in [
            ("stream", "say which: stream \"stream 1\", stream \"Wash bay\""),
            ("stream 3", "is not there"),
            ("stream 1 \"wash\"", "is called otherwise"),
            ("stream \"Wash bai\"", "did you mean \"Wash bay\"?"),
            ("limit \"oil and grease\"", "say which: limit 1 \"oil and grease\""),
            ("surface", "add a [[surface]] first"),
        ] {
            let fault = called(text).err().map(|f| f.to_string()).unwrap_or_default();
            assert!(fault.contains(words), "{text}: {fault}");
        }
    }
}

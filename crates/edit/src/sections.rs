//! The parts of a text under each header, with the comments that stand right above it, and where a new block comes.

use crate::scan::{head, line_break, line_start, next_line};
use crate::splice::Edit;
use crate::tree::{Form, Node, What};
use core::ops::Range;
use stillrise_design::enquiry::blocks;

/// What stands under one header.
#[derive(Debug, Clone)]
pub(crate) struct Section {
    /// The block that it belongs to.
    pub block: String,
    /// Which of its kind, from 1.
    pub number: usize,
    /// Its header.
    pub header: Range<usize>,
    /// All of it: from the comments right above its header to those of the next.
    pub at: Range<usize>,
}

/// The sections of a text, in its order.
pub(crate) fn sections(text: &str, tree: &Node) -> Vec<Section> {
    let mut found: Vec<Section> = Vec::new();
    let mut ends: Vec<usize> = Vec::new();
    for entry in tree.entries() {
        let nodes: Vec<&Node> = match &entry.node.what {
            What::Tables(nodes) => nodes.iter().collect(),
            _ => vec![&entry.node],
        };
        for (i, node) in nodes.into_iter().enumerate() {
            gather(node, &mut ends, &mut |header| {
                let at = header.clone();
                found.push(Section { block: entry.name.clone(), number: i + 1, header, at });
            });
        }
    }
    found.sort_by_key(|section| section.header.start);
    ends.sort_unstable();
    for section in &mut found {
        let before = ends.partition_point(|end| *end <= section.header.start);
        let bound = before.checked_sub(1).and_then(|last| ends.get(last)).copied();
        section.at.start = above(text, section.header.start, bound);
    }
    let starts: Vec<usize> = found.iter().skip(1).map(|section| section.at.start).chain([text.len()]).collect();
    found.iter_mut().zip(starts).for_each(|(section, next)| section.at.end = next);
    found
}

/// Headers of a table and of those in it, and the ends of all values.
fn gather(node: &Node, ends: &mut Vec<usize>, header: &mut dyn FnMut(Range<usize>)) {
    match &node.what {
        What::Tables(nodes) => nodes.iter().for_each(|node| gather(node, ends, header)),
        What::Table(form, entries) => {
            ends.push(node.at.end);
            if *form == Form::Header {
                header(node.at.clone());
            }
            entries.iter().for_each(|entry| gather(&entry.node, ends, header));
        }
        _ => ends.push(node.at.end),
    }
}

/// The start of the comments right above a header, not beyond the value before it. Those at the head of the file are
/// the file's and stay above whatever comes.
fn above(text: &str, header: usize, bound: Option<usize>) -> usize {
    let own = line_start(text, header);
    let least = bound.map_or(head(text), |end| next_line(text, end)).max(head(text));
    let mut start = own;
    while start > least {
        let line = line_start(text, start - 1);
        if line < least || !text[line..start].trim_start().starts_with('#') {
            break;
        }
        start = line;
    }
    if start <= head(text) { own } else { start }
}

/// Puts a section of its own into the text: behind the last of the same block, else before the first block that comes
/// later in the order of the blocks, else at the end.
pub(crate) fn added(text: &str, tree: &Node, block: &str, section: &str) -> Edit {
    let order: Vec<&str> = blocks().map(|(spec, _)| spec.name).collect();
    let place = |name: &str| order.iter().position(|known| *known == name);
    let all = sections(text, tree);
    let own = all.iter().rev().find(|section| section.block == block).map(|section| section.at.end);
    let later = || {
        let is_later = |section: &&Section| place(&section.block) > place(block);
        all.iter().find(is_later).map(|section| section.at.start)
    };
    let at = own.or_else(later).unwrap_or(text.len());
    let line = line_break(text);
    let before = &text[..at];
    let gap = if before[head(text)..].trim().is_empty() || before.ends_with(&line.repeat(2)) {
        String::new()
    } else if before.ends_with('\n') {
        line.to_owned()
    } else {
        line.repeat(2)
    };
    let after = if at < text.len() { line } else { "" };
    (at..at, format!("{gap}{section}{after}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::splice::spliced;
    use crate::tree;
    use stillrise_units::Fault;

    const TEXT: &str = "# head\n[enquiry]\ntitle = \"\"\"\n# no\n# comment\"\"\"\n\n# no rain\n\n# of streams\n# and others\n[[stream]]\n[stream.oil]\n\n[site]\n";

    #[test]
    fn comments_right_above_a_header_are_its_own() -> Result<(), Fault> {
        let all = sections(TEXT, &tree::read(TEXT)?);
        let heads: Vec<&str> = all.iter().filter_map(|s| TEXT[s.at.clone()].lines().next()).collect();
        assert_eq!(heads, ["[enquiry]", "# of streams", "[stream.oil]", "[site]"]);
        Ok(())
    }

    #[test]
    fn a_block_comes_where_its_kind_stands() -> Result<(), Fault> {
        let tree = tree::read(TEXT)?;
        for (block, before) in [("stream", "[site]"), ("rain", "# of streams"), ("inlet", "[site]"), ("change", "")] {
            let out = spliced(TEXT, vec![added(TEXT, &tree, block, "[new]\n")]);
            let rest = out.split("\n\n[new]\n").nth(1).map(|rest| rest.trim_start_matches('\n'));
            assert_eq!(rest.map(|rest| rest.lines().next().unwrap_or("")), Some(before), "{block}: {out}");
        }
        Ok(())
    }
}

//! Whole blocks: one more, one less, and the decisions on rules.

use crate::container::{appended, removed};
use crate::heading::Heading;
use crate::path::Path;
use crate::scan::line_break;
use crate::sections::{added, sections};
use crate::set::{said_by, set};
use crate::splice::spliced;
use crate::standing::{all, find, plain_text};
use crate::tree::{self, Form, Node, What};
use crate::unset::{ended, lines, unset};
use core::ops::Range;
use stillrise_design::enquiry::blocks::Decision;
use stillrise_design::enquiry::keys::{Block, KeyKind};
use stillrise_units::{Fault, nearest};

/// The text with one more block and its keys: behind the last of its kind, else where the order of blocks has it.
pub(crate) fn add_block(text: &str, block: &str, keys: &[(String, String)]) -> Result<String, Fault> {
    let heading = Heading::new(block, None, None)?;
    let paths = keys.iter().map(|(key, value)| Ok((Path::new(heading.clone(), key)?, value)));
    let paths = paths.collect::<Result<Vec<(Path, &String)>, Fault>>()?;
    let tree = tree::read(text)?;
    let number = all(&tree, &heading).len() + 1;
    if !heading.is_many() && number > 1 {
        return Err(Fault::new(block, "stands already, and may stand only once", "change its keys"));
    }
    let section = match heading.is_many() {
        true => format!("[[{block}]]{}", line_break(text)),
        false => format!("[{block}]{}", line_break(text)),
    };
    let edits = match tree.get(block) {
        None => vec![added(text, &tree, block, &section)],
        Some(node) => match &node.what {
            What::Tables(_) => vec![added(text, &tree, block, &section)],
            What::List(_) => appended(text, node, "{}"),
            // One in single brackets, or between braces, becomes the first of several.
            What::Table(Form::Header, _) => {
                let at = node.at.clone();
                let doubled = format!("[{}]", text.get(at.clone()).unwrap_or_default());
                vec![(at, doubled), added(text, &tree, block, &section)]
            }
            What::Table(Form::Inline, _) => {
                let at = node.at.clone();
                vec![(at.start..at.start, "[".to_owned()), (at.end..at.end, ", {}]".to_owned())]
            }
            _ => {
                let remedy = format!("write it under a header, [[{block}]], first");
                return Err(Fault::new(block, "stands in a form that leaves no room for another", remedy));
            }
        },
    };
    let number = heading.is_many().then_some(number);
    let own = heading.other(number, None);
    paths.into_iter().try_fold(spliced(text, edits), |text, (path, value)| set(&text, &path.under(&own), value, None))
}

/// The text without a block, with the comments in it and right above its header.
pub(crate) fn remove_block(text: &str, heading: &Heading) -> Result<String, Fault> {
    let tree = tree::read(text)?;
    let block = heading.block().name;
    let Some((standing, entry)) = find(&tree, heading)?.zip(tree.entry(block)) else {
        return Err(Fault::new(heading.to_string(), "does not stand", "there is nothing to remove"));
    };
    let mut gone: Vec<Range<usize>> = Vec::new();
    match &entry.node.what {
        What::List(list) if list.len() > 1 => {
            return Ok(spliced(text, removed(text, &entry.node, standing.number - 1)));
        }
        What::Tables(_) | What::Table(Form::Header | Form::Implied, _) => {
            let own = |section: &crate::sections::Section| section.block == block && section.number == standing.number;
            gone.extend(sections(text, &tree).into_iter().filter(own).map(|section| section.at));
        }
        _ => lines(text, entry, &mut gone),
    }
    Ok(ended(spliced(text, gone.into_iter().map(|at| (at, String::new())).collect())))
}

/// The decisions that stand on a rule, by their numbers.
fn decisions(tree: &Node, heading: &Heading, rule: &str) -> Vec<usize> {
    let on_it = |node: &Node| node.get("rule").and_then(plain_text).is_some_and(|own| own == rule);
    all(tree, heading).into_iter().filter(|standing| on_it(standing.node)).map(|standing| standing.number).collect()
}

fn decision() -> Result<Heading, Fault> {
    Heading::new(Decision::spec().name, None, None)
}

/// The text with the decision on a rule, in place of what was decided on it before.
pub(crate) fn decide(
    text: &str,
    rule: &str,
    word: &str,
    because: &str,
    who: Option<&str>,
    date: Option<&str>,
) -> Result<String, Fault> {
    let heading = decision()?;
    let (who, date) = (said_by(who), said_by(date));
    let place = format!("{heading} \"{rule}\"");
    if rule.trim().is_empty() {
        return Err(Fault::new(place, "does not say on which rule", "name the rule"));
    }
    let key = Path::new(heading.clone(), "decision")?;
    if let KeyKind::Choice(words) = key.kind()
        && !words.iter().any(|(known, _)| *known == word)
    {
        let known = || words.iter().map(|(known, _)| *known);
        let remedy = match nearest(word, known()) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("use one of {}", known().collect::<Vec<_>>().join(", ")),
        };
        return Err(Fault::new(place, format!("\"{word}\" is no decision"), remedy));
    }
    let tree = tree::read(text)?;
    let standing = decisions(&tree, &heading, rule);
    let Some((first, others)) = standing.split_first() else {
        let keys =
            [("rule", Some(rule)), ("decision", Some(word)), ("because", Some(because)), ("who", who), ("date", date)];
        let keys = keys.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?.to_owned())));
        return add_block(text, heading.block().name, &keys.collect::<Vec<_>>());
    };
    let numbered = |number: usize| heading.other(Some(number), None);
    // From the last on, so that the numbers before it stay what they are.
    let mut out = others.iter().rev().try_fold(text.to_owned(), |text, n| remove_block(&text, &numbered(*n)))?;
    let one = numbered(*first);
    for (key, value) in [("decision", Some(word)), ("because", Some(because)), ("who", who), ("date", date)] {
        let path = Path::new(one.clone(), key)?;
        out = match value {
            Some(value) => set(&out, &path, value, None)?,
            None => unset(&out, &path)?,
        };
    }
    Ok(out)
}

/// The text without any decision on a rule.
pub(crate) fn undecide(text: &str, rule: &str) -> Result<String, Fault> {
    let heading = decision()?;
    let tree = tree::read(text)?;
    let standing = decisions(&tree, &heading, rule);
    if standing.is_empty() {
        let place = format!("{heading} \"{rule}\"");
        return Err(Fault::new(place, "nothing was decided on this rule", "there is nothing to take back"));
    }
    let numbered = |number: usize| heading.other(Some(number), None);
    standing.iter().rev().try_fold(text.to_owned(), |text, number| remove_block(&text, &numbered(*number)))
}

//! Lists between brackets and tables between braces: one more element, or one less, in the layout that stands.

use crate::scan::{indent, line_break, line_end, line_start, next_line, past_blanks, past_comma, statement_start};
use crate::splice::Edit;
use crate::tree::{Form, Node, What};
use core::ops::Range;

/// The bytes of the elements of a list, or of the statements of a table between braces, in order.
pub(crate) fn elements(text: &str, node: &Node) -> Vec<Range<usize>> {
    let mut found = Vec::new();
    gather(text, node, &mut found);
    found.sort_by_key(|at| at.start);
    found
}

fn gather(text: &str, node: &Node, found: &mut Vec<Range<usize>>) {
    if let What::List(list) = &node.what {
        found.extend(list.iter().map(|item| item.at.clone()));
    }
    for entry in node.entries() {
        match entry.node.form() {
            Some(Form::Dotted) => gather(text, &entry.node, found),
            _ => found.push(statement_start(text, entry.key.start)..entry.node.at.end),
        }
    }
}

/// Puts one more element behind the last.
pub(crate) fn appended(text: &str, container: &Node, new: &str) -> Vec<Edit> {
    let at = container.at.clone();
    let all = elements(text, container);
    let Some(last) = all.last() else {
        let inner = at.start + 1..at.end - 1;
        return match text[inner.clone()].trim() {
            "" if text[at].starts_with('{') => vec![(inner, format!(" {new} "))],
            "" => vec![(inner, new.to_owned())],
            // Only comments stand in it: the element comes behind them, before the closing bracket.
            _ => vec![(inner.end..inner.end, format!("{new}{}", line_break(text)))],
        };
    };
    if !text[at.start..last.start].contains('\n') {
        return vec![(last.end..last.end, format!(", {new}"))];
    }
    let line = format!("{}{}{new}", line_break(text), indent(text, last.start));
    let comma = past_comma(text, last.end);
    let behind = past_blanks(text, comma.unwrap_or(last.end));
    // A comment behind the last element stays beside it.
    let end = if text[behind..].starts_with('#') { line_end(text, behind) } else { comma.unwrap_or(last.end) };
    match comma {
        Some(_) => vec![(end..end, format!("{line},"))],
        None if end == last.end => vec![(end..end, format!(",{line}"))],
        None => vec![(last.end..last.end, ",".to_owned()), (end..end, line)],
    }
}

/// Takes one element out with its comma and the comment behind it. Comments on lines of their own stay.
pub(crate) fn removed(text: &str, container: &Node, nth: usize) -> Vec<Edit> {
    let all = elements(text, container);
    let Some(own) = all.get(nth).cloned() else { return Vec::new() };
    let gone = |at: Range<usize>| (at, String::new());
    if let Some(comma) = past_comma(text, own.end) {
        // What stands between value and comma may be a comment on a line of its own; the comma alone goes then.
        if text[own.end..comma - 1].contains('#') {
            return vec![gone(own), gone(comma - 1..comma)];
        }
        return vec![gone(line_of(text, own.start..comma, nth + 1 == all.len()))];
    }
    let Some(before) = nth.checked_sub(1).and_then(|n| all.get(n)) else {
        return vec![gone(line_of(text, own, true))];
    };
    if text[before.end..own.start].trim() == "," {
        return vec![gone(before.end..own.end)];
    }
    let comma = past_comma(text, before.end).map(|comma| gone(comma - 1..comma));
    comma.into_iter().chain([gone(line_of(text, own, true))]).collect()
}

/// The bytes with blanks beside them and a comment behind; the whole line where nothing else stands on it.
fn line_of(text: &str, at: Range<usize>, is_last: bool) -> Range<usize> {
    let start = line_start(text, at.start);
    let mut end = past_blanks(text, at.end);
    let is_first = text[start..at.start].trim().is_empty();
    if text[end..].starts_with('#') {
        end = line_end(text, end);
    }
    let is_ended = end == line_end(text, end);
    match (is_first, is_ended) {
        (true, true) => start..next_line(text, end),
        (false, true) => text[..at.start].trim_end_matches([' ', '\t']).len()..end,
        _ if is_last => text[..at.start].trim_end_matches([' ', '\t']).len().max(start)..at.end,
        _ => at.start..end,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::splice::spliced;
    use crate::tree;

    fn changed(text: &str, change: impl Fn(&str, &Node) -> Vec<Edit>) -> String {
        let text = format!("a = {text}\n");
        let node = tree::read(&text).ok().and_then(|tree| tree.get("a").cloned());
        let out = node.map(|node| spliced(&text, change(&text, &node))).unwrap_or_default();
        assert!(tree::read(&out).is_ok(), "{out}");
        out["a = ".len()..].trim_end().to_owned()
    }

    #[test]
    fn one_more() {
        for (text, expected) in [
            ("[]", "[9]"),
            ("[1]", "[1, 9]"),
            ("[1,]", "[1, 9,]"),
            ("[ # c\n]", "[ # c\n9\n]"),
            ("[\n  1, # c\n  2 # d\n]", "[\n  1, # c\n  2, # d\n  9\n]"),
            ("[\n  1,\n  2, # d\n]", "[\n  1,\n  2, # d\n  9,\n]"),
            ("[\n  1\n]", "[\n  1,\n  9\n]"),
            ("[\n  1 ]", "[\n  1,\n  9 ]"),
        ] {
            assert_eq!(changed(text, |text, node| appended(text, node, "9")), expected);
        }
        for (text, expected) in [("{}", "{ x = 9 }"), ("{ y.z = 1 }", "{ y.z = 1, x = 9 }")] {
            assert_eq!(changed(text, |text, node| appended(text, node, "x = 9")), expected);
        }
    }

    #[test]
    fn one_less() {
        for (text, nth, expected) in [
            ("[1]", 0, "[]"),
            ("[1, 2, 3]", 0, "[2, 3]"),
            ("[1, 2, 3]", 1, "[1, 3]"),
            ("[1, 2, 3]", 2, "[1, 2]"),
            ("[1, 2,]", 1, "[1,]"),
            ("[\n  1, # c\n  2, # d\n]", 0, "[\n  2, # d\n]"),
            ("[\n  1, # c\n  # e\n  2 # d\n]", 1, "[\n  1 # c\n  # e\n]"),
            ("[\n  1 # c\n  , 2\n]", 0, "[\n   # c\n   2\n]"),
        ] {
            assert_eq!(changed(text, |text, node| removed(text, node, nth)), expected, "{text}");
        }
        assert_eq!(changed("{ x = 1, y.z = 2, y.w = 3 }", |t, n| removed(t, n, 1)), "{ x = 1, y.w = 3 }");
    }
}

//! What stands between the values of a text: comments, commas, the ends of lines. Strings are stepped over, for a `#`
//! or a comma in them is data.

use crate::tree::MARK;
use core::ops::Range;

/// Where a line begins that a byte stands in; the first begins behind a mark at the head of the file.
pub(crate) fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(head(text).min(at), |newline| newline + 1)
}

/// Where the first line begins.
pub(crate) fn head(text: &str) -> usize {
    if text.starts_with(MARK) { MARK.len_utf8() } else { 0 }
}

/// Where the next line begins; the end of the text where there is none.
pub(crate) fn next_line(text: &str, at: usize) -> usize {
    text[at..].find('\n').map_or(text.len(), |newline| at + newline + 1)
}

/// Where a line ends, before its line break.
pub(crate) fn line_end(text: &str, at: usize) -> usize {
    let end = text[at..].find('\n').map_or(text.len(), |newline| at + newline);
    if text[..end].ends_with('\r') && end > at { end - 1 } else { end }
}

/// The blanks before the first word of a line that a byte stands in.
pub(crate) fn indent(text: &str, at: usize) -> &str {
    let line = &text[line_start(text, at)..at];
    &line[..line.len() - line.trim_start_matches([' ', '\t']).len()]
}

/// The line break that the text uses.
pub(crate) fn line_break(text: &str) -> &'static str {
    if text.contains("\r\n") { "\r\n" } else { "\n" }
}

/// Past blanks of one line.
pub(crate) fn past_blanks(text: &str, at: usize) -> usize {
    text.len() - text[at..].trim_start_matches([' ', '\t']).len()
}

/// Past a string that begins at a byte.
fn past_string(text: &str, at: usize) -> usize {
    let quote = &text[at..=at];
    let long = quote.repeat(3);
    let is_long = text[at..].starts_with(&long);
    let (mut from, close) = if is_long { (at + 3, long.as_str()) } else { (at + 1, quote) };
    while let Some(step) = text[from..].find(['\\', '"', '\'']) {
        let here = from + step;
        if text[here..].starts_with('\\') && quote == "\"" {
            let escaped = text[here + 1..].chars().next().map_or(0, char::len_utf8);
            from = here + 1 + escaped;
        } else if text[here..].starts_with(close) {
            let mut end = here + close.len();
            // Up to two quotes may stand before the three that close a long string.
            while is_long && text[end..].starts_with(quote) {
                end += 1;
            }
            return end;
        } else {
            from = here + 1;
        }
    }
    text.len()
}

/// The comments in a part of the text that begins outside strings.
pub(crate) fn comments(text: &str, part: Range<usize>) -> Vec<Range<usize>> {
    let mut found = Vec::new();
    let mut at = part.start;
    while let Some(step) = text[at..part.end].find(['#', '"', '\'']) {
        at += step;
        if text[at..].starts_with('#') {
            let end = line_end(text, at).min(part.end);
            found.push(at..end);
            at = end;
        } else {
            at = past_string(text, at);
        }
        if at >= part.end {
            break;
        }
    }
    found
}

/// Past the comma behind a value, if one stands there: blanks, line breaks and comments may stand between.
pub(crate) fn past_comma(text: &str, at: usize) -> Option<usize> {
    let mut at = at;
    loop {
        at = text.len() - text[at..].trim_start().len();
        match text[at..].chars().next()? {
            '#' => at = line_end(text, at),
            ',' => return Some(at + 1),
            _ => return None,
        }
    }
}

/// Where the statement of a key begins: at the first of the names before it that points part, as `oil` of `oil.mean`.
pub(crate) fn statement_start(text: &str, key: usize) -> usize {
    let mut start = key;
    loop {
        let before = text[..start].trim_end_matches([' ', '\t']);
        let Some(before) = before.strip_suffix('.') else { return start };
        let before = before.trim_end_matches([' ', '\t']);
        let quote = before.chars().next_back().filter(|c| matches!(c, '"' | '\''));
        start = match quote {
            Some(quote) => before[..before.len() - 1].rfind(quote).unwrap_or(start),
            None => {
                let bare = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '-';
                before.trim_end_matches(bare).len()
            }
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hash_in_a_string_is_no_comment() {
        let text = "a = \"#1 \\\" # x\" # one\nb = '#2' # two\nc = \"\"\"\n# no\"\"\"\"\nd = '''#''' #three\n";
        let found: Vec<&str> = comments(text, 0..text.len()).into_iter().map(|at| &text[at]).collect();
        assert_eq!(found, ["# one", "# two", "#three"]);
    }

    #[test]
    fn commas_and_statements() {
        let text = "a = [1 # x,\n , 2]";
        assert_eq!(past_comma(text, 6).map(|at| &text[at..]), Some(" 2]"));
        assert_eq!(past_comma(text, 15), None);
        let text = "{ x = 1, \"oil\" . mean = 2 }";
        assert_eq!(text.find("mean").map(|at| &text[statement_start(text, at)..]), Some("\"oil\" . mean = 2 }"));
    }

    #[test]
    fn lines() {
        let text = "  a = 1\r\nb = 2";
        assert_eq!((line_start(text, 4), next_line(text, 4), line_end(text, 4), indent(text, 2)), (0, 9, 7, "  "));
        assert_eq!((line_break(text), next_line(text, 10), line_end(text, 10)), ("\r\n", 14, 14));
    }
}

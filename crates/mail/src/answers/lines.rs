//! Lines of a mail: which are quoted, which are an aside, and what of them is the writer's own.

use super::quoted::Quote;
use crate::text::sentences;
use core::ops::Range;

/// A line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Line {
    /// Its bytes, without the break.
    pub at: Range<usize>,
    /// Where what it says begins, behind marks of quotation and blanks.
    pub from: usize,
    /// Whether it is marked as quoted.
    pub is_quoted: bool,
    /// Whether it is a head line, or stands below a signature.
    pub is_aside: bool,
}

impl Line {
    /// Whether it says nothing.
    pub fn is_blank(&self) -> bool {
        self.from >= self.at.end
    }
}

/// Words that lead to the mail that is answered, where it is not marked.
const LEADS: [&str; 8] =
    ["-----original", "----- original", "________", "-----ursprüngliche", "begin forwarded", "von:", "from:", "> on "];

/// The lines of a text.
pub(super) fn lines(text: &str) -> Vec<Line> {
    let asides: Vec<Range<usize>> = sentences(text).into_iter().filter(|s| s.is_aside).map(|s| s.at).collect();
    let mut start = 0;
    let one = |line: &str| {
        let bare = line.trim_end_matches(['\n', '\r']);
        let at = start..start + bare.len();
        start += line.len();
        let said = bare.trim_start_matches(['>', '|', ' ', '\t', '\u{a0}']);
        let marks = &bare[..bare.len() - said.len()];
        let from = at.start + marks.len() + (said.len() - said.trim_start().len());
        let low = bare.to_lowercase();
        let leads = LEADS.iter().any(|lead| low.starts_with(lead)) || low.starts_with("on ") && low.ends_with("wrote:");
        let is_aside = leads || asides.iter().any(|aside| aside.start <= from && from < aside.end);
        Line { from: from.min(at.end), at, is_quoted: marks.contains('>') || marks.contains('|'), is_aside }
    };
    text.split_inclusive('\n').map(one).collect()
}

/// The writer's own pieces, paragraph by paragraph: neither quoted nor an aside, nor of a mail that hangs below.
pub(super) fn own(text: &str, lines: &[Line], quotes: &[Quote]) -> Vec<Range<usize>> {
    // A mail that hangs below without marks begins at the lead ahead of the first question that is repeated.
    let first = quotes.iter().map(|quote| quote.at.start).min().unwrap_or(text.len());
    let end = lines.iter().filter(|line| line.at.start < first && line.is_aside).map(|line| line.at.start);
    let end = if quotes.is_empty() { text.len() } else { end.max().unwrap_or(first) };
    let mut all: Vec<Range<usize>> = Vec::new();
    let mut open: Option<Range<usize>> = None;
    for line in lines {
        let repeated = quotes.iter().any(|quote| quote.at.start < line.at.end && line.at.start < quote.at.end);
        let out = line.is_blank() || line.is_quoted || line.is_aside || repeated || line.at.start >= end;
        if out {
            all.extend(open.take());
        } else {
            let from = open.take().map_or(line.from, |open| open.start);
            open = Some(from..line.at.end);
        }
    }
    all.extend(open);
    all
}

/// A text in one line, without marks of quotation.
pub(super) fn plain(text: &str) -> String {
    let bare = text.lines().map(|line| line.trim_start_matches(['>', '|', ' ', '\t']));
    bare.flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ")
}

/// The bytes of a piece without blanks, dashes and arrows around it; `None` where nothing is left.
pub(super) fn trimmed(text: &str, at: Range<usize>) -> Option<Range<usize>> {
    let said = text.get(at.clone())?;
    let blank = |c: char| c.is_whitespace() || matches!(c, '>' | '|' | '-' | '–' | '—' | '=' | '*' | ':' | '→');
    let body = said.trim_start_matches(blank);
    // A minus stands before its number, and is no dash.
    let skipped = said.len() - body.len();
    let minus = said[..skipped].ends_with('-') && body.starts_with(|c: char| c.is_ascii_digit());
    let from = at.start + skipped - usize::from(minus);
    let end = at.start + said.trim_end().len();
    let spoken = text.get(from..end)?.chars().any(char::is_alphanumeric);
    (from < end && spoken).then_some(from..end)
}

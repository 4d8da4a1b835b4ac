//! Our questions where a mail repeats them, and what stands behind each.

use super::Asked;
use super::lines::{Line, trimmed};
use core::ops::Range;

/// A question that is repeated.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Quote {
    /// Which, by its place among those asked.
    pub question: usize,
    /// From its first word, or the number ahead of it, to the end of what is repeated of it.
    pub at: Range<usize>,
    /// Whether all of it is repeated, or it is cut where somebody cuts it: behind the mark of the question, with dots.
    pub is_whole: bool,
}

/// Words that must agree for a question to be known; of a shorter one all.
const KNOWN: usize = 5;
/// Bytes ahead of a question within which its number stands.
const NUMBER: usize = 12;

/// Words in small letters, with their places.
fn words(text: &str) -> Vec<(String, Range<usize>)> {
    let mut all = Vec::new();
    let mut open: Option<usize> = None;
    for (k, c) in text.char_indices().chain([(text.len(), ' ')]) {
        match (c.is_alphanumeric(), open) {
            (true, None) => open = Some(k),
            (false, Some(from)) => {
                all.push((text[from..k].to_lowercase(), from..k));
                open = None;
            }
            _ => {}
        }
    }
    all
}

/// The questions that a text repeats, in its order. Of one that stands there twice the last is taken: a reply that quotes a
/// reply holds what was written last above.
pub(super) fn quotes(text: &str, questions: &[Asked]) -> Vec<Quote> {
    let said = words(text);
    let mut all: Vec<Quote> = Vec::new();
    for (question, asked) in questions.iter().enumerate() {
        let own = words(&asked.text);
        let least = own.len().min(KNOWN);
        if least == 0 {
            continue;
        }
        let agree = |k: usize| own.iter().zip(&said[k..]).take_while(|(a, b)| a.0 == b.0).count();
        let places = (0..said.len()).map(|k| (agree(k), k)).filter(|(count, _)| *count >= least);
        // Two questions may begin alike: the one that agrees longer is meant.
        for (count, k) in places {
            let (Some(first), Some(last)) = (said.get(k), said.get(k + count - 1)) else { continue };
            let from = number_ahead(text, first.1.start, asked.number).unwrap_or(first.1.start);
            let tail = text[last.1.end..].chars().take_while(|c| ".,;:?!\"'…)".contains(*c)).map(char::len_utf8);
            let at = from..last.1.end + tail.sum::<usize>();
            let end = &text[last.1.end..at.end];
            let is_whole = count == own.len() || end.contains(['?', '…']) || end.contains("...");
            let other = all.iter().position(|q| q.at.start < at.end && at.start < q.at.end);
            match other {
                Some(other) if all[other].at.len() >= at.len() => {}
                Some(other) => all[other] = Quote { question, at, is_whole },
                None => all.push(Quote { question, at, is_whole }),
            }
        }
    }
    all.sort_by_key(|q| q.at.start);
    all
}

/// Where the number of a question stands ahead of it.
fn number_ahead(text: &str, at: usize, number: usize) -> Option<usize> {
    let head = &text[..at];
    let bare = head.trim_end_matches([' ', '.', ')', ':', '\t']);
    let digits = number.to_string();
    let found = bare.ends_with(&digits) && at - bare.len() <= NUMBER;
    found.then(|| bare.len() - digits.len())
}

/// What stands behind each question that is repeated, up to the next: the writer's own lines where the quoted ones are marked, the
/// first paragraph where not.
pub(super) fn behind(text: &str, lines: &[Line], quotes: &[Quote]) -> Vec<(usize, Range<usize>)> {
    let mut all = Vec::new();
    for (k, quote) in quotes.iter().enumerate() {
        let end = quotes.get(k + 1).map_or(text.len(), |next| next.at.start);
        let marked = lines.iter().any(|line| line.is_quoted && line.at.contains(&quote.at.start));
        let last = k + 1 == quotes.len();
        if let Some(at) = answer(text, lines, quote.at.end..end, (marked, last, quote.is_whole)) {
            all.push((quote.question, at));
        }
    }
    // In a mail that hangs below without answers between its questions, what stands behind the last one is ours too.
    let bare = quotes.len() > 2 && all.len() == 1 && all[0].1.start > quotes[quotes.len() - 1].at.start;
    let marked = lines.iter().any(|line| line.is_quoted);
    if bare && !marked { Vec::new() } else { all }
}

/// The answer within what stands behind a question.
fn answer(
    text: &str,
    lines: &[Line],
    within: Range<usize>,
    (marked, last, is_whole): (bool, bool, bool),
) -> Option<Range<usize>> {
    // Where the words part without a mark, what follows may still be ours: the figure that we took is no answer.
    if !marked && !is_whole {
        return None;
    }
    // What follows on the line of the question itself is its answer, unless the line is the rest of the question.
    let own_line = lines.iter().position(|line| line.at.end >= within.start)?;
    let rest = within.start..lines[own_line].at.end.min(within.end);
    let inline = text.get(rest.clone()).filter(|said| {
        let said = said.trim();
        let parted = is_whole && !marked || PARTED.iter().any(|mark| said.starts_with(mark));
        parted && said.chars().any(char::is_alphanumeric) && !is_rest(said)
    });
    let mut piece: Option<Range<usize>> = inline.and_then(|_| trimmed(text, rest));
    for line in &lines[own_line + 1..] {
        if line.at.start >= within.end || line.is_aside {
            break;
        }
        let end = line.at.end.min(within.end);
        // Own lines among marked ones are the answer; a marked line ends it.
        if marked && line.is_quoted {
            if piece.is_some() {
                break;
            }
            continue;
        }
        if line.is_blank() {
            if piece.is_some() && (last || !marked) {
                break;
            }
            continue;
        }
        let Some(at) = trimmed(text, line.from..end) else { continue };
        piece = Some(piece.map_or(at.start, |piece| piece.start)..at.end);
    }
    piece
}

/// Marks by which somebody parts an answer from the question ahead of it on its line.
const PARTED: [&str; 8] = ["-", "–", "—", "=>", "→", ":", "*", "<"];

/// Whether what follows on the line is the rest of a question that was repeated in part.
fn is_rest(said: &str) -> bool {
    said.starts_with("...") || said.starts_with('…') || said.ends_with('?')
}

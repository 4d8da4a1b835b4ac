//! Answers by the numbers of the questions: "1) 8 °C 2) no 3) see drawing".

use super::Asked;
use super::lines::trimmed;
use core::ops::Range;

/// Words that may stand ahead of the number.
const AHEAD: [&str; 12] =
    ["question", "answer to", "answer", "re", "ad", "no.", "nr.", "frage", "zu", "item", "point", "q"];

/// A number of a question in the text.
struct Mark {
    number: usize,
    /// From the number, or the word ahead of it, to what it is an answer with.
    at: Range<usize>,
    /// Whether a word says that it is the number of a question.
    is_told: bool,
    /// Whether it opens a line.
    opens: bool,
}

/// Answers by number, each to the end of its paragraph or the next number.
pub(super) fn numbered(text: &str, own: &[Range<usize>], questions: &[Asked]) -> Vec<(usize, Range<usize>)> {
    let mut all: Vec<(usize, Range<usize>)> = Vec::new();
    let mut last = 0;
    for piece in own {
        let mut marks = marks(text, piece.clone(), questions);
        // Numbers of questions rise; one within a sentence counts where one ahead of it opens a line.
        let mut begun = false;
        marks.retain(|mark| {
            let counts = mark.number > last && (mark.opens || mark.is_told || begun);
            if counts {
                last = mark.number;
                begun = true;
            }
            counts
        });
        for (k, mark) in marks.iter().enumerate() {
            let end = marks.get(k + 1).map_or(piece.end, |next| next.at.start);
            let of = questions.iter().position(|asked| asked.number == mark.number);
            let at = trimmed(text, mark.at.end..end);
            all.extend(of.zip(at));
        }
    }
    all
}

fn marks(text: &str, piece: Range<usize>, questions: &[Asked]) -> Vec<Mark> {
    let mut all = Vec::new();
    let mut at = piece.start;
    while let Some(k) = text.get(at..piece.end).and_then(|rest| rest.find(|c: char| c.is_ascii_digit())) {
        let from = at + k;
        let len = text[from..piece.end].find(|c: char| !c.is_ascii_digit()).unwrap_or(piece.end - from);
        at = from + len;
        let Some(number) = text[from..at].parse().ok().filter(|n| questions.iter().any(|q| q.number == *n)) else {
            continue;
        };
        let head = &text[piece.start..from];
        let line = head.rsplit('\n').next().unwrap_or("");
        let low = line.to_lowercase();
        let bare = low.trim_end_matches([' ', '(', '#', '\t']);
        let word = AHEAD.iter().find(|word| {
            let ahead = bare.strip_suffix(**word);
            ahead.is_some_and(|ahead| !ahead.ends_with(char::is_alphanumeric)) && bare.len() < low.len()
        });
        let opens = line.trim_matches([' ', '\t', '(', '#', '>', '*', '-']).is_empty();
        let clear = word.is_some() || line.is_empty() || line.ends_with([' ', '(', '\t', '#']);
        let behind = &text[at..piece.end];
        let mark = behind.chars().next();
        // "8.5" is a number, and "12:30" a time.
        let parts = behind.chars().nth(1).is_none_or(char::is_whitespace);
        let closes = match mark {
            Some(')') => true,
            Some('.' | ':') => parts && (opens || word.is_some()),
            Some(' ' | '-' | '–') => word.is_some() || opens && behind.trim_start().starts_with(['-', '–', '=', ':']),
            _ => false,
        };
        if clear && closes {
            let start = from - word.map_or(0, |word| low.len() - bare.len() + word.len()).min(line.len());
            let start = if text.is_char_boundary(start) { start } else { from };
            let end = at + mark.map_or(0, char::len_utf8);
            all.push(Mark { number, at: start..end, is_told: word.is_some(), opens });
        }
    }
    all
}

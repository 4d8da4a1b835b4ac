//! The sentences of a mail, and which lines say nothing of the job.

use core::ops::Range;

/// A sentence, a heading, or a line of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sentence {
    /// Its bytes, without the blanks around it.
    pub at: Range<usize>,
    /// Whether it says nothing of the job: a head line of the mail, what stands below a signature.
    pub is_aside: bool,
}

/// Head lines of a mail that hold addresses and dates.
const HEADS: [&str; 12] =
    ["from:", "to:", "cc:", "bcc:", "sent:", "date:", "von:", "an:", "gesendet:", "datum:", "reply-to:", "message-id:"];

/// Words that open the lines below which a mail names who wrote it.
const SIGNS: [&str; 14] = [
    "-- ",
    "kind regards",
    "best regards",
    "regards",
    "yours",
    "sincerely",
    "mit freundlichen",
    "viele grüße",
    "beste grüße",
    "cheers",
    "thanks and regards",
    "thank you and regards",
    "warm regards",
    "best,",
];

/// Parts a text into sentences.
pub(crate) fn sentences(text: &str) -> Vec<Sentence> {
    let mut all = Vec::new();
    let mut start = 0;
    let mut signed = false;
    let (mut begun, mut aside): (Option<usize>, bool) = (None, false);
    let mut close = |begun: &mut Option<usize>, end: usize, aside: bool| {
        if let Some(from) = begun.take() {
            let said = text[from..end].trim();
            if !said.is_empty() {
                let lead = text[from..end].len() - text[from..end].trim_start().len();
                all.push(Sentence { at: from + lead..from + lead + said.len(), is_aside: aside });
            }
        }
    };
    for line in text.split_inclusive('\n') {
        let bare = line.trim_start_matches(['>', ' ', '\t', '|']).trim_end();
        let low = bare.to_lowercase();
        let lead = line.len() - line.trim_start_matches(['>', ' ', '\t', '|']).len();
        // A quoted thread begins anew: what stood under a signature ends there.
        let quoted =
            HEADS.iter().any(|head| low.starts_with(head)) || low.starts_with("on ") && low.ends_with("wrote:");
        if quoted {
            signed = false;
        }
        if bare.is_empty()
            || quoted
            || bare.starts_with(['-', '*', '•', '–'])
            || bare.contains('\t')
            || bare.contains("  ")
        {
            close(&mut begun, start, aside);
        }
        if SIGNS.iter().any(|sign| low.starts_with(sign)) && bare.len() < 40 || line.starts_with("-- ") {
            close(&mut begun, start, aside);
            signed = true;
        }
        aside = signed || quoted;
        let mut from = start + lead;
        begun.get_or_insert(from);
        // Sentences end with a mark and a blank, and not behind a number or a short word that is cut.
        for (k, mark) in line.match_indices(['.', '!', '?', ';']) {
            let end = start + k + mark.len();
            let next = line[k + mark.len()..].chars().next();
            let word = line[..k].rsplit(|c: char| c.is_whitespace() || c == '(').next().unwrap_or("");
            let goes_on =
                line[k + mark.len()..].trim_start().starts_with(|c: char| c.is_lowercase() || c.is_ascii_digit());
            // A short word behind a number is its unit, and is not cut.
            let unit =
                word.starts_with('°') || line[..k - word.len()].trim_end().ends_with(|c: char| c.is_ascii_digit());
            let short = word.len() <= 3 && !unit && !word.chars().any(|c| c.is_ascii_digit()) || word.contains('.');
            let cut = mark == "." && (short || goes_on);
            if next.is_none_or(char::is_whitespace) && !cut && end > from {
                close(&mut begun, end, aside);
                begun = Some(end);
                from = end;
            }
        }
        start += line.len();
        // A line of a table, of a list or a head line ends where it ends.
        if bare.starts_with(['-', '*', '•', '–']) || bare.contains('\t') || bare.contains("  ") || quoted {
            close(&mut begun, start, aside);
        }
    }
    close(&mut begun, text.len(), aside);
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> Vec<(&str, bool)> {
        sentences(text).into_iter().map(|s| (&text[s.at], s.is_aside)).collect()
    }

    #[test]
    fn sentences_end_where_people_end_them() {
        let text = "Hi,\n\nWe wash approx. 20 trams. The yard is\n3.5 ha large; it drains here.\n\nKind regards\nA. Person\nTel. 555 0100\n";
        let found = said(text);
        assert_eq!(
            found,
            [
                ("Hi,", false),
                ("We wash approx. 20 trams.", false),
                ("The yard is\n3.5 ha large;", false),
                ("it drains here.", false),
                ("Kind regards\nA. Person\nTel. 555 0100", true)
            ]
        );
    }

    #[test]
    fn a_unit_at_the_end_of_a_sentence_is_no_word_that_is_cut() {
        let text = "It gets down to 4 °C. We wash no. 5 at 20 gpm. The rest is dry.";
        let bare: Vec<&str> = said(text).into_iter().map(|(text, _)| text).collect();
        assert_eq!(bare, ["It gets down to 4 °C.", "We wash no. 5 at 20 gpm.", "The rest is dry."]);
    }

    #[test]
    fn lists_and_quoted_threads_stand_line_by_line() {
        let text = "- area 20 m2\n- flow 3 L/s\nCheers,\nB\n\nFrom: somebody\nSent: 12 May\n> The pump lifts 50 gpm.\n";
        let found = said(text);
        let bare: Vec<&str> = found.iter().filter(|(_, aside)| !aside).map(|(text, _)| *text).collect();
        assert_eq!(bare, ["- area 20 m2", "- flow 3 L/s", "The pump lifts 50 gpm."]);
    }
}

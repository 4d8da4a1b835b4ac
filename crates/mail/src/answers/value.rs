//! The value of a key in the words of an answer: a quantity of its dimension, yes or no, a word of its choice, a count.

use super::unnamed;
use crate::keys::place;
use crate::read_mail;
use stillrise_design::enquiry::keys::KeyKind;
use stillrise_units::Dim;
use stillrise_units::parse::{Extent, Reading, quantities_in};

/// Words by which somebody says that he does not know.
const UNKNOWN: [&str; 26] = [
    "not known",
    "unknown",
    "n/a",
    "not available",
    "don't know",
    "do not know",
    "dont know",
    "not sure",
    "no idea",
    "will check",
    "to be confirmed",
    "tbc",
    "tbd",
    "to be determined",
    "to follow",
    "cannot say",
    "can't say",
    "see drawing",
    "see attached",
    "no data",
    "no information",
    "unbekannt",
    "nicht bekannt",
    "keine angabe",
    "wird nachgereicht",
    "let you know",
];
/// Beginnings that say yes.
const YES: [&str; 16] = [
    "yes",
    "yep",
    "yeah",
    "correct",
    "right",
    "true",
    "ja",
    "it does",
    "it can",
    "it is",
    "they can",
    "they do",
    "there is",
    "allowed",
    "that is so",
    "indeed",
];
/// Beginnings that say no, and words that do within.
const NO: [&str; 18] = [
    "no",
    "nope",
    "nein",
    "not",
    "never",
    "none",
    "neither",
    "it does not",
    "it doesn't",
    "it can not",
    "it cannot",
    "it can't",
    "they cannot",
    "they can't",
    "they do not",
    "they don't",
    "there is no",
    "there is none",
];
const NEGATED: [&str; 9] =
    [" not ", "n't ", " cannot ", " never ", " no ", " nicht ", " kein ", " keine ", " without "];
/// Numbers in words.
const SPOKEN: [(&str, &str); 8] = [
    ("one", "1"),
    ("two", "2"),
    ("three", "3"),
    ("four", "4"),
    ("five", "5"),
    ("six", "6"),
    ("twelve", "12"),
    ("ten", "10"),
];

/// The value as the key takes it; `None` where the words give none.
pub(super) fn value(key: &str, said: &str, reading: &Reading) -> Option<String> {
    let path = unnamed(key);
    let place = place(&path)?;
    let low = said.to_lowercase();
    let unknown = UNKNOWN.iter().any(|word| holds(&low, word));
    let found = match place.key.kind {
        KeyKind::Quantity(dim) | KeyKind::Quantities(dim) => {
            let mut all = quantities_in(said, reading).into_iter().filter(|found| found.dim == dim);
            let si = |extent: &Extent| match extent {
                Extent::One(one) => one.si(),
                Extent::Around { value, .. } => value.si(),
                Extent::Between { high, .. } => high.si(),
            };
            let fits = all.find(|found| place.takes(si(&found.span.extent))).map(|found| found.span.text);
            // A plain number is all that a ratio asks for; of anything else the unit is missing.
            fits.or_else(|| (dim == Dim::Ratio && !unknown).then(|| number(&low)).flatten())
        }
        KeyKind::Flag if unknown => None,
        KeyKind::Flag => yes_or_no(&low).map(|yes| if yes { "yes" } else { "no" }.to_owned()),
        KeyKind::Choice(words) | KeyKind::ClaimedChoice(words) if !unknown => {
            let named = words.iter().filter_map(|(word, _)| Some((at(&low, word)?, *word)));
            // The longest of those that begin at one place is meant.
            let first = named.min_by_key(|(at, word)| (*at, core::cmp::Reverse(word.len())));
            first.map(|(_, word)| word.to_owned())
        }
        KeyKind::Count if !unknown => number(&low).filter(|n| !n.contains('.')),
        _ => None,
    };
    // What the trade calls it, where the file has another word for it.
    found.or_else(|| {
        let worded = matches!(
            place.key.kind,
            KeyKind::Named(_) | KeyKind::Choice(_) | KeyKind::ClaimedChoice(_) | KeyKind::Quantity(_)
        );
        let finds = read_mail(said, reading).finds;
        let offers = finds.iter().flat_map(|find| &find.offers).filter(|_| worded);
        offers.into_iter().find(|offer| offer.path == path && (offer.weight > 0 || !unknown)).map(|o| o.value.clone())
    })
}

/// Whether a text holds a word that stands for itself.
fn holds(low: &str, word: &str) -> bool {
    at(low, word).is_some()
}

/// Where a word stands for itself; dashes count as blanks.
fn at(low: &str, word: &str) -> Option<usize> {
    let blank = |text: &str| text.to_lowercase().replace('-', " ");
    let (low, word) = (blank(low), blank(word));
    low.match_indices(&word).map(|(k, _)| k).find(|k| {
        let before = low[..*k].chars().next_back();
        let behind = low[k + word.len()..].chars().next();
        !before.is_some_and(char::is_alphanumeric) && !behind.is_some_and(char::is_alphanumeric)
    })
}

/// What an answer to a question of yes or no says; `None` where it says neither.
fn yes_or_no(low: &str) -> Option<bool> {
    let said = low.trim_start_matches(|c: char| !c.is_alphanumeric());
    let begins = |words: &[&str]| {
        let found = words.iter().filter(|word| {
            said.strip_prefix(**word).is_some_and(|rest| !rest.starts_with(|c: char| c.is_alphanumeric() || c == '\''))
        });
        found.map(|word| word.len()).max()
    };
    match (begins(&YES), begins(&NO)) {
        (Some(yes), no) if no.is_none_or(|no| yes >= no) => {
            // "it is not", "there is a closure, but": a beginning that is denied at once.
            let rest = said.get(yes..).unwrap_or("");
            let denied = yes > 3
                && NEGATED.iter().any(|word| {
                    rest.get(..rest.len().min(word.len() + 2)).is_some_and(|head| head.contains(word.trim_end()))
                });
            Some(!denied)
        }
        (_, Some(_)) => Some(false),
        _ => {
            let padded = format!(" {said} ");
            NEGATED.iter().any(|word| padded.contains(word)).then_some(false)
        }
    }
}

/// The first plain number, in digits or as a word.
fn number(low: &str) -> Option<String> {
    let mut words = low.split(|c: char| c.is_whitespace() || matches!(c, '(' | ')' | ';' | '~' | '='));
    words.find_map(|word| {
        let bare = word.trim_matches(|c: char| !c.is_alphanumeric());
        if let Some((_, digits)) = SPOKEN.iter().find(|(spoken, _)| *spoken == bare) {
            return Some((*digits).to_owned());
        }
        let point = bare.replace(',', ".");
        point
            .parse::<f64>()
            .ok()
            .filter(|n| n.is_finite() && bare.starts_with(|c: char| c.is_ascii_digit()))
            .map(|_| point)
    })
}

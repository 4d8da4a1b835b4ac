//! Quantities in running text: where each stands, and what it says.

use super::feet::feet_and_inches;
use super::number::leading;
use super::span::{ABOUT, AT_LEAST, AT_MOST};
use super::{Reading, Span, span_of};
use crate::catalog::{Dim, UNITS, Unit};
use core::ops::Range;
use std::sync::LazyLock;

/// A quantity in a text.
#[derive(Debug, Clone)]
pub struct Found {
    /// The bytes of the text that say it.
    pub at: Range<usize>,
    /// What they say.
    pub span: Span,
    /// What it measures.
    pub dim: Dim,
}

/// Every quantity of a text, in order: a number with its unit, a range of two, a bound or a tolerance with the words that
/// make it one. A number without a unit is none.
#[must_use]
pub fn quantities_in(text: &str, reading: &Reading) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    let mut at = 0;
    while at < text.len() {
        let Some(start) = next_number(text, at) else { break };
        let Some(number) = leading(&text[start..]).filter(|number| number.value.is_finite()) else {
            at = past_digits(text, start);
            continue;
        };
        let floor = found.last().map_or(0, |last| last.at.end);
        match quantity_at(text, floor, start, start + number.end, reading) {
            Some(one) => {
                at = one.at.end.max(start + 1);
                found.push(one);
            }
            None => at = past_digits(text, (start + number.end).max(start + 1)),
        }
    }
    found
}

/// Where the next number may begin: a digit, a point before one or a fraction, that is not the end of a word or a code.
fn next_number(text: &str, from: usize) -> Option<usize> {
    let mut before = text[..from].chars().next_back();
    for (k, c) in text[from..].char_indices() {
        let own = from + k;
        let digit = c.is_ascii_digit() || matches!(c, '¼' | '½' | '¾' | '⅓' | '⅔' | '⅛' | '⅜' | '⅝' | '⅞');
        let apart =
            !before.is_some_and(|b| b.is_alphanumeric() || matches!(b, '.' | ',' | '/' | '_' | '-' | ':' | '#'));
        if digit && apart {
            return Some(own);
        }
        // A sign belongs to it where a blank stands before the sign.
        let signed = matches!(c, '-' | '−') && text[own + c.len_utf8()..].starts_with(|d: char| d.is_ascii_digit());
        if signed && before.is_none_or(|b| b.is_whitespace() || b == '(') {
            return Some(own);
        }
        before = Some(c);
    }
    None
}

/// Past the digits and marks of a number that is none.
fn past_digits(text: &str, from: usize) -> usize {
    let rest = &text[from..];
    let len = rest.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '/'))).unwrap_or(rest.len());
    from + len.max(rest.chars().next().map_or(1, char::len_utf8))
}

/// What parts the ends of a range in running text.
const ENDS: [&str; 9] = ["to", "bis", "through", "...", "…", "–", "—", "−", "-"];
/// What parts a value from its tolerance.
const TOLERANCE: [&str; 3] = ["±", "+/-", "+-"];

/// The quantity that begins at a number; `floor` is where the one before it ends.
fn quantity_at(text: &str, floor: usize, start: usize, end: usize, reading: &Reading) -> Option<Found> {
    if let Some(length) = feet(text, start, end) {
        let at = with_words(text, floor, start..length);
        let span = span_of(&text[at.clone()], Dim::Length, reading).ok()?;
        return Some(Found { at, span, dim: Dim::Length });
    }
    let (unit, stop) = match unit_at(text, end) {
        Some(found) => found,
        // A second number before the unit.
        None => {
            let second = between(text, end, &ENDS).or_else(|| between(text, end, &TOLERANCE))?;
            unit_at(text, second)?
        }
    };
    // "10 gpm to 20 gpm", "60 gpm +/- 5 gpm".
    let far = [&ENDS[..], &TOLERANCE[..]].into_iter().find_map(|marks| {
        let (other, stop) = unit_at(text, between(text, stop, marks)?)?;
        (other.dim == unit.dim).then_some(stop)
    });
    [far, Some(stop)].into_iter().flatten().find_map(|stop| {
        let wide = with_words(text, floor, start..stop);
        [wide, start..stop].into_iter().find_map(|at| {
            let said = text[at.clone()].split_whitespace().collect::<Vec<_>>().join(" ");
            // A hyphen that ties a unit to its number is none of the number's.
            let loose = said.find('-').filter(|k| said[k + 1..].starts_with(char::is_alphabetic));
            let said = loose.map_or(said.clone(), |k| [&said[..k], " ", &said[k + 1..]].concat());
            let span = span_of(&said, unit.dim, reading).ok()?;
            Some(Found { at, span, dim: unit.dim })
        })
    })
}

/// Where feet and inches end that begin at a number.
fn feet(text: &str, start: usize, end: usize) -> Option<usize> {
    let rest = text[end..].trim_start();
    if !rest.starts_with(['\'', '′', '’', 'f', 'F']) {
        return None;
    }
    // Inches end with a mark or a word: no farther than so many bytes.
    let most = (end + 20).min(text.len());
    (end + 1..=most).rev().filter(|stop| text.is_char_boundary(*stop)).find(|stop| {
        let closed = !text[*stop..].starts_with(char::is_alphanumeric);
        closed && matches!(feet_and_inches(text[start..*stop].trim_end()), Some(Ok(_)))
    })
}

/// The end of a number that one of these marks ties to what stands before it.
fn between(text: &str, end: usize, marks: &[&str]) -> Option<usize> {
    let rest = text[end..].trim_start_matches(BLANKS);
    let mark = marks.iter().find(|mark| {
        let word = mark.starts_with(char::is_alphabetic);
        let head = rest.get(..mark.len()).is_some_and(|head| head.eq_ignore_ascii_case(mark));
        head && (!word || rest[mark.len()..].starts_with(char::is_whitespace))
    })?;
    let behind = rest[mark.len()..].trim_start_matches(BLANKS);
    let number = leading(behind)?;
    Some(text.len() - behind.len() + number.end)
}

/// Blanks that may part a number from its unit, a line's end among them.
const BLANKS: [char; 6] = [' ', '\t', '\n', '\r', '\u{a0}', '\u{202f}'];

/// Names of units in small letters, longest first, each with the unit and as it is written.
static NAMES: LazyLock<Vec<(String, &'static str, &'static Unit)>> = LazyLock::new(|| {
    let each = UNITS.iter().copied().flat_map(|unit| {
        let names = core::iter::once(unit.symbol).chain(unit.also.iter().copied());
        names
            .filter(|name| !name.is_empty() && !SILENT.contains(name))
            .map(move |name| (name.to_lowercase(), name, unit))
    });
    let mut names: Vec<_> = each.chain([("ppm".to_owned(), "ppm", &crate::catalog::MG_L)]).collect();
    names.sort_by(|a, b| b.0.len().cmp(&a.0.len()).then(a.0.cmp(&b.0)));
    names
});

/// Names that are words or marks of running text first: a dash, "1", "a", and letters that stand for thousands or names.
const SILENT: [&str; 6] = ["-", "1", "a", "K", "P", "N"];

/// What follows "in" where it means inches and is no preposition.
const BEHIND_INCH: [&str; 34] = [
    "pipe",
    "line",
    "dia",
    "diameter",
    "deep",
    "high",
    "wide",
    "long",
    "thick",
    "of",
    "x",
    "by",
    "main",
    "outlet",
    "inlet",
    "suction",
    "discharge",
    "opening",
    "mesh",
    "sewer",
    "drain",
    "nominal",
    "id",
    "od",
    "rain",
    "rainfall",
    "nozzle",
    "valve",
    "hose",
    "tap",
    "connection",
    "gap",
    "below",
    "above",
];

/// The unit that stands behind a number, and where it ends.
fn unit_at(text: &str, end: usize) -> Option<(&'static Unit, usize)> {
    let rest = &text[end..];
    // "25-year", "15-inch".
    let tied = rest.strip_prefix('-').filter(|tail| tail.starts_with(char::is_alphabetic));
    let body = tied.unwrap_or_else(|| rest.trim_start_matches(BLANKS));
    // No more than a blank, or the end of a line, parts the two.
    if rest.len() - body.len() > 3 {
        return None;
    }
    let at = text.len() - body.len();
    let ends = |name: &str| {
        let behind = body.get(name.len()..)?;
        let word = name.ends_with(char::is_alphanumeric);
        let closed =
            !word || !behind.starts_with(|c: char| c.is_alphanumeric() || matches!(c, '/' | '²' | '³' | '^' | '_'));
        let preposition = name.eq_ignore_ascii_case("in") && {
            let next = behind.trim_start().split(|c: char| !c.is_alphabetic()).next().unwrap_or("").to_lowercase();
            behind.starts_with([' ', '\u{a0}'])
                && !behind.starts_with("  ")
                && !next.is_empty()
                && !BEHIND_INCH.contains(&&*next)
        };
        (closed && !preposition).then_some(at + name.len())
    };
    // As it is written, then whatever its letters, where that is one unit alone and more than a letter.
    let exact = NAMES.iter().filter(|(_, name, _)| body.starts_with(name));
    let exact = exact.filter_map(|(_, name, unit)| Some((*unit, ends(name)?))).next();
    let lower: String = body.chars().take(24).flat_map(char::to_lowercase).collect();
    let loose = NAMES.iter().filter(|(low, ..)| low.len() > 1 && lower.starts_with(low.as_str()));
    let loose = loose
        .filter(|(low, ..)| body.get(..low.len()).is_some_and(|head| head.to_lowercase() == *low))
        .filter_map(|(low, name, unit)| Some((*unit, ends(low)?, name)))
        .next()
        .filter(|(unit, ..)| {
            let same = |other: &&(String, &str, &'static Unit)| lower.starts_with(&other.0) && other.2.dim != unit.dim;
            let longest =
                NAMES.iter().filter(|(low, ..)| lower.starts_with(low.as_str())).map(|(low, ..)| low.len()).max();
            !NAMES.iter().filter(same).any(|other| Some(other.0.len()) == longest)
        });
    let loose = loose.map(|(unit, stop, _)| (unit, stop));
    match (exact, loose) {
        (Some(exact), Some(loose)) if loose.1 > exact.1 => Some(loose),
        (exact, loose) => exact.or(loose),
    }
}

/// With the words ahead of it that say how exact it is.
fn with_words(text: &str, floor: usize, at: Range<usize>) -> Range<usize> {
    let head = text[floor..at.start].trim_end();
    let all = [&ABOUT[..], &AT_MOST[..], &AT_LEAST[..]].concat();
    let word = all.iter().filter(|word| {
        let Some(from) = head.len().checked_sub(word.len()) else { return false };
        let Some(tail) = head.get(from..) else { return false };
        let apart = !word.starts_with(char::is_alphabetic) || !head[..from].ends_with(char::is_alphanumeric);
        tail.eq_ignore_ascii_case(word) && apart
    });
    match word.max_by_key(|word| word.len()) {
        Some(word) => floor + head.len() - word.len()..at.end,
        None => at,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse::Gallon;

    fn found(text: &str) -> Vec<String> {
        let reading = Reading { gallon: Some(Gallon::Us) };
        quantities_in(text, &reading).into_iter().map(|one| text[one.at].to_owned()).collect()
    }

    #[test]
    fn quantities_are_found_in_running_text() {
        for (text, wanted) in [
            ("We wash with 2 hoses, about 45 gpm, 3 hours a day.", &["about 45 gpm", "3 hours"][..]),
            ("Fläche ca. 3.200 m2, Regen 200 l/(s ha)", &["ca. 3.200 m2", "200 l/(s ha)"]),
            ("pipe invert 98.40 ft, 4\" line, tank 5'-6\" deep", &["98.40 ft", "4\"", "5'-6\""]),
            (
                "between 10 and 20 gpm; 10 to 20 gpm, 6-9 m3/h, 60 gpm +/- 5 gpm",
                &["20 gpm", "10 to 20 gpm", "6-9 m3/h", "60 gpm +/- 5 gpm"],
            ),
            ("not more than 15 mg/L, < 5 ppm, 15PPM", &["not more than 15 mg/L", "< 5 ppm", "15PPM"]),
            ("Call 555 0100 ext. 12, offer Q-4401 of 2026-03-02, C10 to C40", &[]),
            ("we have 3 in total, and 2 in the yard; a 6 in pipe", &["6 in"]),
            ("1,20,000 litres, 1 200,5 m2, 1'200 GPM", &["1,20,000 litres", "1 200,5 m2", "1'200 GPM"]),
            ("-14 °C in winter, 38F, 20 deg C", &["-14 °C", "38F", "20 deg C"]),
            ("flow is 120\ngpm at most", &["120\ngpm"]),
            ("a 10K order, 5 a day, 2 K", &[]),
            ("50 % of it, 3 m3/h and 7 m", &["50 %", "3 m3/h", "7 m"]),
            ("½ in tap, 1 1/2\" hose, .5 mg/L", &["½ in", "1 1/2\""]),
            ("25-year storm, 15-inch pipe, 24 in\n  T2", &["25-year", "15-inch", "24 in"]),
        ] {
            assert_eq!(found(text), wanted, "{text}");
        }
    }

    #[test]
    fn no_text_makes_it_panic() {
        for text in [
            "",
            "5",
            "5 '",
            "−",
            "½",
            "9'9'9'9'9'9'9\"",
            "1e999 gpm",
            "5\u{a0}",
            "ß5 m²ß",
            "0x10 m",
            "𝟙 m",
            "5 µ",
            "3⁄4 in",
        ] {
            let _ = found(text);
            let _ = found(&text.repeat(40));
        }
    }
}

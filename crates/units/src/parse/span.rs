//! A quantity that may be written as a range: `"10 to 20 gpm"`, `"20 ± 2 gpm"`, `"about 20 gpm"`, `"max 20 gpm"`.

use super::number::leading;
use super::{Reading, Written, of, quantity_of, read};
use crate::catalog::{Dim, ONE, PERCENT, Unit};
use crate::fault::Fault;
use crate::print::digits;

/// What a text says of a quantity.
#[derive(Debug, Clone)]
pub struct Span {
    /// The text, trimmed.
    pub text: String,
    /// One number, or several.
    pub extent: Extent,
    /// What had to be interpreted, in whole sentences; the notes on each number are among them.
    pub notes: Vec<String>,
}

/// One number, or a range with or without a number within it. In a range `low` is never above `high`.
#[derive(Debug, Clone)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Extent {
    One(Written),
    Around { low: Written, value: Written, high: Written },
    Between { low: Written, high: Written },
}

impl Span {
    fn one(text: &str, mut written: Written) -> Self {
        text.clone_into(&mut written.text);
        Self { text: text.to_owned(), notes: written.notes.clone(), extent: Extent::One(written) }
    }
}

/// Bytes of the longest text that is looked at for a range.
const LONGEST: usize = 160;

/// Words that say a number is not exact, longest first where one begins another.
pub(super) const ABOUT: [&str; 13] =
    ["approximately", "approx.", "approx", "about", "around", "roughly", "circa", "ca.", "ca", "say", "~", "≈", "±"];
/// Words that make a number an upper bound.
pub(super) const AT_MOST: [&str; 16] = [
    "maximum",
    "max.",
    "max",
    "up to",
    "at most",
    "not more than",
    "no more than",
    "not above",
    "not to exceed",
    "less than",
    "below",
    "under",
    "<=",
    "≤",
    "=<",
    "<",
];
/// Words that make a number a lower bound.
pub(super) const AT_LEAST: [&str; 12] =
    ["minimum", "min.", "min", "at least", "not less than", "no less than", "more than", "above", ">=", "≥", "=>", ">"];
/// What parts a value from its tolerance.
const TOLERANCE: [&str; 6] = ["±", "+/-", "+/−", "+-", "plus or minus", "plus/minus"];
/// What parts the ends of a range, the unmistakable ones first.
const ENDS: [&str; 8] = [" to ", "...", "…", "–", "—", "‒", "−", "-"];

/// Reads a quantity of dimension `dim` that may be written as a range, a value with a tolerance, or a bound.
///
/// # Errors
/// As [`quantity_of`], and when a range runs downwards or a tolerance is none.
pub fn span_of(text: &str, dim: Dim, reading: &Reading) -> Result<Span, Fault> {
    let text = text.trim();
    let plain = match quantity_of(text, dim, reading) {
        Ok(written) => return Ok(Span::one(text, written)),
        Err(fault) => fault,
    };
    if text.len() > LONGEST {
        return Err(plain);
    }
    let mut notes = Vec::new();
    let mut rest = text;
    if let Some((word, tail)) = led_by(rest, &ABOUT).or_else(|| ended_by(rest, &ABOUT)) {
        notes.push(format!("\"{word}\" was read as the value itself; how far it may be off is not said"));
        rest = tail;
    }
    for (words, bound) in [(&AT_MOST[..], "an upper"), (&AT_LEAST[..], "a lower")] {
        let behind = ended_by(rest, words).filter(|(_, head)| quantity_of(head, dim, reading).is_ok());
        let Some((word, tail)) = led_by(rest, words).or(behind) else { continue };
        let written = quantity_of(tail, dim, reading)?;
        notes.push(format!("\"{word}\" was read as the value itself, which is {bound} bound"));
        return Ok(with(Span::one(text, written), text, notes));
    }
    if !notes.is_empty()
        && let Ok(written) = quantity_of(rest, dim, reading)
    {
        return Ok(with(Span::one(text, written), text, notes));
    }
    let found = match around(rest, dim, reading) {
        Some(found) => Some(found),
        None => between(rest, dim, reading),
    };
    match found {
        Some(span) => Ok(with(span?, text, notes)),
        None if notes.is_empty() => Err(plain),
        None => Err(quantity_of(rest, dim, reading).err().unwrap_or(plain)),
    }
}

/// The same span of a longer text, with the notes on what was around it.
fn with(mut span: Span, text: &str, notes: Vec<String>) -> Span {
    span.notes = [notes, span.notes].concat();
    text.clone_into(&mut span.text);
    span
}

/// A word at the head of a text, as typed, and what follows it.
fn led_by<'a>(text: &'a str, words: &[&str]) -> Option<(&'a str, &'a str)> {
    words.iter().find_map(|word| {
        let (head, tail) = text.split_at_checked(word.len())?;
        let ends = !word.ends_with(char::is_alphabetic) || !tail.starts_with(char::is_alphabetic);
        (head.eq_ignore_ascii_case(word) && ends).then(|| (head, tail.trim_start_matches(':').trim_start()))
    })
}

/// A word at the end of a text behind a blank, as typed, and what stands before it.
fn ended_by<'a>(text: &'a str, words: &[&str]) -> Option<(&'a str, &'a str)> {
    words.iter().filter(|word| word.starts_with(char::is_alphabetic)).find_map(|word| {
        let (head, tail) = text.split_at_checked(text.len().checked_sub(word.len())?)?;
        (tail.eq_ignore_ascii_case(word) && head.ends_with(char::is_whitespace)).then(|| (tail, head.trim_end()))
    })
}

/// The parts of a text before and behind each place where `mark` stands.
fn parts<'a>(text: &'a str, mark: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
    let plain = text.to_ascii_lowercase();
    let places: Vec<usize> = plain.match_indices(mark).map(|(at, _)| at).filter(|at| *at > 0).collect();
    places.into_iter().map(move |at| (text[..at].trim(), text[at + mark.len()..].trim()))
}

/// A value with a tolerance; `None` when the text is not of that form.
fn around(text: &str, dim: Dim, reading: &Reading) -> Option<Result<Span, Fault>> {
    let (left, right) = TOLERANCE.iter().find_map(|mark| parts(text, mark).next())?;
    leading(left)?;
    leading(right).filter(|_| !right.starts_with(['+', '-', '−']))?;
    Some(tolerated(text, left, right, dim, reading))
}

fn tolerated(text: &str, left: &str, right: &str, dim: Dim, reading: &Reading) -> Result<Span, Fault> {
    let mut value = read(left, Some(dim), reading)?;
    let off = read(right, Some(dim), reading)?;
    let mut notes = off.notes.clone();
    if *value.unit == ONE && *off.unit != PERCENT {
        value.unit = off.unit;
    }
    let mut value = of(value, dim)?;
    let points = dim == Dim::Ratio && *value.unit == PERCENT;
    let delta = if *off.unit == PERCENT && !points {
        if dim == Dim::Temperature {
            return Err(Fault::new(
                "",
                format!("\"{text}\" is a share of a temperature, which is another one on every scale"),
                "write the tolerance in degrees",
            ));
        }
        value.value.abs() * off.value / 100.0
    } else if *off.unit == ONE || off.unit == value.unit {
        off.value
    } else {
        of(off.clone(), dim)?.value * off.unit.scale / value.unit.scale
    };
    if points {
        notes.push(format!("the tolerance in \"{text}\" was read as percentage points"));
    }
    let end =
        |number: f64| Written { text: shown(number, value.unit), value: number, notes: Vec::new(), ..value.clone() };
    let (low, high) = (end(value.value - delta), end(value.value + delta));
    if !low.value.is_finite() || !high.value.is_finite() {
        return Err(Fault::new("", format!("\"{text}\" is not finite"), "write a number that a machine can hold"));
    }
    notes.push(format!("\"{text}\" was read as a range from {} to {}", low.text, high.text));
    notes.splice(0..0, value.notes.clone());
    text.clone_into(&mut value.text);
    Ok(Span { text: text.to_owned(), extent: Extent::Around { low, value, high }, notes })
}

/// Two ends; `None` when the text is not of that form.
fn between(text: &str, dim: Dim, reading: &Reading) -> Option<Result<Span, Fault>> {
    let inner = led_by(text, &["between", "from"]);
    let body = inner.map_or(text, |(_, tail)| tail);
    let and = inner.is_some_and(|(word, _)| word.eq_ignore_ascii_case("between"));
    let mut first = None;
    for mark in and.then_some(" and ").into_iter().chain(ENDS) {
        for (left, right) in parts(body, mark) {
            if leading(left).is_none() || leading(right).is_none() {
                continue;
            }
            match ends(text, left, right, dim, reading) {
                Ok(span) => return Some(Ok(span)),
                // A dash may stand within a number: another one may part the ends.
                Err(fault) => first = first.or(Some(fault)),
            }
        }
    }
    first.map(Err)
}

fn ends(text: &str, left: &str, right: &str, dim: Dim, reading: &Reading) -> Result<Span, Fault> {
    let mut low = read(left, Some(dim), reading)?;
    let mut high = read(right, Some(dim), reading)?;
    // A unit named once holds for both.
    match (*low.unit == ONE, *high.unit == ONE) {
        (true, false) => lend(&mut low, high.unit),
        (false, true) => lend(&mut high, low.unit),
        _ => {}
    }
    let (low, high) = (of(low, dim)?, of(high, dim)?);
    if low.si() > high.si() {
        return Err(Fault::new(
            "",
            format!("\"{text}\" runs from {} to {}: upside down", low.text, high.text),
            "write the lower end first",
        ));
    }
    let mut notes = [low.notes.clone(), high.notes.clone()].concat();
    notes.dedup();
    notes.push(format!("\"{text}\" was read as a range from {} to {}", low.text, high.text));
    Ok(Span { text: text.to_owned(), extent: Extent::Between { low, high }, notes })
}

fn lend(end: &mut Written, unit: &'static Unit) {
    end.unit = unit;
    end.text = format!("{} {}", end.text, unit.symbol);
}

/// An end that nobody typed.
fn shown(number: f64, unit: &Unit) -> String {
    format!("{} {}", digits(number, 6), unit.symbol).trim_end().to_owned()
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "numbers as typed come back as typed")]
mod tests {
    use super::*;
    use crate::parse::Gallon;

    fn read(text: &str, dim: Dim) -> Result<Span, Fault> {
        span_of(text, dim, &Reading { gallon: Some(Gallon::Us) })
    }

    /// Low, value and high, each in the unit it was read in.
    fn numbers(text: &str, dim: Dim) -> [Option<f64>; 3] {
        match read(text, dim).map(|s| s.extent) {
            Ok(Extent::One(v)) => [None, Some(v.value), None],
            Ok(Extent::Around { low, value, high }) => [low.value, value.value, high.value].map(Some),
            Ok(Extent::Between { low, high }) => [Some(low.value), None, Some(high.value)],
            Err(_) => [None; 3],
        }
    }

    #[test]
    fn ranges_in_the_ways_of_the_trade() {
        let between = |low, high| [Some(low), None, Some(high)];
        for (text, dim, expected) in [
            ("6-9", Dim::Ratio, between(6.0, 9.0)),
            ("6–9", Dim::Ratio, between(6.0, 9.0)),
            ("10 to 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("10 - 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("10 gpm to 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("10 gpm - 20", Dim::Flow, between(10.0, 20.0)),
            ("between 10 and 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("From 10 To 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("-5 - -3 °C", Dim::Temperature, between(-5.0, -3.0)),
            ("-5 to 3 °C", Dim::Temperature, between(-5.0, 3.0)),
            ("1/2-3/4 in", Dim::Length, between(0.5, 0.75)),
            ("1,500-2,000 gal", Dim::Volume, between(1500.0, 2000.0)),
            ("1e-3-2e-3 m", Dim::Length, between(1e-3, 2e-3)),
            ("5'-6'", Dim::Length, between(5.0, 6.0)),
            ("about 10 to 20 gpm", Dim::Flow, between(10.0, 20.0)),
            ("5 to 10 %", Dim::Ratio, between(5.0, 10.0)),
        ] {
            assert_eq!(numbers(text, dim), expected, "{text}: {:?}", read(text, dim));
        }
    }

    #[test]
    fn tolerances_are_shares_or_numbers() {
        let around = |low, value, high| [low, value, high].map(Some);
        for (text, dim, expected) in [
            ("20 gpm +/- 10 %", Dim::Flow, around(18.0, 20.0, 22.0)),
            ("20 ± 2 gpm", Dim::Flow, around(18.0, 20.0, 22.0)),
            ("20 gpm ±2", Dim::Flow, around(18.0, 20.0, 22.0)),
            ("10 in ± 1 ft", Dim::Length, around(-2.0, 10.0, 22.0)),
            ("60 ± 5 °F", Dim::Temperature, around(55.0, 60.0, 65.0)),
            ("20 % ± 5 %", Dim::Ratio, around(15.0, 20.0, 25.0)),
            ("2 ± 10 %", Dim::Ratio, around(1.8, 2.0, 2.2)),
        ] {
            let found = numbers(text, dim);
            let near = found
                .iter()
                .zip(expected)
                .all(|(a, b): (_, Option<f64>)| a.zip(b).is_some_and(|(a, b)| (a - b).abs() < 1e-12));
            assert!(near, "{text}: {found:?}");
        }
        assert!(read("60 °F ± 10 %", Dim::Temperature).is_err());
    }

    #[test]
    fn a_number_that_is_not_exact_is_a_number_with_a_note() {
        for (text, dim, value, said) in [
            ("about 20 gpm", Dim::Flow, 20.0, "how far it may be off"),
            ("~20 gpm", Dim::Flow, 20.0, "how far it may be off"),
            ("ca. 20 m3/h", Dim::Flow, 20.0, "how far it may be off"),
            ("20 gpm approx.", Dim::Flow, 20.0, "how far it may be off"),
            ("max 20 gpm", Dim::Flow, 20.0, "an upper bound"),
            ("20 gpm max.", Dim::Flow, 20.0, "an upper bound"),
            ("up to 20 gpm", Dim::Flow, 20.0, "an upper bound"),
            ("<.5 mg/L", Dim::Density, 0.5, "an upper bound"),
            ("≥ 5 %", Dim::Ratio, 5.0, "a lower bound"),
            ("min. 3 ft", Dim::Length, 3.0, "a lower bound"),
            ("20 min", Dim::Time, 20.0, ""),
            ("-1.5 m", Dim::Length, -1.5, ""),
        ] {
            assert_eq!(numbers(text, dim), [None, Some(value), None], "{text}: {:?}", read(text, dim));
            let notes = read(text, dim).map(|s| s.notes).unwrap_or_default();
            assert_eq!(notes.len(), usize::from(!said.is_empty()), "{text}: {notes:?}");
            assert!(notes.iter().all(|n| n.contains(said)), "{text}: {notes:?}");
        }
    }

    #[test]
    fn what_is_no_range_is_refused_for_the_right_reason() {
        for (text, dim, said) in [
            ("20 to 10 gpm", Dim::Flow, "upside down"),
            ("10 to 20 gmp", Dim::Flow, "did you mean \"gpm\"?"),
            ("10 to 20", Dim::Flow, "has no unit"),
            ("10 to 20 ft", Dim::Flow, "is a length, not a flow"),
            ("20 min", Dim::Flow, "is a time, not a flow"),
            ("about a third", Dim::Ratio, "does not begin with a number"),
        ] {
            let fault = read(text, dim).err().map(|f| f.to_string()).unwrap_or_default();
            assert!(fault.contains(said), "{text}: {fault}");
        }
    }
}

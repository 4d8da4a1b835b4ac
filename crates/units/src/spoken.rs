//! Text that names a quantity in the words of either system: `"above {2 ft/min|0.6 m/min} it warns"`.
//!
//! Whoever writes such a text does not know who will read it. Both ways stand in it, US first, each rounded as a person of that
//! system would say it; what a person typed never goes through here. That both say the same, to [`NEAR`], is tested where
//! the texts stand.

use crate::System;
use crate::parse::{self, Reading};

/// How far the two ways of one quantity may lie apart, as a share: round numbers of either system stand for each other.
pub const NEAR: f64 = 0.06;

/// The text for readers of one system.
#[must_use]
pub fn spoken(text: &str, system: System) -> String {
    told(text, |us, si| if system == System::Us { us.to_owned() } else { si.to_owned() })
}

/// The text for readers of whom nothing is known: SI, with US behind it in brackets.
#[must_use]
pub fn in_both(text: &str) -> String {
    told(text, |us, si| if us == si { si.to_owned() } else { format!("{si} ({us})") })
}

/// Every quantity of a text that is said in two ways: US and SI.
#[must_use]
pub fn pairs(text: &str) -> Vec<(&str, &str)> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some((_, us, si, behind)) = next(rest) {
        found.push((us, si));
        rest = behind;
    }
    found
}

/// Whether two ways of saying a quantity say the same: their numbers in SI, one by one, lie [`NEAR`] each other.
/// Ways without a number that can be read, such as "square foot", are taken at their word.
#[must_use]
pub fn agree(us: &str, si: &str) -> bool {
    let (us, si) = (numbers(us), numbers(si));
    us.len() == si.len()
        && us.iter().zip(&si).all(|(a, b)| match (a, b) {
            (Some(a), Some(b)) => (a - b).abs() <= NEAR * a.abs().max(b.abs()),
            _ => true,
        })
}

/// The quantities of one way, in SI; a number before "to" or a comma takes the unit of the last one.
fn numbers(way: &str) -> Vec<Option<f64>> {
    let parts: Vec<&str> = way.split(" to ").flat_map(|part| part.split(", ")).collect();
    let last = parts.last().map_or("", |part| part.trim());
    let unit = last.split_once(' ').map_or("", |(_, unit)| unit);
    let read = |text: &str| parse::quantity(text, &Reading::default()).ok().map(|found| found.si());
    parts
        .iter()
        .map(|part| read(part).filter(|_| part.contains(' ')).or_else(|| read(&format!("{part} {unit}"))))
        .collect()
}

fn told(text: &str, way: impl Fn(&str, &str) -> String) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((ahead, us, si, behind)) = next(rest) {
        out.push_str(ahead);
        out.push_str(&way(us, si));
        rest = behind;
    }
    out.push_str(rest);
    out
}

/// The text ahead of the first quantity in two ways, the ways, and the text behind it. Braces without a stroke are left.
fn next(text: &str) -> Option<(&str, &str, &str, &str)> {
    let mut from = 0;
    while let Some(open) = text.get(from..)?.find('{') {
        let at = from + open;
        let inner = text.get(at + 1..)?;
        let close = inner.find('}')?;
        if let Some((us, si)) = inner.get(..close).and_then(|both| both.split_once('|')) {
            return Some((text.get(..at)?, us, si, inner.get(close + 1..)?));
        }
        from = at + 1;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    const LINE: &str = "above {2 ft/min|0.6 m/min} of {what} it warns, at {80 to 100 °F|27 to 38 °C} it fails";

    #[test]
    fn each_reader_is_told_in_one_system() {
        assert_eq!(spoken(LINE, System::Us), "above 2 ft/min of {what} it warns, at 80 to 100 °F it fails");
        assert_eq!(spoken(LINE, System::Si), "above 0.6 m/min of {what} it warns, at 27 to 38 °C it fails");
        assert_eq!(
            in_both(LINE),
            "above 0.6 m/min (2 ft/min) of {what} it warns, at 27 to 38 °C (80 to 100 °F) it fails"
        );
        assert_eq!(spoken("{left | as it is", System::Si), "{left | as it is");
    }

    #[test]
    fn two_ways_of_one_quantity_are_held_against_each_other() {
        assert_eq!(pairs(LINE), [("2 ft/min", "0.6 m/min"), ("80 to 100 °F", "27 to 38 °C")]);
        // 12 in are 304.8 mm, 100 °F are 310.9 K, by definition.
        for (us, si) in [("12 in", "300 mm"), ("100 °F", "38 °C"), ("3 to 8 ft", "0.9 to 2.4 m"), ("3 ft/s", "0.9 m/s")]
        {
            assert!(agree(us, si), "{us}, {si}");
        }
        for (us, si) in [("12 in", "200 mm"), ("3 to 8 ft", "0.9 to 3.4 m"), ("3 ft", "1 to 2 m")] {
            assert!(!agree(us, si), "{us}, {si}");
        }
    }
}

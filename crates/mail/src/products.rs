//! Lengths that are multiplied: "60 ft x 85 ft" is an area.

use core::ops::Range;
use stillrise_units::catalog::{CM, FT2, M, M2, MM};
use stillrise_units::parse::{Extent, Found, Reading, Span, span_of};
use stillrise_units::{Dim, Unit, print};

/// What stands between two sides.
const TIMES: [&str; 5] = ["x", "×", "by", "*", "X"];

/// Areas that two lengths one behind the other make, each with the bytes of both. The first may lack its unit: "12 x 8 m".
pub(crate) fn products(text: &str, found: &[Found], reading: &Reading) -> Vec<(Range<usize>, Span)> {
    let side = |one: &Found| match (&one.span.extent, one.dim) {
        (Extent::One(said), Dim::Length) => Some((said.si(), said.unit)),
        _ => None,
    };
    let mut all = Vec::new();
    for (k, two) in found.iter().enumerate() {
        let Some((b, unit)) = side(two) else { continue };
        let whole = k.checked_sub(1).and_then(|k| found.get(k)).and_then(|one| {
            let between = text[one.at.end..two.at.start].trim();
            TIMES.contains(&between).then(|| side(one).map(|(a, unit)| (one.at.start, a, unit))).flatten()
        });
        let bare = || bare_side(text, two.at.start).map(|(at, number)| (at, unit.to_si(number), unit));
        let Some((start, a, unit)) = whole.or_else(bare) else { continue };
        let metric = [&M, &MM, &CM].into_iter().any(|own: &Unit| *own == *unit);
        let area = if metric { &M2 } else { &FT2 };
        let (size, name) = (area.from_si(a * b), area.symbol);
        if let Ok(span) = span_of(&format!("{} {name}", print::digits(size, 6)), Dim::Area, reading) {
            all.push((start..two.at.end, span));
        }
    }
    all
}

/// A number without a unit that is multiplied by what stands at a place, and where it begins.
fn bare_side(text: &str, at: usize) -> Option<(usize, f64)> {
    let before = text[..at].trim_end();
    let before = TIMES.iter().find_map(|word| before.strip_suffix(word))?.trim_end_matches([' ', '\u{a0}']);
    let start = before
        .rfind(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',')))
        .map_or(0, |k| k + before[k..].chars().next().map_or(1, char::len_utf8));
    let apart = !before[..start].ends_with(char::is_alphanumeric);
    let number = before[start..].replace(',', ".").parse().ok().filter(|number| apart && *number > 0.0)?;
    Some((start, number))
}

//! Lengths that are multiplied: "60 ft x 85 ft" is an area.

use core::ops::Range;
use stillrise_units::catalog::{CM, FT2, M, M2, MM};
use stillrise_units::parse::{Extent, Found, Reading, Span, span_of};
use stillrise_units::{Dim, Unit, print};

/// What stands between two sides.
const TIMES: [&str; 5] = ["x", "×", "by", "*", "X"];

/// Areas that two lengths one behind the other make, each with the bytes of both.
pub(crate) fn products(text: &str, found: &[Found], reading: &Reading) -> Vec<(Range<usize>, Span)> {
    let side = |one: &Found| match (&one.span.extent, one.dim) {
        (Extent::One(said), Dim::Length) => Some((said.si(), said.unit)),
        _ => None,
    };
    let mut all = Vec::new();
    for pair in found.windows(2) {
        let between = text[pair[0].at.end..pair[1].at.start].trim();
        let Some(((a, unit), (b, _))) = side(&pair[0]).zip(side(&pair[1])) else { continue };
        if !TIMES.contains(&between) {
            continue;
        }
        let metric = [&M, &MM, &CM].into_iter().any(|own: &Unit| *own == *unit);
        let area = if metric { &M2 } else { &FT2 };
        let (size, name) = (area.from_si(a * b), area.symbol);
        if let Ok(span) = span_of(&format!("{} {name}", print::digits(size, 6)), Dim::Area, reading) {
            all.push((pair[0].at.start..pair[1].at.end, span));
        }
    }
    all
}

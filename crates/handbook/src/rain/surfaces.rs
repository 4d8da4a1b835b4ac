//! Published data: runoff coefficients and sheet-flow roughness of surfaces.

use crate::page::Source;
use crate::sources::{ASCE_C, BARE_EARTH, GRAVEL_LOT, HERPICC, OPEN_STORE};

/// One kind of surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surface {
    /// The word in files.
    pub word: &'static str,
    /// What a person calls it.
    pub title: &'static str,
    /// Runoff coefficient for rain of two to ten years: low, typical, high.
    pub runoff: (f64, f64, f64),
    /// Roughness to sheet flow, where a table gives it.
    pub manning_n: Option<f64>,
    /// Where low and high come from.
    pub source: &'static Source,
    /// Where the typical value comes from; the same source when it is the middle of its range.
    pub typical_from: &'static Source,
}

/// The word for roofs, off which no oil comes.
pub const ROOF: &str = "roof";

/// A row whose typical value is stated by a second source.
const fn row(
    word: &'static str,
    title: &'static str,
    runoff: (f64, f64, f64),
    manning_n: Option<f64>,
    source: &'static Source,
    typical_from: &'static Source,
) -> Surface {
    Surface { word, title, runoff, manning_n, source, typical_from }
}

/// All surfaces. Sheet-flow roughness is that of FHWA Highway Hydrology and NRCS TR-55
/// ([`SHEET_N`](crate::sources::SHEET_N)).
///
/// Tables differ. A county code prints asphalt 0.82, concrete and roofs 0.85 where a city manual
/// takes 0.90 for all pavement and roofs: 0.90 stands here, since a separator too small is the worse
/// fault. Gravel yards have no row in the 1960 table; the city manual's 0.75 to 0.80 is for lots
/// packed by traffic, and loose gravel sheds less. The coefficients are for rain of up to ten years:
/// rarer rain sheds more (a factor of 1.1 at 25 years, 1.25 at 100, never above 1 in all).
pub static SURFACES: &[Surface] = &[
    row("asphalt", "asphalt pavement", (0.70, 0.90, 0.95), Some(0.011), &ASCE_C, &GRAVEL_LOT),
    row("concrete", "concrete pavement", (0.80, 0.90, 0.95), Some(0.012), &ASCE_C, &GRAVEL_LOT),
    row("brick", "brick pavement", (0.70, 0.775, 0.85), None, &ASCE_C, &ASCE_C),
    row("drive", "drives and walks", (0.75, 0.80, 0.85), None, &ASCE_C, &ASCE_C),
    row(ROOF, "roof", (0.75, 0.90, 0.95), None, &ASCE_C, &GRAVEL_LOT),
    row("gravel-yard", "gravel yard or lot, packed", (0.75, 0.775, 0.80), Some(0.011), &GRAVEL_LOT, &GRAVEL_LOT),
    row("bare-yard", "bare earth yard, packed", (0.30, 0.50, 0.60), Some(0.011), &BARE_EARTH, &BARE_EARTH),
    row("railroad-yard", "railroad yard on ballast", (0.20, 0.30, 0.40), None, &ASCE_C, &ASCE_C),
    row("light-industry", "light industry, the whole area", (0.50, 0.65, 0.80), None, &ASCE_C, &ASCE_C),
    row("heavy-industry", "heavy industry, the whole area", (0.60, 0.75, 0.90), None, &ASCE_C, &ASCE_C),
    row("unimproved", "unimproved land", (0.10, 0.20, 0.30), None, &ASCE_C, &ASCE_C),
    row("lawn-sandy-flat", "lawn on sandy soil, flat", (0.05, 0.07, 0.10), Some(0.15), &ASCE_C, &HERPICC),
    row("lawn-sandy", "lawn on sandy soil, average slope", (0.10, 0.12, 0.15), Some(0.15), &ASCE_C, &HERPICC),
    row("lawn-sandy-steep", "lawn on sandy soil, steep", (0.15, 0.17, 0.20), Some(0.15), &ASCE_C, &HERPICC),
    row("lawn-heavy-flat", "lawn on heavy soil, flat", (0.13, 0.16, 0.17), Some(0.15), &ASCE_C, &HERPICC),
    row("lawn-heavy", "lawn on heavy soil, average slope", (0.18, 0.21, 0.22), Some(0.15), &ASCE_C, &HERPICC),
    row("lawn-heavy-steep", "lawn on heavy soil, steep", (0.25, 0.30, 0.35), Some(0.15), &ASCE_C, &HERPICC),
    row("containment", "uncovered containment", (1.0, 1.0, 1.0), None, &OPEN_STORE, &OPEN_STORE),
    row("open-water", "open water, basin", (1.0, 1.0, 1.0), None, &OPEN_STORE, &OPEN_STORE),
];

/// The surface of this word.
#[must_use]
pub fn surface(word: &str) -> Option<&'static Surface> {
    SURFACES.iter().find(|s| s.word == word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_used_once_and_values_are_ordered() {
        for (at, s) in SURFACES.iter().enumerate() {
            assert!(SURFACES[..at].iter().all(|other| other.word != s.word), "{} twice", s.word);
            let (low, typical, high) = s.runoff;
            assert!(0.0 < low && low <= typical && typical <= high && high <= 1.0, "{}", s.word);
        }
        assert!(SURFACES.len() >= 14);
        assert_eq!(surface("roof").map(|s| s.runoff.2), Some(0.95));
        assert_eq!(surface("moon"), None);
    }
}

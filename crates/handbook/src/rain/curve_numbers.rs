//! Published data: curve numbers of surfaces.

use crate::choice;
use crate::page::Source;
use crate::sources::TR_55;

choice! {
    /// How well the soil below a surface takes up water, NRCS.
    SoilGroup {
        /// deep sand and gravel: takes up most
        A "A",
        /// sandy loam
        B "B",
        /// clay loam, shallow sandy loam
        C "C",
        /// clay, or high groundwater: takes up least
        D "D",
    }
}

/// The curve number of one kind of surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurveNumber {
    /// The word of the surface in files, as in [`surfaces`](super::surfaces).
    pub word: &'static str,
    /// What the table calls it.
    pub title: &'static str,
    /// On soils of group A, B, C and D.
    pub numbers: [f64; 4],
    /// Where from.
    pub source: &'static Source,
}

impl CurveNumber {
    /// On one group of soil.
    #[must_use]
    pub fn on(&self, soil: SoilGroup) -> f64 {
        let [a, b, c, d] = self.numbers;
        match soil {
            SoilGroup::A => a,
            SoilGroup::B => b,
            SoilGroup::C => c,
            SoilGroup::D => d,
        }
    }
}

const fn row(word: &'static str, title: &'static str, numbers: [f64; 4]) -> CurveNumber {
    CurveNumber { word, title, numbers, source: &TR_55 }
}

const PAVED: [f64; 4] = [98.0; 4];
const GRASS: [f64; 4] = [39.0, 61.0, 74.0, 80.0];

/// Surfaces that the tables of TR-55 name; those of our list that are missing here have none, and are asked about.
pub static CURVE_NUMBERS: &[CurveNumber] = &[
    row("asphalt", "paved lot", PAVED),
    row("concrete", "paved lot", PAVED),
    row("brick", "paved lot", PAVED),
    row("drive", "paved drive", PAVED),
    row("roof", "roof", PAVED),
    row("gravel-yard", "gravel", [76.0, 85.0, 89.0, 91.0]),
    row("bare-yard", "dirt", [72.0, 82.0, 87.0, 89.0]),
    row("light-industry", "industrial district, 72 % sealed", [81.0, 88.0, 91.0, 93.0]),
    row("heavy-industry", "industrial district, 72 % sealed", [81.0, 88.0, 91.0, 93.0]),
    row("lawn-sandy-flat", "open space, good cover", GRASS),
    row("lawn-sandy", "open space, good cover", GRASS),
    row("lawn-sandy-steep", "open space, good cover", GRASS),
    row("lawn-heavy-flat", "open space, good cover", GRASS),
    row("lawn-heavy", "open space, good cover", GRASS),
    row("lawn-heavy-steep", "open space, good cover", GRASS),
];

/// The curve number of the surface of this word.
#[must_use]
pub fn curve_number(word: &str) -> Option<&'static CurveNumber> {
    CURVE_NUMBERS.iter().find(|row| row.word == word)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rain::surfaces::surface;

    #[test]
    fn every_row_is_a_surface_and_heavier_soil_sheds_more() {
        for (at, row) in CURVE_NUMBERS.iter().enumerate() {
            assert!(surface(row.word).is_some(), "{}", row.word);
            assert!(CURVE_NUMBERS[..at].iter().all(|other| other.word != row.word), "{} twice", row.word);
            assert!(row.numbers.windows(2).all(|pair| pair[0] <= pair[1]), "{}", row.word);
            assert!(row.numbers.iter().all(|n| (30.0..=98.0).contains(n)), "{}", row.word);
        }
        assert_eq!(curve_number("gravel-yard").map(|row| row.on(SoilGroup::C)), Some(89.0));
        assert_eq!(curve_number("moon"), None);
    }
}

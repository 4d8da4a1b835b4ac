//! Least thickness of buried steel tanks by capacity, as city codes of the United States print it.
//!
//! The codes contradict each other: one city's smallest tank is one or two gauges heavier than another's. The buyer's
//! copy of the product standard governs where one is asked for; its table was not seen and is not given here. A wall that
//! follows such a table still has to bear what presses from outside: see `cylinder-collapse`.

use crate::page::Source;
use crate::sources::{CHICAGO_TANKS, FLORAL_PARK_TANKS, NYC_TANKS, RYE_TANKS};
use crate::vessel::materials::{self, Plate};
use stillrise_units::catalog::GAL;
use stillrise_units::{Typed, Volume};

/// A range of capacities and its plate.
#[derive(Debug, PartialEq)]
pub struct Band {
    /// Up to this capacity, US gallons.
    pub up_to_gal: f64,
    /// The plate of the shell, as in [`materials::PLATES`].
    pub shell: &'static str,
    /// The plate of the heads where they are to be heavier.
    pub heads: Option<&'static str>,
}

/// The table of one code.
#[derive(Debug, PartialEq)]
pub struct ThicknessCode {
    /// The word in files.
    pub word: &'static str,
    /// What to know of it.
    pub note: &'static str,
    /// Its ranges, the smallest first.
    pub bands: &'static [Band],
    /// Where it is printed.
    pub source: &'static Source,
}

macro_rules! bands {
    ($($up_to:literal $shell:literal $(heads $heads:literal)?;)*) => {
        &[$(Band { up_to_gal: $up_to, shell: $shell, heads: $crate::first!($($heads)?) }),*]
    };
}

/// The codes.
pub static CODES: &[ThicknessCode] = &[
    ThicknessCode {
        word: "chicago",
        note: "With inner bracing 12,001 to 30,000 gal may be 1/4 in.",
        bands: bands! {
            285.0 "16 ga"; 560.0 "14 ga"; 1100.0 "12 ga"; 4000.0 "7 ga"; 12000.0 "1/4 in"; 20000.0 "5/16 in";
        },
        source: &CHICAGO_TANKS,
    },
    ThicknessCode {
        word: "floral park",
        note: "One gauge heavier than the first in its small sizes.",
        bands: bands! { 285.0 "14 ga"; 560.0 "12 ga"; 1100.0 "10 ga"; 4000.0 "3/16 in"; 12000.0 "1/4 in"; },
        source: &FLORAL_PARK_TANKS,
    },
    ThicknessCode {
        word: "rye",
        note: "The heaviest; heads heavier than the shell above 2,000 gal.",
        bands: bands! {
            275.0 "12 ga"; 1080.0 "3/16 in"; 2000.0 "1/4 in"; 5000.0 "1/4 in" heads "5/16 in";
            10000.0 "5/16 in" heads "3/8 in";
        },
        source: &RYE_TANKS,
    },
    ThicknessCode {
        word: "new york",
        note: "Oil tanks within buildings, small ones only.",
        bands: bands! { 60.0 "14 ga"; 275.0 "10 ga"; },
        source: &NYC_TANKS,
    },
];

/// The code of this word.
#[must_use]
pub fn code(word: &str) -> Option<&'static ThicknessCode> {
    CODES.iter().find(|c| c.word == word)
}

impl ThicknessCode {
    /// The range that a capacity falls into; `None` above the largest.
    #[must_use]
    pub fn band(&self, capacity: Volume) -> Option<&'static Band> {
        let gallons = capacity.in_unit(&GAL);
        self.bands.iter().find(|b| gallons <= b.up_to_gal + 1e-9)
    }
    /// The plate of the shell for a capacity.
    #[must_use]
    pub fn shell(&self, capacity: Volume) -> Option<&'static Plate> {
        self.band(capacity).and_then(|b| materials::plate(b.shell))
    }
}

/// The heaviest plate that any code asks for at a capacity, and the code.
#[must_use]
pub fn heaviest(capacity: Volume) -> Option<(&'static ThicknessCode, &'static Plate)> {
    let all = CODES.iter().filter_map(|c| c.shell(capacity).map(|p| (c, p)));
    all.max_by(|a, b| a.1.inches.total_cmp(&b.1.inches))
}

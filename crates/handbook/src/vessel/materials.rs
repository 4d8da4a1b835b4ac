//! Densities of vessel materials, and the sheets and plates that are sold.
//!
//! The densities and most thicknesses are from memory; the weight of a plate follows from the page
//! `plate-weight`. Sheet by gauge is invoiced some 2.5 % heavier than that.

use crate::page::Source;
use crate::sources::{DEFINITION, DENSITY_MEMORY, GAUGE_46_CFR, PLATE_MEMORY, SHEET_GAUGE};
use stillrise_units::catalog::{IN, KG_M3, LB_FT3};
use stillrise_units::{Density, Length, Typed, Unit};

/// A material and its density.
#[derive(Debug, PartialEq)]
pub struct Material {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// The density usual for a weight estimate, in `unit`.
    pub density: f64,
    /// The range met with, in `unit`.
    pub range: (f64, f64),
    /// The unit of both.
    pub unit: &'static Unit,
    /// Where it comes from.
    pub source: &'static Source,
}

impl Material {
    /// The density usual for a weight estimate.
    #[must_use]
    pub fn density(&self) -> Density {
        Density::of(self.density, self.unit)
    }
}

macro_rules! materials {
    ($($word:literal $title:literal $density:literal in $low:literal .. $high:literal $unit:ident;)*) => {
        &[$(Material { word: $word, title: $title, density: $density, range: ($low, $high), unit: &$unit, source: &DENSITY_MEMORY }),*]
    };
}

/// Materials of vessels, internals, foundations and contents.
pub static MATERIALS: &[Material] = materials! {
    "steel" "Carbon steel" 7850.0 in 7850.0 .. 7850.0 KG_M3;
    "stainless" "Stainless steel 304 or 316" 8000.0 in 7900.0 .. 8000.0 KG_M3;
    "aluminium" "Aluminium" 2700.0 in 2650.0 .. 2750.0 KG_M3;
    "frp" "Glass-fibre reinforced plastic" 1800.0 in 1700.0 .. 1900.0 KG_M3;
    "hdpe" "High-density polyethylene (floats)" 955.0 in 941.0 .. 965.0 KG_M3;
    "pp" "Polypropylene (floats)" 905.0 in 900.0 .. 910.0 KG_M3;
    "pvc" "Polyvinyl chloride" 1380.0 in 1350.0 .. 1450.0 KG_M3;
    "concrete" "Reinforced concrete" 150.0 in 145.0 .. 150.0 LB_FT3;
    "sludge" "Wet sludge" 70.0 in 65.0 .. 75.0 LB_FT3;
};

/// A thickness of steel that is sold.
#[derive(Debug, PartialEq)]
pub struct Plate {
    /// Its name in the trade.
    pub word: &'static str,
    /// Thickness in inches.
    pub inches: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

impl Plate {
    /// The thickness.
    #[must_use]
    pub fn thickness(&self) -> Length {
        Length::of(self.inches, &IN)
    }
}

macro_rules! plates {
    ($($word:literal $inches:literal $source:ident;)*) => {
        &[$(Plate { word: $word, inches: $inches, source: &$source }),*]
    };
}

/// Sheets and plates of steel, thin to thick.
pub static PLATES: &[Plate] = plates! {
    "16 ga" 0.0598 SHEET_GAUGE;
    "14 ga" 0.0747 GAUGE_46_CFR;
    "12 ga" 0.1046 GAUGE_46_CFR;
    "11 ga" 0.1196 SHEET_GAUGE;
    "10 ga" 0.1345 PLATE_MEMORY;
    "7 ga" 0.1793 GAUGE_46_CFR;
    "3/16 in" 0.1875 DEFINITION;
    "1/4 in" 0.25 DEFINITION;
    "5/16 in" 0.3125 DEFINITION;
    "3/8 in" 0.375 DEFINITION;
    "1/2 in" 0.5 DEFINITION;
};

/// The material of this word.
#[must_use]
pub fn material(word: &str) -> Option<&'static Material> {
    MATERIALS.iter().find(|m| m.word == word)
}

/// The plate of this name.
#[must_use]
pub fn plate(word: &str) -> Option<&'static Plate> {
    PLATES.iter().find(|p| p.word == word)
}

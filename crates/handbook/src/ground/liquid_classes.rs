//! Classes of liquids by flash point, as electrical and fire codes of the United States sort them.

use crate::page::Source;
use crate::sources::LIQUID_CLASSES;
use stillrise_units::catalog::DEG_F;
use stillrise_units::{Temperature, Typed};

/// One class.
#[derive(Debug, PartialEq)]
pub struct LiquidClass {
    /// Its name.
    pub word: &'static str,
    /// The flash point is at least this, °F; none for the most volatile.
    pub flash_from_f: Option<f64>,
    /// The flash point is below this, °F; none for the least volatile.
    pub flash_below_f: Option<f64>,
    /// The boiling point is at least this, °F, where it decides.
    pub boils_from_f: Option<f64>,
    /// What it means for a separator.
    pub note: &'static str,
    /// Where it is written.
    pub source: &'static Source,
}

impl LiquidClass {
    /// Whether only the boiling point tells it from the next one.
    #[must_use]
    pub fn is_by_boiling_point(&self) -> bool {
        self.flash_from_f.is_none() && self.boils_from_f.is_none()
    }
}

macro_rules! classes {
    ($($word:literal $from:expr, $below:expr, $boils:expr, $note:literal;)*) => {
        &[$(LiquidClass {
            word: $word, flash_from_f: $from, flash_below_f: $below, boils_from_f: $boils, note: $note,
            source: &LIQUID_CLASSES,
        }),*]
    };
}

/// Classes, the most volatile first.
pub static CLASSES: &[LiquidClass] = classes! {
    "IA" None, Some(73.0), None, "boils below 100 °F: its vapour is there at any season";
    "IB" None, Some(73.0), Some(100.0), "gasoline: the inside is explosive at any season";
    "IC" Some(73.0), Some(100.0), None, "explosive in summer";
    "II" Some(100.0), Some(140.0), None, "diesel and kerosene: explosive only where the liquid is warmed, or sprayed";
    "IIIA" Some(140.0), Some(200.0), None, "not explosive at the temperatures of drainage";
    "IIIB" Some(200.0), None, None, "lubricating and transformer oils; not explosive at the temperatures of drainage";
};

/// The class of a liquid by its closed-cup flash point. Where the boiling point is not known, a flash point below 73 °F
/// counts as IA, the severer.
#[must_use]
pub fn class(flash: Temperature, boils: Option<Temperature>) -> Option<&'static LiquidClass> {
    let at = flash.in_unit(&DEG_F);
    if !at.is_finite() {
        return None;
    }
    let boils = boils.map(|b| b.in_unit(&DEG_F));
    let fits = |c: &&LiquidClass| {
        c.flash_from_f.is_none_or(|from| at >= from - 1e-9)
            && c.flash_below_f.is_none_or(|below| at < below - 1e-9)
            && c.boils_from_f.is_none_or(|from| boils.is_some_and(|b| b >= from - 1e-9))
    };
    // The class that asks for a boiling point stands after the one that does not: the last that fits holds.
    CLASSES.iter().rev().find(fits)
}

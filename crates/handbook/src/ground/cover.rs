//! Least cover of a buried unit, by traffic; impact of wheels by cover; bedding and distances.
//!
//! Written for tanks of fuel and taken over for separators as common practice. Frost asks for more where the water in the
//! unit stands still: compare its level with the site's frost depth.

use crate::page::Source;
use crate::sources::{AASHTO_OVERLAP, CCR_5597, KELLOGG_CODE, REDWOOD_CITY};
use stillrise_units::catalog::{FT, IN};
use stillrise_units::{Length, Typed};

/// What crosses the ground above a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Traffic {
    /// Nobody drives there.
    None,
    /// Vehicles cross, or are likely to.
    Vehicles,
}

/// What lies on the earth above the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Paving {
    /// Nothing.
    None,
    /// Reinforced concrete of this many inches.
    Concrete(f64),
    /// Asphaltic concrete of this many inches.
    Asphalt(f64),
}

/// One permitted cover.
#[derive(Debug, PartialEq)]
pub struct Cover {
    /// The word in files.
    pub word: &'static str,
    /// The traffic that it is for.
    pub traffic: Traffic,
    /// Least earth, in inches.
    pub earth_in: f64,
    /// Paving on top of it.
    pub paving: Paving,
    /// Where it is written.
    pub source: &'static Source,
}

impl Cover {
    /// Least earth above the unit.
    #[must_use]
    pub fn earth(&self) -> Length {
        Length::of(self.earth_in, &IN)
    }
    /// Least paving on the earth; nothing where none is asked for.
    #[must_use]
    pub fn paving(&self) -> Length {
        match self.paving {
            Paving::None => Length::from_si(0.0),
            Paving::Concrete(inches) | Paving::Asphalt(inches) => Length::of(inches, &IN),
        }
    }
}

macro_rules! covers {
    ($($word:literal $traffic:ident $earth:literal $paving:expr, $source:ident;)*) => {
        &[$(Cover { word: $word, traffic: Traffic::$traffic, earth_in: $earth, paving: $paving, source: &$source }),*]
    };
}

/// Permitted covers; any one of a traffic class will do under the code that names it.
pub static COVERS: &[Cover] = covers! {
    "earth" None 24.0 Paving::None, CCR_5597;
    "slab" None 12.0 Paving::Concrete(4.0), CCR_5597;
    "slab of five" None 12.0 Paving::Concrete(5.0), KELLOGG_CODE;
    "traffic earth" Vehicles 36.0 Paving::None, CCR_5597;
    "traffic concrete" Vehicles 18.0 Paving::Concrete(6.0), CCR_5597;
    "traffic asphalt" Vehicles 18.0 Paving::Asphalt(8.0), REDWOOD_CITY;
};

/// How far paving that protects a unit reaches beyond its outline, in inches (fire code of Redwood City, city code of
/// Kellogg).
pub const PAVING_BEYOND_IN: f64 = 12.0;

/// Least bedding of clean sand, earth or gravel all round, in inches (8 CCR 5597).
pub const BEDDING_IN: f64 = 6.0;

/// Impact of wheels for a range of cover.
#[derive(Debug, PartialEq)]
pub struct Impact {
    /// The range begins above this cover, in feet.
    pub above_ft: f64,
    /// Share added to the wheel's load.
    pub share: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

/// Impact by cover, from memory: 30 % up to 1 ft, then 20 % and 10 %, none from 3 ft.
pub static IMPACTS: &[Impact] = &[
    Impact { above_ft: 0.0, share: 0.3, source: &AASHTO_OVERLAP },
    Impact { above_ft: 1.0, share: 0.2, source: &AASHTO_OVERLAP },
    Impact { above_ft: 2.0, share: 0.1, source: &AASHTO_OVERLAP },
    Impact { above_ft: 3.0, share: 0.0, source: &AASHTO_OVERLAP },
];

/// The share added for impact at a cover. On the border of two ranges the larger holds, so that 10 % is still added at
/// exactly 3 ft.
#[must_use]
pub fn impact(cover: Length) -> f64 {
    let feet = cover.in_unit(&FT);
    IMPACTS.iter().rev().find(|i| feet > i.above_ft + 1e-9).map_or(IMPACTS[0].share, |i| i.share)
}

/// The covers permitted for a traffic class.
pub fn permitted(traffic: Traffic) -> impl Iterator<Item = &'static Cover> {
    COVERS.iter().filter(move |c| c.traffic == traffic)
}

//! Densities of backfill, and what ground is presumed to bear where nobody has tested it.

use crate::page::Source;
use crate::sources::{BUOYANCY_PERMIT, IBC_1806, SEPTIC_ANCHOR_SHEET, SUBMERGED_MEMORY};
use crate::spread::Spread;
use stillrise_units::catalog::{LB_FT3, PSF};
use stillrise_units::{Density, Pressure, Ratio, Typed};

/// A backfill and what it weighs.
#[derive(Debug, PartialEq)]
pub struct Backfill {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// Density as it lies moist above the groundwater.
    pub moist: Spread,
    /// Density saturated with water.
    pub saturated: Spread,
}

/// Backfills, with the densities that published calculations use.
pub static BACKFILLS: &[Backfill] = &[
    Backfill {
        word: "permit",
        title: "Backfill as in a permit calculation",
        moist: Spread::new(120.0, 120.0, 120.0, &LB_FT3, &BUOYANCY_PERMIT),
        saturated: Spread::new(120.0, 120.0, 120.0, &LB_FT3, &BUOYANCY_PERMIT)
            .noted("57.6 lb/ft3 submerged in fresh water"),
    },
    Backfill {
        word: "tank practice",
        title: "Backfill as in recommended practice for tanks",
        moist: Spread::new(100.0, 110.0, 120.0, &LB_FT3, &SUBMERGED_MEMORY),
        saturated: Spread::new(120.0, 122.4, 125.0, &LB_FT3, &SUBMERGED_MEMORY)
            .noted("60 lb/ft3 submerged in fresh water"),
    },
    Backfill {
        word: "septic sheet",
        title: "Soil as in a county worksheet on septic tanks",
        moist: Spread::new(100.0, 100.0, 100.0, &LB_FT3, &SEPTIC_ANCHOR_SHEET),
        saturated: Spread::new(100.0, 100.0, 100.0, &LB_FT3, &SEPTIC_ANCHOR_SHEET)
            .noted("the worksheet does not take the displaced water off the soil"),
    },
];

/// A class of ground and what it is presumed to bear.
#[derive(Debug, PartialEq)]
pub struct Ground {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// Pressure under a foundation, in psf.
    pub bearing_psf: f64,
    /// Pressure from the side for each foot of depth, in psf.
    pub lateral_psf_ft: f64,
    /// Friction on the underside; none where cohesion counts instead.
    pub friction: Option<f64>,
    /// Where it is written.
    pub source: &'static Source,
}

impl Ground {
    /// The pressure presumed allowable under a foundation.
    #[must_use]
    pub fn bearing(&self) -> Pressure {
        Pressure::of(self.bearing_psf, &PSF)
    }
    /// The coefficient of friction against sliding.
    #[must_use]
    pub fn friction(&self) -> Option<Ratio> {
        self.friction.map(Ratio::from_si)
    }
}

macro_rules! grounds {
    ($($word:literal $title:literal $bearing:literal $lateral:literal $friction:expr;)*) => {
        &[$(Ground {
            word: $word, title: $title, bearing_psf: $bearing, lateral_psf_ft: $lateral, friction: $friction,
            source: &IBC_1806,
        }),*]
    };
}

/// Ground by class, the weakest first. Mud, organic silt and clay, peat and unprepared fill bear nothing without tests.
pub static GROUNDS: &[Ground] = grounds! {
    "clay" "Clay, silt (130 psf of cohesion against sliding)" 1500.0 100.0 None;
    "sand" "Sand, silty sand, clayey sand, silty gravel" 2000.0 150.0 Some(0.25);
    "gravel" "Sandy gravel, gravel" 3000.0 200.0 Some(0.35);
    "sedimentary rock" "Sedimentary and foliated rock" 4000.0 400.0 Some(0.35);
    "crystalline rock" "Crystalline bedrock" 12000.0 1200.0 Some(0.70);
};

/// The backfill of this word.
#[must_use]
pub fn backfill(word: &str) -> Option<&'static Backfill> {
    BACKFILLS.iter().find(|b| b.word == word)
}

/// The ground of this word.
#[must_use]
pub fn ground(word: &str) -> Option<&'static Ground> {
    GROUNDS.iter().find(|g| g.word == word)
}

impl Backfill {
    /// Density moist and saturated, as usually taken.
    #[must_use]
    pub fn densities(&self) -> (Density, Density) {
        (Density::from_si(self.moist.typical_si()), Density::from_si(self.saturated.typical_si()))
    }
}

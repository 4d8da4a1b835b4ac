//! Stiffness and strength of the metals of vessels, for a first design.

use crate::page::Source;
use crate::sources::STEEL_MEMORY;
use stillrise_units::catalog::PSI;
use stillrise_units::{Pressure, Typed};

/// Which metal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Metal {
    /// Carbon steel, which rusts in the ground.
    Carbon,
    /// Stainless steel.
    Stainless,
}

/// A metal.
#[derive(Debug, PartialEq)]
pub struct Strength {
    /// Which it is.
    pub metal: Metal,
    /// The word in files, as in [`crate::vessel::materials::MATERIALS`].
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// Modulus of elasticity, psi.
    pub modulus_psi: f64,
    /// Poisson's ratio.
    pub poisson: f64,
    /// Yield stress, psi.
    pub yield_psi: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

/// Share of the yield that a plate may bend to in a first design, from memory; codes differ.
pub const ALLOWABLE_SHARE: f64 = 0.6;

/// Metals, from memory: a mill certificate or the standard of the plate governs.
pub static STRENGTHS: &[Strength] = &[
    Strength {
        metal: Metal::Carbon,
        word: "steel",
        title: "Structural carbon steel, yield 36 ksi",
        modulus_psi: 29.0e6,
        poisson: 0.3,
        yield_psi: 36_000.0,
        source: &STEEL_MEMORY,
    },
    Strength {
        metal: Metal::Stainless,
        word: "stainless",
        title: "Stainless steel 304 or 316, yield 30 ksi",
        modulus_psi: 28.0e6,
        poisson: 0.3,
        yield_psi: 30_000.0,
        source: &STEEL_MEMORY,
    },
];

impl Strength {
    /// The modulus of elasticity.
    #[must_use]
    pub fn modulus(&self) -> Pressure {
        Pressure::of(self.modulus_psi, &PSI)
    }
    /// The stress to which a plate may bend in a first design.
    #[must_use]
    pub fn allowable(&self) -> Pressure {
        Pressure::of(ALLOWABLE_SHARE * self.yield_psi, &PSI)
    }
}

/// The metal of this word.
#[must_use]
pub fn strength(word: &str) -> Option<&'static Strength> {
    STRENGTHS.iter().find(|s| s.word == word)
}

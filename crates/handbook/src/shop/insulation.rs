//! Insulation and surfaces: what holds heat back.

use crate::page::Source;
use crate::sources::{ASHRAE_INSULATION, INSULATION_MEMORY, WAC_SURFACES};

/// A kind of insulation.
#[derive(Debug, PartialEq)]
pub struct Insulation {
    /// The word in files.
    pub word: &'static str,
    /// Title, with the figure as its source prints it.
    pub title: &'static str,
    /// Conductivity in W/(m K).
    pub conductivity: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

/// Kinds of insulation. The first is the safer for glass fibre.
pub static INSULATIONS: &[Insulation] = &[
    Insulation {
        word: "glass fibre",
        title: "Glass fibre, 0.30 Btu in/(h ft2 °F)",
        conductivity: 0.0433,
        source: &ASHRAE_INSULATION,
    },
    Insulation {
        word: "glass fibre dry",
        title: "Glass fibre board, dry, 0.26 Btu in/(h ft2 °F)",
        conductivity: 0.0375,
        source: &INSULATION_MEMORY,
    },
];

/// Resistance of a surface to the air.
#[derive(Debug, PartialEq)]
pub struct Surface {
    /// The word in files.
    pub word: &'static str,
    /// Title, with the figure as its source prints it, in h ft2 °F/Btu.
    pub title: &'static str,
    /// Resistance in m2 K/W.
    pub resistance: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

/// Surfaces.
pub static SURFACES: &[Surface] = &[
    Surface { word: "outside", title: "Outside, any, 0.17", resistance: 0.0299, source: &WAC_SURFACES },
    Surface { word: "inside up", title: "Still air, heat flowing up, 0.61", resistance: 0.1074, source: &WAC_SURFACES },
    Surface { word: "inside wall", title: "Still air, upright, 0.68", resistance: 0.1198, source: &WAC_SURFACES },
    Surface {
        word: "inside down",
        title: "Still air, heat flowing down, 0.92",
        resistance: 0.1620,
        source: &WAC_SURFACES,
    },
];

/// The insulation of this word.
#[must_use]
pub fn insulation(word: &str) -> Option<&'static Insulation> {
    INSULATIONS.iter().find(|i| i.word == word)
}

/// The surface of this word.
#[must_use]
pub fn surface(word: &str) -> Option<&'static Surface> {
    SURFACES.iter().find(|s| s.word == word)
}

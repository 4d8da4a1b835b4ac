//! Factors against flotation that are asked for, and the ways in which soil is counted.
//!
//! None is *the* factor: the authority or the client names it. What the factor multiplies differs as well, so print it
//! with the method of the soil.

use crate::page::Source;
use crate::sources::{
    BUOYANCY_PERMIT, COMMON_PRACTICE, FEMA_259, HEAD_WEDGE, JUDGEMENT, MANHOLE_FLOTATION, SEPTIC_ANCHOR_SHEET,
    TANK_ANCHOR_CHART,
};

/// One factor.
#[derive(Debug, PartialEq)]
pub struct FlotationFactor {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// What holds the unit down over what lifts it, at least.
    pub factor: f64,
    /// For what it is meant, and what it counts.
    pub note: &'static str,
    /// Where it is written.
    pub source: &'static Source,
}

/// All factors, the lowest first.
pub static FACTORS: &[FlotationFactor] = &[
    FlotationFactor {
        word: "tank permit",
        title: "Permit calculation of an underground tank",
        factor: 1.2,
        note: "Empty, water at the top of the slab at grade; soil and concrete submerged; wedges beside the tank counted.",
        source: &BUOYANCY_PERMIT,
    },
    FlotationFactor {
        word: "tank chart",
        title: "Chart for the anchoring of underground tanks",
        factor: 1.2,
        note: "Empty, water to grade.",
        source: &TANK_ANCHOR_CHART,
    },
    FlotationFactor {
        word: "flood agency",
        title: "Flood agency, tanks",
        factor: 1.3,
        note: "Empty tank under flood water; the factor multiplies the uplift, then the tank's weight comes off.",
        source: &FEMA_259,
    },
    FlotationFactor {
        word: "septic sheet",
        title: "County worksheet on tanks in saturated ground",
        factor: 1.5,
        note: "The factor multiplies the displaced water; soil above the tank counts at 100 lb/ft3.",
        source: &SEPTIC_ANCHOR_SHEET,
    },
    FlotationFactor {
        word: "manhole",
        title: "Manholes of precast concrete, as one project asked",
        factor: 2.0,
        note: "Friction of the soil along the wall is counted there, which the prism leaves out.",
        source: &MANHOLE_FLOTATION,
    },
];

/// A way in which soil is counted.
#[derive(Debug, PartialEq)]
pub struct SoilMethod {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// Whether the soil straight above counts.
    pub prism: bool,
    /// Lean from upright of the planes beside it, if any, in degrees, and whether they stand at the heads too.
    pub wedge: Option<Wedge>,
    /// What counts and what to know.
    pub note: &'static str,
    /// Where it is used.
    pub source: &'static Source,
}

/// Planes that lean outward beside a lying cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wedge {
    /// Lean from upright, in degrees.
    pub lean: f64,
    /// Whether their foot is the widest line of the tank; else its underside.
    pub from_widest: bool,
    /// Whether they stand at the heads too.
    pub at_heads: bool,
}

/// Ways to count what holds a unit down, from the least to the most.
pub static METHODS: &[SoilMethod] = &[
    SoilMethod {
        word: "no soil",
        title: "Unit and concrete alone",
        prism: false,
        wedge: None,
        note: "While the pit is open, or where the cover may be dug away.",
        source: &JUDGEMENT,
    },
    SoilMethod {
        word: "prism",
        title: "Straight prism",
        prism: true,
        wedge: None,
        note: "Soil straight above the unit and above anchors tied to it, between upright planes.",
        source: &COMMON_PRACTICE,
    },
    SoilMethod {
        word: "wedge quarter",
        title: "Planes that lean by a quarter of their height",
        prism: true,
        // atan(1/4), in degrees.
        wedge: Some(Wedge { lean: 14.036_243_467_926_479, from_widest: false, at_heads: false }),
        note: "From the underside of the tank, along both sides (14 degrees from upright).",
        source: &BUOYANCY_PERMIT,
    },
    SoilMethod {
        word: "wedge thirty",
        title: "Planes that lean by 30 degrees",
        prism: true,
        wedge: Some(Wedge { lean: 30.0, from_widest: true, at_heads: true }),
        note: "From the widest line of the tank, along sides and heads.",
        source: &HEAD_WEDGE,
    },
];

/// The factor of this word.
#[must_use]
pub fn factor(word: &str) -> Option<&'static FlotationFactor> {
    FACTORS.iter().find(|f| f.word == word)
}

/// The method of this word.
#[must_use]
pub fn method(word: &str) -> Option<&'static SoilMethod> {
    METHODS.iter().find(|m| m.word == word)
}

//! Sizes of deadmen and slabs by the diameter of the tank, as installation manuals of plastic tanks print them, and rules
//! of how they are laid. They are a start: what they weigh still has to reach the factor, see `anchorage-needed`.

use crate::page::Source;
use crate::sources::{COMMON_PRACTICE, TANK_ANCHOR_MANUAL};
use stillrise_units::catalog::{FT, IN};
use stillrise_units::{Length, Typed};

/// Anchors of one diameter.
#[derive(Debug, PartialEq)]
pub struct AnchorSize {
    /// Up to this diameter of the tank, ft.
    pub up_to_ft: f64,
    /// Width of each of two deadmen, in.
    pub deadman_width_in: f64,
    /// Depth of each, in.
    pub deadman_depth_in: f64,
    /// Width of a slab below the tank instead, ft; at least as long as the tank.
    pub slab_width_ft: f64,
    /// Where it is printed.
    pub source: &'static Source,
}

impl AnchorSize {
    /// Width and depth of each of two deadmen.
    #[must_use]
    pub fn deadman(&self) -> (Length, Length) {
        (Length::of(self.deadman_width_in, &IN), Length::of(self.deadman_depth_in, &IN))
    }
    /// Width of a slab instead.
    #[must_use]
    pub fn slab_width(&self) -> Length {
        Length::of(self.slab_width_ft, &FT)
    }
}

macro_rules! sizes {
    ($($up_to:literal $width:literal x $depth:literal slab $slab:literal;)*) => {
        &[$(AnchorSize {
            up_to_ft: $up_to, deadman_width_in: $width, deadman_depth_in: $depth, slab_width_ft: $slab,
            source: &TANK_ANCHOR_MANUAL,
        }),*]
    };
}

/// Sizes, the smallest first.
pub static SIZES: &[AnchorSize] = sizes! {
    4.0 6.0 x 6.0 slab 6.0;
    6.0 12.0 x 12.0 slab 9.5;
    8.0 12.0 x 12.0 slab 11.0;
    10.0 18.0 x 12.0 slab 13.5;
    12.0 36.0 x 8.0 slab 15.0;
};

/// Least thickness of a slab below the tank, in inches.
pub const SLAB_IN: f64 = 8.0;

/// Bedding between slab and tank, in inches.
pub const BEDDING_ON_SLAB_IN: f64 = 12.0;

/// A rule of how anchors are laid.
#[derive(Debug, PartialEq)]
pub struct AnchorRule {
    /// The word in files.
    pub word: &'static str,
    /// The rule, one sentence.
    pub text: &'static str,
    /// Where it is written.
    pub source: &'static Source,
}

macro_rules! rules {
    ($($word:literal $text:literal $source:ident;)*) => {
        &[$(AnchorRule { word: $word, text: $text, source: &$source }),*]
    };
}

/// How deadmen, slabs and straps are laid.
pub static RULES: &[AnchorRule] = rules! {
    "deadmen" "Deadmen lie parallel to the tank, their inner edge at or outside its outline." TANK_ANCHOR_MANUAL;
    "between tanks" "Two tanks stand at least two widths of a deadman apart, or share one of double width." TANK_ANCHOR_MANUAL;
    "straps" "Each strap has an anchor point of its own and lies only where the tank is marked for it." TANK_ANCHOR_MANUAL;
    "snug" "Straps are drawn snug and do not dent the shell." TANK_ANCHOR_MANUAL;
    "pads" "On steel an insulating pad lies below each strap." COMMON_PRACTICE;
    "contents" "What the tank holds is never counted: it is emptied for cleaning." COMMON_PRACTICE;
};

/// The size for a diameter; `None` above the largest.
#[must_use]
pub fn size(diameter: Length) -> Option<&'static AnchorSize> {
    let feet = diameter.in_unit(&FT);
    SIZES.iter().find(|s| feet <= s.up_to_ft + 1e-9)
}

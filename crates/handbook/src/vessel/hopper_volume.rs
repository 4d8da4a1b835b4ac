//! Formula: volume of a hopper

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Length, Volume};

formula! {
    /// Rectangular hopper with four flat sides, by the prismoidal formula, exact whatever the proportions.
    ///
    /// Sides steeper than 45 to 60 degrees let sludge slide; only about half of a hopper is usable before
    /// sludge is carried over (both a proposal of this handbook).
    "hopper-volume" "Volume of a hopper"
    fn volume(
        top_length: Length = "L_1" "length at the top" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        top_width: Length = "W_1" "width at the top" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        bottom_length: Length = "L_2" "length at the bottom" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        bottom_width: Length = "W_2" "width at the bottom" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        depth: Length = "h" "depth" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume" [GAL, M3];
    typed { depth / 6.0 * (top_length * top_width + bottom_length * bottom_width + (top_length + bottom_length) * (top_width + bottom_width)) }
    sources [DEFINITION]
    checks [
        "top_length=5 ft, top_width=5 ft, bottom_length=1 ft, bottom_width=1 ft, depth=2 ft" => "20.67 ft3",
            ByHand("2/6 x (25 + 1 + 36); the frustum formula gives the same");
        "top_length=6 ft, top_width=4 ft, bottom_length=2 ft, bottom_width=1 ft, depth=3 ft" => "33.00 ft3",
            ByHand("3/6 x (24 + 2 + 40)");
        "top_length=6 m, top_width=4 m, bottom_length=6 m, bottom_width=4 m, depth=2 m" => "48.000000 m3",
            Limit("equal ends: a box");
        "top_length=6 m, top_width=4 m, bottom_length=0 m, bottom_width=0 m, depth=3 m" => "24.000000 m3",
            Limit("a tip: a third of the box");
        "top_length=6 m, top_width=4 m, bottom_length=6 m, bottom_width=0 m, depth=3 m" => "36.000000 m3",
            Limit("an edge: half of the box");
    ]
}

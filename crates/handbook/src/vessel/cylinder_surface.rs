//! Formula: surface of a liquid in a horizontal cylinder

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::sqrt;
use stillrise_units::{Area, Length};

formula! {
    /// Chord at the level of the liquid times length, heads flat: the plan area that catches what rises.
    ///
    /// It is largest at half depth, and the same as far above as below it.
    "cylinder-surface" "Surface of a liquid in a horizontal cylinder"
    fn area(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        length: Length = "L" "inside length of the shell" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        h: Length = "h" "depth of the liquid" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Area = "A_s" "surface of the liquid" [FT2, M2];
    reduced [d M, length M, h M => M2] { 2.0 * sqrt(h * (d - h)) * length }
    sources [DEFINITION]
    checks [
        "d=10 ft, length=20 ft, h=1 ft" => "120.0000 ft2", ByHand("triangle of 3, 4 and 5 ft: a chord of 6 ft");
        "d=10 ft, length=20 ft, h=2 ft" => "160.0000 ft2", ByHand("triangle of 3, 4 and 5 ft: a chord of 8 ft");
        "d=10 ft, length=20 ft, h=8 ft" => "160.0000 ft2", Limit("as far above half depth as 2 ft lie below it");
        "d=2 m, length=3 m, h=1 m" => "6.000000 m2", Limit("half full: the diameter");
        "d=2 m, length=3 m, h=2 m" => "0.000000 m2", Limit("full to the top line");
        "d=2 m, length=3 m, h=2.1 m" => "outside: result", Limit("no level above the top");
    ]
}

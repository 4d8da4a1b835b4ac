//! Formula: clear width in a horizontal cylinder

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::Length;
use stillrise_units::math::sqrt;

formula! {
    /// Chord of the circle at a height above its lowest line: how wide a pack, a baffle or a surface there can be.
    "cylinder-chord" "Clear width in a horizontal cylinder"
    fn width(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        h: Length = "h" "height above the lowest line" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Length = "b" "clear width" [IN, MM];
    reduced [d M, h M => M] { 2.0 * sqrt(h * (d - h)) }
    sources [DEFINITION]
    checks [
        "d=10 ft, h=1 ft" => "72.00 in", ByHand("triangle of 3, 4 and 5 ft");
        "d=10 ft, h=8 ft" => "96.00 in", ByHand("triangle of 3, 4 and 5 ft");
        "d=2 m, h=1 m" => "2000.0 mm", Limit("half height: the diameter");
        "d=2 m, h=0 m" => "0 mm", Limit("at the lowest line");
        "d=2 m, h=2.1 m" => "outside: result", Limit("nothing above the top");
    ]
}

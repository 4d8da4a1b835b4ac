//! Formula: plate of a box

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length, Ratio};

formula! {
    /// Floor, four walls, and as much of a roof as there is. For its mass, and for what is painted or loses heat.
    "box-shell-area" "Plate of a box"
    fn area(
        length: Length = "L" "length" [FT, M: 0.3 .. 30.0 in 0.0 .. 1000.0];
        width: Length = "W" "width" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        height: Length = "H" "height" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        roof: Ratio = "f" "share of the top that is roofed" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Area = "A" "plate" [FT2, M2];
    reduced [length M, width M, height M, roof ONE => M2] { (1.0 + roof) * length * width + 2.0 * (length + width) * height }
    sources [DEFINITION]
    checks [
        "length=10 ft, width=5 ft, height=6 ft, roof=0 %" => "230.0 ft2", ByHand("50 + 30 x 6");
        "length=10 ft, width=5 ft, height=6 ft, roof=100 %" => "280.0 ft2", ByHand("230 + 50");
        "length=1 m, width=1 m, height=1 m, roof=100 %" => "6.000000 m2", Limit("a cube");
    ]
}

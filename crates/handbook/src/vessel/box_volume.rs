//! Formula: volume of a box

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Length, Volume};

formula! {
    /// Length times width times depth, inside dimensions.
    ///
    /// For the water in a vessel the depth is that of the water.
    "box-volume" "Volume of a box"
    fn volume(
        length: Length = "L" "length" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        width: Length = "W" "width" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        depth: Length = "H" "depth" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume" [GAL, M3];
    typed { length * width * depth }
    sources [DEFINITION]
    checks [
        "length=11 in, width=7 in, depth=3 in" => "1.00000000 gal", Limit("a US gallon is 231 cubic inches");
        "length=10 ft, width=5 ft, depth=6 ft" => "300.000 ft3", ByHand("10 x 5 x 6");
        "length=1 m, width=1 m, depth=1 m" => "1000.0000 L", Limit("a cubic metre is 1,000 litres");
    ]
}

//! Formula: surface of the forebay

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SWMMWW;
use stillrise_units::Area;

/// Share of the area drained: 20 ft2 for each 10 000 ft2.
const SHARE: f64 = 0.002;

formula! {
    /// Least surface of the bay ahead of a separator in which grit settles, from the area that drains to it.
    ///
    /// 20 ft2 for each 10 000 ft2, from memory of the manual; it says nothing of how much grit comes.
    "forebay-area" "Surface of the forebay"
    fn area(
        a: Area = "A" "area drained" [FT2, M2: 10.0 .. 100000.0 in 0.0 .. 1e9];
    ) -> Area = "A_f" "surface of the forebay" [FT2, M2];
    typed { SHARE * a }
    constants [SHARE "k_f"]
    sources [SWMMWW]
    checks [
        "a=25000 ft2" => "50 ft2", ByHand("20 x 2.5");
        "a=10000 ft2" => "20.000 ft2", Limit("ten thousand square feet, by the rule's own numbers");
    ]
}

//! Formula: plan area of the plates

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length, Ratio};

formula! {
    /// Number of plates times the plan of one: the area on which droplets are caught.
    ///
    /// Length and width are those of the shadow a plate throws straight down: its slope length times the
    /// cosine of the inclination. Plates that run from wall to wall throw the plan of the pack.
    "pack-area" "Plan area of the plates"
    fn area(
        count: Ratio = "N" "number of plates" [ONE, ONE: 0.0 .. 500.0 in 0.0 .. 1e6];
        length: Length = "L" "plan length of a plate" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        width: Length = "W" "plan width of a plate" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
    ) -> Area = "A_p" "plan area of the plates" [FT2, M2];
    typed { count * length * width }
    sources [DEFINITION]
    checks [
        "count=20, length=4 ft, width=2 ft" => "160.0 ft2", ByHand("20 x 4 x 2");
        "count=1, length=1 m, width=1 m" => "1.00000000 m2", Limit("one plate");
    ]
}

//! Formula: area of wind-driven rain under a canopy

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::IPC_1106;
use stillrise_units::{Area, Length, Ratio};

formula! {
    /// Horizontal area that the open side of a canopy adds, as plumbing codes count a wall.
    ///
    /// Half of the exposed vertical area, rain falling one horizontal to two vertical. One side
    /// counts, the longest. Codes differ: another model code counts 50 % of one wall and 35 % of two
    /// adjoining ones, a city code 25 %.
    "wind-driven-rain" "Wind-driven rain under a canopy"
    fn area(
        height: Length = "H" "height of the opening" [FT, M: 2.0 .. 8.0 in 0.0 .. 100.0];
        side: Length = "L" "length of the longest open side" [FT, M: 1.0 .. 100.0 in 0.0 .. 2000.0];
        share: Ratio = "s" "share of the vertical area that counts" [PERCENT, PERCENT: 25.0 .. 50.0 in 0.0 .. 100.0];
    ) -> Area = "A" "horizontal area added" [FT2, M2];
    typed { share * height * side }
    sources [IPC_1106]
    checks [
        "height=14.5 ft, side=60 ft, share=50 %" => "435 ft2", ByHand("0.5 x 14.5 x 60; 18 % of a canopy of 40 by 60 ft");
        "height=10 ft, side=30 ft, share=50 %" => "150.000 ft2",
            Limit("rain slanting one to two enters 5 ft deep under an opening 10 ft high, over 30 ft");
        "height=10 ft, side=30 ft, share=0 %" => "0.000 ft2", Limit("vertical rain stays out");
    ]
}

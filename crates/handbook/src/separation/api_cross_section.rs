//! Formula: smallest cross-section of an API basin

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{API_421, NZ_PETROLEUM};
use stillrise_units::{Area, Flow, Velocity};

formula! {
    /// Section of the flow, square to it, that keeps the horizontal velocity.
    ///
    /// All channels together. The least depth and width of a channel often ask for more.
    "api-cross-section" "Smallest cross-section of an API basin"
    fn area(
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        v_h: Velocity = "V_H" "horizontal velocity" [FT_MIN, MM_S: 0.5 .. 15.24 in 1e-6 .. 1e5];
    ) -> Area = "A_c" "cross-section of the flow" [FT2, M2];
    typed { q / v_h }
    sources [API_421]
    checks [
        "q=2.49 m3/h, v_h=13.04 m/h" => "0.191 m2", Published(&NZ_PETROLEUM, "retail site: 0.191 m2");
        "q=46.788 ft3/min, v_h=3 ft/min" => "15.596 ft2", ByHand("350 gpm at 3 ft/min: 46.788 / 3");
        "q=1 m3/s, v_h=1 m/s" => "1 m2", Limit("one by one");
    ]
}

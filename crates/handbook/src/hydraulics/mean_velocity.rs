//! Formula: mean velocity of a flow

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{DEFINITION, R_HYDRAULICS};
use stillrise_units::{Area, Flow, Velocity};

formula! {
    /// Mean velocity through a cross-section, or overflow rate over a surface.
    "mean-velocity" "Mean velocity of a flow"
    fn velocity(
        q: Flow = "Q" "flow" [GPM, L_S: 0.0 .. 1000.0 in 0.0 .. 1e6];
        a: Area = "A" "area that it crosses" [FT2, M2: 1e-4 .. 1000.0 in 0.0 .. 1e6];
    ) -> Velocity = "V" "mean velocity" [FT_S, M_S];
    typed { q / a }
    sources [DEFINITION]
    checks [
        "q=360 cfs, a=69 ft2" => "5.2 ft/s", Published(&R_HYDRAULICS, "trapezoidal channel: 360 cfs through 69 ft2");
        "q=300 gpm, a=28.890 in2" => "3.332 ft/s", ByHand("6 in schedule 40: 0.66840 cfs over pi/4 x 0.5054^2 ft2");
        "q=1 m3/s, a=1 m2" => "1.000000 m/s", Limit("definition");
        "q=1 L/s, a=0 m2" => "outside: result", Limit("nothing passes through no area");
    ]
}

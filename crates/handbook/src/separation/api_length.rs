//! Formula: length of an API basin

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory, Published};
use crate::sources::{API_421, NZ_PETROLEUM};
use stillrise_units::{Length, Ratio, Velocity};

formula! {
    /// Length in which the design droplet rises through the depth, times the factor.
    ///
    /// The length is also to be at least five times the width; the New Zealand retail example does
    /// not keep that rule. Inlet and outlet zones come on top.
    "api-length" "Length of an API basin"
    fn length(
        factor: Ratio = "F" "factor for turbulence and short-circuiting" [ONE, ONE: 1.2 .. 1.75 in 0.0 .. 10.0];
        v_h: Velocity = "V_H" "horizontal velocity" [FT_MIN, MM_S: 0.1 .. 15.24 in 0.0 .. 1e5];
        v_t: Velocity = "V_t" "rise velocity of the design droplet" [FT_MIN, MM_S: 0.01 .. 5.0 in 1e-9 .. 1e5];
        depth: Length = "d" "depth of the water" [FT, M: 0.75 .. 2.44 in 0.0 .. 100.0];
    ) -> Length = "L" "length" [FT, M];
    typed { factor * (v_h / v_t) * depth }
    sources [API_421]
    checks [
        "factor=1.26, v_h=2.21 m/h, v_t=0.870 m/h, depth=0.75 m" => "2.40 m",
            Published(&NZ_PETROLEUM, "retail site, as a second text transcribes it: length 2.40 m");
        "factor=1.26, v_h=2.21 m/h, v_t=0.869 m/h, depth=0.75 m" => "2.41 m" within 3e-3 "the source rounds the area first",
            Published(&NZ_PETROLEUM, "retail site: length 2.41 m");
        "factor=1.4928, v_h=1.9495 ft/min, v_t=0.21021 ft/min, depth=3 ft" => "41.533 ft" within 2e-5 "inputs are rounded to five digits",
            ByHand("350 gpm in 8 ft by 3 ft: 1.4928 x 9.2742 x 3");
        "factor=1.65, v_h=0.5 ft/min, v_t=0.0333333333 ft/min, depth=1 ft" => "24.75 ft",
            Memory("a manual of Washington State: L = 24.75 d");
        "factor=1, v_h=15 mm/s, v_t=1 mm/s, depth=1 m" => "15 m", Limit("without a factor the droplet just reaches the surface");
    ]
}

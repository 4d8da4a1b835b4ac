//! Formula: surface of an API basin

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{API_421, NZ_PETROLEUM};
use stillrise_units::{Area, Flow, Ratio, Velocity};

formula! {
    /// Least surface of the water: flow over rise velocity, times the factor.
    ///
    /// The same as length times width of all channels when the flow fills them at `V_H`.
    "api-area" "Surface of an API basin"
    fn area(
        factor: Ratio = "F" "factor for turbulence and short-circuiting" [ONE, ONE: 1.2 .. 1.75 in 0.0 .. 10.0];
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        v_t: Velocity = "V_t" "rise velocity of the design droplet" [FT_MIN, MM_S: 0.01 .. 5.0 in 1e-9 .. 1e5];
    ) -> Area = "A_H" "surface" [FT2, M2];
    typed { factor * q / v_t }
    sources [API_421]
    checks [
        "factor=1.26, q=2.49 m3/h, v_t=0.869 m/h" => "3.61 m2", Published(&NZ_PETROLEUM, "retail site: 3.61 m2");
        "factor=1.26, q=2.490 m3/h, v_t=0.87010 m/h" => "3.606 m2", ByHand("1.26 x 2.490 / 0.8701");
        "factor=1.4928, q=46.788 ft3/min, v_t=0.21021 ft/min" => "332.27 ft2" within 3e-5 "inputs are rounded to five digits",
            ByHand("350 gpm: the same as 41.533 ft by 8 ft");
        "factor=1, q=1 L/s, v_t=1 mm/s" => "1 m2", Limit("surface loading equals rise velocity");
    ]
}

//! Formula: volume median of a number median

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HATCH_CHOATE;
use stillrise_units::math::{exp, ln};
use stillrise_units::{Length, Ratio};

formula! {
    /// Volume median of log-normal droplets whose number median is known.
    ///
    /// Counting droplets and weighing oil are two things: at a spread of 2 the volume median is four times the
    /// number median, at 3 thirty-seven times. A number median with a wide spread says next to nothing about
    /// where the oil is.
    "hatch-choate" "Volume median of a number median"
    fn diameter(
        number: Length = "d_n" "number median" [UM, UM: 1.0 .. 500.0 in 0.001 .. 1e6];
        sg: Ratio = "s_g" "geometric standard deviation" [ONE, ONE: 1.0 .. 2.5 in 1.0 .. 20.0];
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [number UM, sg ONE => UM] { number * exp(3.0 * ln(sg) * ln(sg)) }
    sources [HATCH_CHOATE]
    checks [
        "number=10 um, sg=1" => "10 um", Limit("all droplets of one size");
        "number=10 um, sg=2" => "42.26 um", ByHand("e^(3 x 0.693147^2) = e^1.441359 = 4.22643");
        "number=10 um, sg=3" => "373.7 um", ByHand("e^(3 x 1.098612^2) = e^3.620846 = 37.3692");
    ]
}

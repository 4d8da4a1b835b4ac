//! Formula: stress in a flat round head

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CIRCULAR_PLATES;
use crate::{choice, formula};
use stillrise_units::{Length, Pressure, Ratio};

choice! {
    /// How the rim of a round plate is held.
    RimHold {
        /// welded to something stiffer, so that it cannot turn; greatest at the rim
        Fixed "fixed",
        /// free to turn; greatest in the middle
        Supported "supported",
    }
}

formula! {
    /// Greatest bending stress of a round plate under even pressure.
    ///
    /// A head of a tank lies between the two: take the larger, the supported one. Large flat heads need stiffeners or
    /// dishing: a head of 96 in and 1/4 in thick would reach 110 ksi under 4 psi.
    "flat-head-stress" "Stress in a flat round head"
    fn stress(
        p: Pressure = "p" "pressure on the plate" [PSI, KPA: 0.0 .. 100.0 in 0.0 .. 1e6];
        r: Length = "R" "radius of the plate" [IN, M: 0.1 .. 2.0 in 0.001 .. 100.0];
        t: Length = "t" "thickness" [IN, MM: 1.0 .. 50.0 in 0.001 .. 1000.0];
        nu: Ratio = "nu" "Poisson's ratio" [ONE, ONE: 0.25 .. 0.4 in 0.0 .. 0.5];
        hold: RimHold = "hold" "how the rim is held";
    ) -> Pressure = "sigma" "greatest bending stress" [PSI, KPA];
    reduced [p PA, r M, t M, nu ONE => PA] {
        if hold == RimHold::Fixed { 0.75 * p * r * r / (t * t) } else { 0.375 * (3.0 + nu) * p * r * r / (t * t) }
    }
    sources [CIRCULAR_PLATES]
    checks [
        "p=1 psi, r=10 in, t=1 in, nu=0.3, hold=supported" => "123.75 psi", ByHand("3/8 x 3.3 x 100");
        "p=4 psi, r=48 in, t=0.25 in, nu=0.3, hold=fixed" => "110592 psi", ByHand("0.75 x 4 x 2,304 / 0.0625");
        "p=1 kPa, r=1 m, t=100 mm, nu=0, hold=supported" => "112.5000 kPa", Limit("without Poisson's ratio 9/8 p R2/t2, half as much again as fixed");
    ]
}

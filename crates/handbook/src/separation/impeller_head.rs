//! Formula: head of a radial impeller

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HEAD_COEFFICIENT;
use core::f64::consts::PI;
use stillrise_units::{G, Length, Ratio, ShearRate};

formula! {
    /// Head from the tip speed of an impeller: the definition of the head coefficient, turned round.
    ///
    /// The coefficient is some 0.5 at the best point of a radial impeller, less at full flow and more near closed; an estimate
    /// where neither power nor head is stated.
    "impeller-head" "Head of a radial impeller"
    fn head(
        n: ShearRate = "n" "speed of rotation, revolutions per time" [RPM, RPM: 300.0 .. 4000.0 in 1.0 .. 100000.0];
        d: Length = "D" "diameter of the impeller" [IN, MM: 50.0 .. 600.0 in 1.0 .. 10000.0];
        psi: Ratio = "psi" "head coefficient" [ONE, ONE: 0.3 .. 0.7 in 0.01 .. 1.5];
    ) -> Length = "H" "head" [FT, M];
    typed { psi * (PI * n * d) * (PI * n * d) / G }
    sources [HEAD_COEFFICIENT]
    checks [
        "n=60 rpm, d=1 m, psi=1" => "1.0064 m", Limit("a tip speed of pi m/s: pi squared over 9.80665");
        "n=1750 rpm, d=8 in, psi=0.5" => "17.675 m", ByHand("tip speed 18.61917 m/s, in Python; 0.5 x 346.6736 / 9.80665");
    ]
}

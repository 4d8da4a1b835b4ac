//! Formula: diameter of a radial impeller from its head

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HEAD_COEFFICIENT;
use core::f64::consts::PI;
use stillrise_units::math::sqrt;
use stillrise_units::{Length, Ratio, ShearRate};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = stillrise_units::G.value;

formula! {
    /// Diameter of an impeller of a head and a speed of rotation, by the definition of the head coefficient.
    "impeller-diameter" "Diameter of a radial impeller from its head"
    fn diameter(
        h: Length = "H" "head" [FT, M: 0.5 .. 100.0 in 1e-3 .. 10000.0];
        n: ShearRate = "n" "speed of rotation, revolutions per time" [RPM, RPM: 300.0 .. 4000.0 in 1.0 .. 100000.0];
        psi: Ratio = "psi" "head coefficient" [ONE, ONE: 0.3 .. 0.7 in 0.01 .. 1.5];
    ) -> Length = "D" "diameter of the impeller" [IN, MM];
    reduced [h M, n PER_S, psi ONE => M] { sqrt(GRAVITY * h / psi) / (PI * n) }
    constants [GRAVITY "g"]
    sources [HEAD_COEFFICIENT]
    checks [
        "h=1.00642 m, n=60 rpm, psi=1" => "1.0000 m", Limit("a tip speed of pi m/s at one turn a second");
        "h=20 ft, n=3450 rpm, psi=0.5" => "60.531 mm", ByHand("sqrt(9.80665 x 6.096 / 0.5) / (pi x 57.5), in Python");
    ]
}

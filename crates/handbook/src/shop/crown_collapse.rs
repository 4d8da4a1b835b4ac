//! Formula: pressure at which the crown of a dished head collapses from outside

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::SPHERE_COLLAPSE;
use stillrise_units::{Length, Pressure};

/// Coefficient of the sphere, from memory: what tests reach, a third of the perfect sphere's 1.21.
const SPHERE: f64 = 0.365;

formula! {
    /// Collapse of the round part of a dished head, taken as part of a sphere.
    ///
    /// The crown of a torispherical head is as round as the shell's diameter, that of a 2:1 ellipsoidal head as 0.9 of
    /// it. Take a factor on top, as for the shell.
    "crown-collapse" "Pressure at which the crown of a dished head collapses"
    fn pressure(
        e: Pressure = "E" "modulus of elasticity" [PSI, KPA: 5e6 .. 2.2e8 in 1.0 .. 1e9];
        t: Length = "t" "thickness of the head" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        r: Length = "R_c" "radius of the crown" [IN, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
    ) -> Pressure = "p_c" "pressure of collapse" [PSI, KPA];
    typed { SPHERE * e * t * t / (r * r) }
    constants [SPHERE "k"]
    sources [SPHERE_COLLAPSE]
    checks [
        "e=29000000 psi, t=0.25 in, r=96 in" => "72 psi", Memory("0.365 x 29e6 x (0.25/96)^2");
        "e=200000000 kPa, t=10 mm, r=1 m" => "7300 kPa", ByHand("0.365 x 2e8 x 1e-4");
        "e=200000000 kPa, t=5 mm, r=1 m" => "1825.000 kPa", Limit("half the thickness keeps a quarter of 7,300 kPa");
    ]
}

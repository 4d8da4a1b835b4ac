//! Formula: push of the water on a rim beam

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Force, G, Length};

formula! {
    /// What the wall brings to its rim between two supports: a third of the water's push on it.
    ///
    /// Supports are corners, cross ties and baffles. As if the wall were hinged along the floor, which is on the safe
    /// side.
    "rim-force" "Push of the water on a rim beam"
    fn force(
        rho: Density = "rho" "density of the liquid" [LB_FT3, KG_M3: 700.0 .. 1500.0 in 100.0 .. 20000.0];
        height: Length = "H" "height of the wall and of the water" [IN, M: 0.2 .. 5.0 in 0.0 .. 1000.0];
        span: Length = "L" "length of rim between supports" [IN, M: 0.2 .. 10.0 in 0.0 .. 1000.0];
    ) -> Force = "F_r" "push on the rim" [LBF, KN];
    typed { rho * G * height * height * span / 6.0 }
    sources [HYDROSTATICS]
    checks [
        "rho=62.4 lb/ft3, height=60 in, span=120 in" => "2600.0 lbf", ByHand("2.166667 psi x 60 / 6 = 21.667 lbf/in, x 120");
        "rho=62.4 lb/ft3, height=60 in, span=30 in" => "650 lbf", ByHand("21.667 x 30: the upper reaction of a stiffener");
        "rho=1000 kg/m3, height=1 m, span=6 m" => "9.806650 kN", Limit("the whole push is half of 6 m2 under 1 m: 3 t, a third of it at the rim");
    ]
}

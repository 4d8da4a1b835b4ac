//! Formula: depth of a flat-bar stiffener on a wall under water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::math::sqrt;
use stillrise_units::{Density, G, Length, Pressure};

const GRAVITY: f64 = G.value;

formula! {
    /// Depth of an upright flat bar, set on edge, that carries the water between its neighbours from floor to rim.
    ///
    /// A beam supported at the floor and at a stiff rim, its greatest moment p0 s H2/(9 x 3^0.5) a little below half
    /// height. The plate that works along with the bar is left out, which is on the safe side; any section with the
    /// bar's modulus t b2/6 does as well. Two thirds of the water's push on its strip goes to the floor, one third to the
    /// rim: see `rim-force`.
    "stiffener-depth" "Depth of a flat-bar stiffener"
    fn depth(
        rho: Density = "rho" "density of the liquid" [LB_FT3, KG_M3: 700.0 .. 1500.0 in 100.0 .. 20000.0];
        spacing: Length = "s" "spacing of stiffeners" [IN, MM: 200.0 .. 2000.0 in 0.1 .. 1e5];
        height: Length = "H" "height of the wall and of the water" [IN, M: 0.2 .. 5.0 in 0.001 .. 1000.0];
        bar: Length = "t_b" "thickness of the bar" [IN, MM: 3.0 .. 25.0 in 0.01 .. 1000.0];
        sigma: Pressure = "sigma" "allowable bending stress" [PSI, KPA: 1e4 .. 3e5 in 1.0 .. 1e7];
    ) -> Length = "b" "depth of the bar" [IN, MM];
    reduced [rho KG_M3, spacing M, height M, bar M, sigma PA => M] {
        let moment = rho * GRAVITY * height * spacing * height * height / (9.0 * sqrt(3.0));
        sqrt(6.0 * moment / (sigma * bar))
    }
    constants [GRAVITY "g"]
    sources [STRENGTH]
    checks [
        "rho=62.4 lb/ft3, spacing=30 in, height=60 in, bar=0.375 in, sigma=21600 psi" => "3.335 in",
            ByHand("moment 2.166667 x 30 x 3,600 / 15.58846 = 15,011 lbf in; (6 x 15,011 / (21,600 x 0.375))^0.5");
        "rho=62.4 lb/ft3, spacing=120 in, height=60 in, bar=0.375 in, sigma=21600 psi" => "6.67 in", Limit("four times the load on the same bar: twice the depth");
        "rho=1000 kg/m3, spacing=1000 mm, height=1 m, bar=10 mm, sigma=150000 kPa" => "50.2 mm",
            ByHand("9.80665 x 0.06415 = 0.62910 kN m; over 150 MPa 4,194 mm3 = 10 b2/6");
    ]
}

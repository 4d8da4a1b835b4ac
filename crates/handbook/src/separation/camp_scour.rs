//! Formula: velocity that scours sludge off a floor

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CAMP_SCOUR;
use stillrise_units::math::sqrt;
use stillrise_units::{Density, G, Length, Ratio, Velocity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// Mean velocity over a floor at which settled grains start to move again, after Camp and Shields.
    ///
    /// `beta` is 0.04 for single grains to 0.06 for sticky ones, and the friction factor some 0.03; all
    /// three recalled. For loose grains of one size: consolidated sludge holds longer, oily flocs of
    /// nearly the water's density go at a few centimetres per second. Inlet jets scour where the mean does not.
    "camp-scour" "Velocity that scours sludge off a floor"
    fn velocity(
        beta: Ratio = "beta" "Camp's constant" [ONE, ONE: 0.04 .. 0.06 in 0.0 .. 1.0];
        rho_s: Density = "rho_s" "density of the grains" [LB_FT3, KG_M3: 1020.0 .. 2700.0 in 300.0 .. 20000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        d: Length = "d" "diameter of the grains" [UM, UM: 20.0 .. 2000.0 in 0.0 .. 100000.0];
        f: Ratio = "f" "Darcy friction factor of the floor" [ONE, ONE: 0.02 .. 0.04 in 0.001 .. 10.0];
    ) -> Velocity = "V_sc" "scouring velocity" [FT_S, M_S];
    reduced [beta ONE, rho_s KG_M3, rho_w KG_M3, d M, f ONE => M_S] {
        sqrt(8.0 * beta * GRAVITY * (rho_s / rho_w - 1.0) * d / f)
    }
    constants [GRAVITY "g"]
    sources [CAMP_SCOUR]
    checks [
        "beta=0.04, rho_s=2650 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "0.131376 m/s", ByHand("sqrt(8 x 0.04 x 9.80665 x 1.65 x 1e-4 / 0.03)");
        "beta=0.06, rho_s=2650 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "0.160902 m/s", ByHand("the same with 0.06");
        "beta=0.04, rho_s=1050 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "0.0228697 m/s", ByHand("organic flocs");
        "beta=0.06, rho_s=1050 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "0.0280095 m/s", ByHand("organic flocs, sticky");
        "beta=0.05, rho_s=2000 kg/m3, rho_w=1000 kg/m3, d=98.0665 mm, f=0.04" => "3.10114 m/s", Limit("g/sqrt(10): 0.4 x g x g/100 / 0.04");
        "beta=0.04, rho_s=1000 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "0.000000 m/s", Limit("what has no weight in water moves with it");
        "beta=0.04, rho_s=950 kg/m3, rho_w=1000 kg/m3, d=100 um, f=0.03" => "outside: result", Limit("what floats does not lie on a floor");
    ]
}

//! Formula: mean shear rate of turbulent water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CAMP_STEIN;
use stillrise_units::math::sqrt;
use stillrise_units::{Dissipation, KinematicViscosity, ShearRate};

formula! {
    /// The velocity gradient that laminar water would need to dissipate as much, Camp and Stein's G.
    ///
    /// A mean over the zone that the dissipation is a mean of. It says how often droplets meet; that
    /// they meet is not that they join, which takes minutes to hours at a few hundred milligrams of oil
    /// in a litre. How large they can grow in it, `hinze-droplet` says.
    "shear-rate" "Mean shear rate of turbulent water"
    fn rate(
        epsilon: Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG: 1e-6 .. 10000.0 in 0.0 .. 1e9];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> ShearRate = "G" "mean shear rate" [PER_S, PER_S];
    reduced [epsilon W_KG, nu M2_S => PER_S] { sqrt(epsilon / nu) }
    sources [CAMP_STEIN]
    checks [
        "epsilon=1 W/kg, nu=1 mm2/s" => "1000.000 1/s", Limit("powers of ten alone");
        "epsilon=0.00145656 W/kg, nu=1.003395 mm2/s" => "38.100 1/s", ByHand("square root of 1451.63");
        "epsilon=0.00478194 W/kg, nu=1.003395 mm2/s" => "69.034 1/s", ByHand("square root of 4765.76");
        "epsilon=0.0218 W/kg, nu=1.003395 mm2/s" => "147.398 1/s", ByHand("independent evaluation in Python");
        "epsilon=1000 W/kg, nu=1.003395 mm2/s" => "31569.2 1/s", ByHand("independent evaluation in Python");
        "epsilon=0 W/kg, nu=1 mm2/s" => "0 1/s", Limit("still water");
    ]
}

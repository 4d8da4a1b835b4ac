//! Formula: size of the smallest eddies

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::KOLMOGOROV;
use stillrise_units::math::pow;
use stillrise_units::{Dissipation, KinematicViscosity, Length};

const OWN: &str = "independent evaluation in Python, smooth pipe at 20 °C";

formula! {
    /// Length at which viscosity ends the turbulence of water: Kolmogorov's scale.
    ///
    /// `hinze-droplet` holds for droplets well above it; smaller ones are broken, if at all, by
    /// viscous shear, and that law gives too small a size. An order of magnitude: the eddies that carry
    /// the dissipation are some ten times larger. For turbulence away from walls, at a mean dissipation.
    "kolmogorov-length" "Size of the smallest eddies"
    fn length(
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        epsilon: Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG: 1e-6 .. 10000.0 in 1e-12 .. 1e9];
    ) -> Length = "eta_K" "Kolmogorov length" [UM, UM];
    reduced [nu M2_S, epsilon W_KG => M] { pow(nu * nu * nu / epsilon, 0.25) }
    sources [KOLMOGOROV]
    checks [
        "nu=1.003395 mm2/s, epsilon=0.0218 W/kg" => "82.5068 um", ByHand(OWN);
        "nu=1.003395 mm2/s, epsilon=0.0889 W/kg" => "58.0602 um", ByHand(OWN);
        "nu=1.003395 mm2/s, epsilon=0.598 W/kg" => "36.0519 um", ByHand(OWN);
        "nu=1.003395 mm2/s, epsilon=1.825 W/kg" => "27.2765 um", ByHand(OWN);
        "nu=1.003395 mm2/s, epsilon=0.0536 W/kg" => "65.8890 um", ByHand(OWN);
        "nu=1.003395 mm2/s, epsilon=0.152 W/kg" => "50.7742 um", ByHand(OWN);
        "nu=1 mm2/s, epsilon=0.01 W/kg" => "100.000 um", Limit("powers of ten alone: (1e-16)^(1/4)");
        "nu=1 mm2/s, epsilon=100 W/kg" => "10.0000 um", Limit("powers of ten alone: (1e-20)^(1/4)");
    ]
}

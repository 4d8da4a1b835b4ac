//! Formula: largest droplet that turbulence leaves whole

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HINZE;
use stillrise_units::math::pow;
use stillrise_units::{Density, Dissipation, Length, SurfaceTension};

/// Hinze's constant: the size below which 95 % of the volume lies, not a mean.
pub(super) const C_HINZE: f64 = 0.725;

const OWN: &str = "independent evaluation at 998.2 kg/m3";

formula! {
    /// Largest stable droplet in turbulence of a given dissipation, after Kolmogorov and Hinze.
    ///
    /// For thin oils in dilute water, for droplets larger than the smallest eddies (some 20 to
    /// 80 µm in pipes); below that the value is too small a number to trust. An equilibrium: a
    /// pump's tip makes smaller droplets, a short stay leaves larger ones. Critical Weber numbers in
    /// the literature differ by two. Tension: 20 to 30 mN/m clean, 1 to 5 with detergent.
    "hinze-droplet" "Largest droplet that turbulence leaves whole"
    fn diameter(
        sigma: SurfaceTension = "sigma" "interfacial tension" [MN_M, MN_M: 1.0 .. 50.0 in 0.0 .. 1000.0];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        epsilon: Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG: 0.001 .. 10000.0 in 1e-9 .. 1e9];
    ) -> Length = "d_max" "largest droplet" [UM, UM];
    reduced [sigma N_M, rho KG_M3, epsilon W_KG => M] { C_HINZE * pow(sigma / rho, 0.6) * pow(epsilon, -0.4) }
    constants [C_HINZE "C"]
    sources [HINZE]
    checks [
        "sigma=10 mN/m, rho=1000 kg/m3, epsilon=1 W/kg" => "725 um", Limit("powers of ten alone: (1e-5)^0.6 = 1e-3 leaves the constant");
        "sigma=10 mN/m, rho=1000 kg/m3, epsilon=100000 W/kg" => "7.25 um", Limit("powers of ten alone: (1e5)^-0.4 = 1e-2");
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=10 W/kg" => "559 um", ByHand(OWN);
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=10 W/kg" => "369 um", ByHand(OWN);
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=10 W/kg" => "140 um", ByHand(OWN);
        "sigma=1 mN/m, rho=998.2 kg/m3, epsilon=10 W/kg" => "73 um", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg" => "222 um", ByHand(OWN);
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg" => "147 um", ByHand(OWN);
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg" => "56 um", ByHand(OWN);
        "sigma=1 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg" => "29 um", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg" => "88 um" within 6e-3 "cut off, not rounded", ByHand(OWN);
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg" => "58 um", ByHand(OWN);
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg" => "22 um", ByHand(OWN);
        "sigma=1 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg" => "11 um" within 0.05 "cut off, not rounded", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=10000 W/kg" => "35 um", ByHand(OWN);
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=10000 W/kg" => "23 um", ByHand(OWN);
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=10000 W/kg" => "9 um", ByHand(OWN);
        "sigma=1 mN/m, rho=998.2 kg/m3, epsilon=10000 W/kg" => "5 um", ByHand(OWN);
        "sigma=20 mN/m, rho=998 kg/m3, epsilon=0.1 W/kg" => "2764 um", ByHand(OWN);
        "sigma=20 mN/m, rho=998 kg/m3, epsilon=1 W/kg" => "1100 um", ByHand(OWN);
        "sigma=20 mN/m, rho=998 kg/m3, epsilon=100000 W/kg" => "11 um", ByHand(OWN);
        "sigma=5 mN/m, rho=998 kg/m3, epsilon=0.1 W/kg" => "1203 um", ByHand(OWN);
        "sigma=5 mN/m, rho=998 kg/m3, epsilon=100 W/kg" => "76 um", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=0.0218 W/kg" => "6479 um" within 1e-3 "the dissipation is printed to three digits",
            ByHand("0.6 m/s in a pipe of 100 mm");
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=0.598 W/kg" => "1137 um", ByHand("2 m/s in a pipe of 100 mm");
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=1.825 W/kg" => "277 um", ByHand("3 m/s in a pipe of 100 mm");
    ]
}

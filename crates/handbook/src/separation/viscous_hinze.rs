//! Formula: largest droplet of a viscous oil that turbulence leaves whole

use super::hinze_droplet::C_HINZE;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{HINZE, VISCOUS_DROPS};
use stillrise_units::math::{pow, root, sqrt};
use stillrise_units::{Density, Dissipation, Length, Ratio, SurfaceTension, Viscosity};

const OWN: &str = "solved by bracketing in Python, scipy 1.17.1, brentq";

formula! {
    /// `hinze-droplet` times `(1 + B Vi)^0.6`, for oils whose own viscosity resists breaking.
    ///
    /// The viscosity group here is `Vi = µ_o/sqrt(ρ σ d_max)`, with the water's density, and holds the size
    /// itself. A value of B belongs to its group: most published ones go with a group that holds the
    /// velocity of the eddies or of a stirrer, and must not be used here. None was confirmed for
    /// this one, so B is an argument without a default: zero gives thin oils, and a result that hangs
    /// on B is a guess. At equilibrium; viscous drops also take longer to break than they stay in a valve.
    "viscous-hinze" "Largest droplet of a viscous oil that turbulence leaves whole"
    fn diameter(
        sigma: SurfaceTension = "sigma" "interfacial tension" [MN_M, MN_M: 1.0 .. 50.0 in 0.001 .. 1000.0];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        epsilon: Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG: 0.001 .. 10000.0 in 1e-9 .. 1e9];
        mu_o: Viscosity = "mu_o" "viscosity of the oil" [CP, MPA_S: 0.5 .. 1000.0 in 0.0 .. 1e6];
        b: Ratio = "B" "coefficient of the viscosity group" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 1000.0];
    ) -> Length = "d_max" "largest droplet" [UM, UM];
    solves [sigma N_M, rho KG_M3, epsilon W_KG, mu_o PA_S, b ONE => d M] {
        d => C_HINZE * pow(sigma / rho, 0.6) * pow(epsilon, -0.4) * pow(1.0 + b * (mu_o / sqrt(rho * sigma * d)), 0.6)
    } by {
        // The right side falls as d grows, so the root lies between a thin oil's size and the right side there.
        let thin = C_HINZE * pow(sigma / rho, 0.6) * pow(epsilon, -0.4);
        let right = |d: f64| thin * pow(1.0 + b * (mu_o / sqrt(rho * sigma * d)), 0.6);
        root(thin, right(thin) * (1.0 + 1e-12), |d| d - right(d))
    }
    constants [C_HINZE "C"]
    sources [HINZE, VISCOUS_DROPS]
    checks [
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg, mu_o=5 mPa s, b=1" => "230.3109 um", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=100 W/kg, mu_o=50 mPa s, b=1" => "287.9575 um", ByHand(OWN);
        "sigma=30 mN/m, rho=998.2 kg/m3, epsilon=10 W/kg, mu_o=50 mPa s, b=0.5" => "618.0711 um", ByHand(OWN);
        "sigma=15 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg, mu_o=300 mPa s, b=1" => "183.2904 um", ByHand(OWN);
        "sigma=3 mN/m, rho=998.2 kg/m3, epsilon=1000 W/kg, mu_o=20 mPa s, b=2" => "52.52545 um", ByHand(OWN);
        "sigma=10 mN/m, rho=1000 kg/m3, epsilon=1 W/kg, mu_o=50 mPa s, b=0" => "725 um", Limit("B of zero: Hinze's size, here its constant in millimetres");
        "sigma=10 mN/m, rho=1000 kg/m3, epsilon=1 W/kg, mu_o=0 mPa s, b=1" => "725 um", Limit("an oil without viscosity: the same");
        "sigma=10 mN/m, rho=1000 kg/m3, epsilon=1 W/kg, mu_o=100 Pa s, b=1000" => "458.985 mm" within 2e-5 "1 is left out beside B Vi, some 47 000",
            Limit("viscosity alone: d^1.3 = 0.725e-3 (1e5/sqrt(10))^0.6");
    ]
}

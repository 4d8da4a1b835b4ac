//! Formula: kinematic viscosity

use crate::formula;
use crate::page::Evidence::Published;
use crate::sources::{ASTM_D2161, DEFINITION};
use stillrise_units::{Density, KinematicViscosity, Viscosity};

formula! {
    /// Dynamic viscosity over density.
    ///
    /// 1 mm2/s is 1 centistokes; divide by the density of the same liquid at the same temperature.
    "kinematic-viscosity" "Kinematic viscosity"
    fn viscosity(
        mu: Viscosity = "mu" "dynamic viscosity" [CP, MPA_S: 0.1 .. 100000.0 in 1e-3 .. 1e8];
        rho: Density = "rho" "density" [LB_FT3, KG_M3: 600.0 .. 1200.0 in 100.0 .. 20000.0];
    ) -> KinematicViscosity = "nu" "kinematic viscosity" [CST, MM2_S];
    typed { mu / rho }
    sources [DEFINITION]
    checks [
        "mu=1.0016 mPa s, rho=998.2072 kg/m3" => "1.0034 mm2/s",
            Published(&ASTM_D2161, "scope: water at 20 °C has 1.0034 mm2/s");
    ]
}

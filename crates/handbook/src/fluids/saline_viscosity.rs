//! Formula: viscosity of brackish and sea water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{MILLERO_1974, SHARQAWY_2010};
use stillrise_units::math::pow;
use stillrise_units::{Ratio, Temperature, Viscosity};

formula! {
    /// Viscosity of water that holds sea salt, from that of fresh water at the same temperature.
    ///
    /// Stated for 0 to 180 °C and 0 to 150 g/kg within 1.5 %. Ocean water is 7.5 % more viscous
    /// than fresh water at 20 °C. An older correlation gives 0.45 % less at 25 °C and 40 g/kg:
    /// no matter for sizing.
    "saline-viscosity" "Viscosity of brackish and sea water"
    fn viscosity(
        mu_w: Viscosity = "mu_w" "viscosity of fresh water" [CP, MPA_S: 0.2 .. 2.0 in 0.05 .. 10.0];
        t: Temperature = "t" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 100.0 in -5.0 .. 180.0];
        salinity: Ratio = "S" "salinity, mass fraction" [G_KG, G_KG: 0.0 .. 150.0 in 0.0 .. 200.0];
    ) -> Viscosity = "mu_sw" "viscosity of the saline water" [CP, MPA_S];
    reduced [mu_w MPA_S, t DEG_C, salinity ONE => MPA_S] {
        let a = 1.541 + 1.998e-2 * t - 9.52e-5 * pow(t, 2.0);
        let b = 7.974 - 7.561e-2 * t + 4.724e-4 * pow(t, 2.0);
        mu_w * (1.0 + a * salinity + b * pow(salinity, 2.0))
    }
    sources [SHARQAWY_2010, MILLERO_1974]
    checks [
        "mu_w=1.0016 mPa s, t=20 °C, salinity=0" => "1.0016 mPa s", Limit("no salt: fresh water");
        "mu_w=0.89002 mPa s, t=25 °C, salinity=40 g/kg" => "0.96541 mPa s" within 0.006 "another correlation, 0.45 % lower",
            Published(&MILLERO_1974, "check value at 25 °C and 40 g/kg: 9.6541e-4 Pa s");
        "mu_w=1.00176 mPa s, t=20 °C, salinity=5 g/kg" => "1.01146 mPa s" within 6e-6 "fresh-water value printed to six digits",
            ByHand("independent evaluation in Python of equation 22");
        "mu_w=1.00176 mPa s, t=20 °C, salinity=20 g/kg" => "1.04254 mPa s" within 6e-6 "fresh-water value printed to six digits",
            ByHand("independent evaluation in Python of equation 22");
        "mu_w=1.00176 mPa s, t=20 °C, salinity=35 g/kg" => "1.07663 mPa s" within 6e-6 "fresh-water value printed to six digits",
            ByHand("independent evaluation in Python of equation 22");
    ]
}

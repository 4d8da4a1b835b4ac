//! Formula: density of fresh water

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{IAPWS_95, TANAKA_2001};
use stillrise_units::math::pow;
use stillrise_units::{Density, Temperature};

// Tanaka et al. 2001, table 1: three temperatures, a squared temperature, the greatest density.
const A_1: f64 = -3.983_035;
const A_2: f64 = 301.797;
const A_3: f64 = 522_528.9;
const A_4: f64 = 69.348_81;
const A_5: f64 = 999.974_95;

formula! {
    /// Density of air-free fresh water at atmospheric pressure.
    ///
    /// Stated for 0 to 40 °C, where it keeps within 0.0012 kg/m3 of the reference equation of
    /// state. Beyond, it is still within 0.02 kg/m3 at 60 °C and 0.3 kg/m3 at 100 °C. Rain and
    /// tap water are heavier by what they hold: some 0.8 kg/m3 for each g/kg (`saline-density`).
    "water-density" "Density of fresh water"
    fn density(
        t: Temperature = "t" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
    ) -> Density = "rho_w" "density of the water" [LB_FT3, KG_M3];
    reduced [t DEG_C => KG_M3] {
        A_5 * (1.0 - pow(t + A_1, 2.0) * (t + A_2) / (A_3 * (t + A_4)))
    }
    constants [A_1 "a_1", A_2 "a_2", A_3 "a_3", A_4 "a_4", A_5 "a_5"]
    sources [TANAKA_2001, IAPWS_95]
    checks [
        "t=3.983035 °C" => "999.974950 kg/m3", Limit("greatest density, a_5, where the squared term vanishes");
        "t=20 °C" => "998.2072 kg/m3" within 1.3e-6 "two formulations, 0.0012 kg/m3 apart at most to 40 °C",
            Library("CoolProp 8.0.0, IAPWS-95 at 101325 Pa");
        "t=60 °F" => "999.0171 kg/m3" within 1.3e-6 "two formulations, 0.0012 kg/m3 apart at most to 40 °C",
            Library("CoolProp 8.0.0, IAPWS-95 at 101325 Pa");
        "t=40 °C" => "992.2164 kg/m3" within 1.3e-6 "two formulations, 0.0012 kg/m3 apart at most to 40 °C",
            Library("CoolProp 8.0.0, IAPWS-95 at 101325 Pa");
        "t=20 °C" => "998.2067 kg/m3",
            ByHand("16.016965^2 x 321.797 / (522528.9 x 89.34881) = 1.76825e-3; 999.97495 (1 - 1.76825e-3)");
    ]
}

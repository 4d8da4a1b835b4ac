//! Formula: viscosity of fresh water

use crate::formula;
use crate::page::Evidence::{Library, Published};
use crate::sources::{ASTM_D2161, IAPWS_SR6};
use stillrise_units::math::pow;
use stillrise_units::{Temperature, Viscosity};

// IAPWS SR6-08, equation 7 and its table: amplitudes in micropascal seconds, and exponents.
const A_1: f64 = 280.68;
const A_2: f64 = 511.45;
const A_3: f64 = 61.131;
const A_4: f64 = 0.45903;
const B_1: f64 = -1.9;
const B_2: f64 = -7.7;
const B_3: f64 = -19.6;
const B_4: f64 = -40.0;

formula! {
    /// Dynamic viscosity of liquid fresh water at 0.1 MPa.
    ///
    /// Stated for 253.15 to 383.15 K and pressures up to 0.3 MPa; between 0 and 60 °C it stays
    /// within 0.00003 mPa s of the full IAPWS R12-08 formulation. Near 10 °C viscosity falls by
    /// 2.7 % for each kelvin: the coldest water governs the rise of droplets.
    "water-viscosity" "Viscosity of fresh water"
    fn viscosity(
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 100.0 in -20.0 .. 110.0];
    ) -> Viscosity = "mu_w" "viscosity of the water" [CP, MPA_S];
    reduced [t K => MPA_S] {
        let theta = t / 300.0;
        (A_1 * pow(theta, B_1) + A_2 * pow(theta, B_2) + A_3 * pow(theta, B_3) + A_4 * pow(theta, B_4)) / 1000.0
    }
    constants [
        A_1 "a_1", A_2 "a_2", A_3 "a_3", A_4 "a_4",
        B_1 "b_1", B_2 "b_2", B_3 "b_3", B_4 "b_4",
    ]
    sources [IAPWS_SR6]
    checks [
        "t=298.15 K" => "0.889997 mPa s", Library("iapws 1.5.5, _Liquid(298.15).mu, the same release coded apart");
        "t=20 °C" => "1.00160 mPa s" within 4e-5 "the short fit and the full formulation differ by up to 3e-5 mPa s",
            Library("CoolProp 8.0.0, IAPWS R12-08 at 101325 Pa");
        "t=60 °F" => "1.12103 mPa s" within 4e-5 "the short fit and the full formulation differ by up to 3e-5 mPa s",
            Library("CoolProp 8.0.0, IAPWS R12-08 at 101325 Pa");
        "t=20 °C" => "1.0016 mPa s",
            Published(&ASTM_D2161, "scope: water at 20 °C has 1.0034 mm2/s, times 998.207 kg/m3 is 1.0016 mPa s");
    ]
}

//! Formula: dissipation behind a valve or an orifice

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, JET_LENGTH};
use core::f64::consts::PI;
use stillrise_units::{Density, Dissipation, Flow, Length, Pressure, Ratio};

formula! {
    /// Mean power per mass of water that a valve or an orifice takes in the length its jet needs.
    ///
    /// Pressure times flow, over the mass in that length of the bore. The length, two to five
    /// bores, is recalled and decides as much as the pressure; the seat itself is worse than the
    /// mean. Take the pressure that stays lost, and the bore the jet fills. For `hinze-droplet`,
    /// whose size it moves by the power -0.4: half or twice the length is a third in the size.
    "valve-dissipation" "Dissipation behind a valve or an orifice"
    fn dissipation(
        dp: Pressure = "Delta_p" "pressure lost" [PSI, KPA: 1.0 .. 2000.0 in 0.0 .. 1e6];
        q: Flow = "Q" "flow" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        d: Length = "D" "inside diameter of the bore" [IN, MM: 10.0 .. 1000.0 in 0.1 .. 100000.0];
        lengths: Ratio = "k" "length of the jet in bores" [ONE, ONE: 2.0 .. 5.0 in 0.01 .. 1000.0];
    ) -> Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG];
    typed { dp * q / (rho * (PI * d * d / 4.0) * (lengths * d)) }
    sources [DEFINITION, JET_LENGTH]
    checks [
        "dp=100 kPa, q=2 L/s, rho=998.2 kg/m3, d=50 mm, lengths=3" => "680.286 W/kg", ByHand("200 W over 0.294524 kg, in Python");
        "dp=500 kPa, q=2 L/s, rho=998.2 kg/m3, d=50 mm, lengths=2" => "5102.14 W/kg", ByHand("1000 W over 0.195996 kg, in Python");
        "dp=100 kPa, q=7.853981634 L/s, rho=1000 kg/m3, d=100 mm, lengths=1" => "1000.00 W/kg", Limit("at 1 m/s the pressure falls over 0.1 m: 1e5 / 1000 x 1 / 0.1");
        "dp=0 kPa, q=2 L/s, rho=998.2 kg/m3, d=50 mm, lengths=3" => "0 W/kg", Limit("no loss");
    ]
}

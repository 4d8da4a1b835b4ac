//! Formula: density of an oil from its API gravity

use super::oil_density_60f::RHO_60;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_MPMS_2004, DEFINITION};
use stillrise_units::{Density, Ratio};

formula! {
    /// Density at 60 °F of an oil whose gravity is stated in degrees API.
    ///
    /// Water has 10 °API by definition; light oils have more. An oil of 10 °API or less is as
    /// heavy as fresh water and not a gravity duty.
    "api-gravity" "Density of an oil from its API gravity"
    fn density(
        api: Ratio = "API" "gravity, degrees API" [ONE, ONE: 10.0 .. 100.0 in -50.0 .. 250.0];
    ) -> Density = "rho_60" "density of the oil at 60 °F" [LB_FT3, KG_M3];
    reduced [api ONE => KG_M3] {
        let sg = 141.5 / (api + 131.5);
        sg * RHO_60
    }
    constants [RHO_60 "rho_w_60"]
    sources [DEFINITION, API_MPMS_2004]
    checks [
        "api=10" => "999.0171 kg/m3" within 2e-6 "the tables' water is 0.0011 kg/m3 lighter than the reference equation's",
            Limit("10 °API is water at 60 °F: 999.0171 kg/m3 by IAPWS-95");
        "api=35" => "849.0136 kg/m3", ByHand("141.5 / 166.5 x 999.016");
    ]
}

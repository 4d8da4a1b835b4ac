//! Formula: density of an oil from its specific gravity

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_MPMS_2004, DEFINITION};
use stillrise_units::{Density, Ratio};

// Density of water at 60 °F in the measurement tables of 2004; those of 1980 had 999.012 kg/m3.
pub(super) const RHO_60: f64 = stillrise_units::parse::WATER_60F;

formula! {
    /// Density at 60 °F of an oil whose specific gravity is stated as 60/60 °F.
    ///
    /// US specific gravity compares oil and water both at 60 °F. European density is at 15 °C,
    /// where the same oil is some 0.4 kg/m3 denser: `oil-density` takes it from one to the other.
    "oil-density-60f" "Density of an oil from its specific gravity"
    fn density(
        sg_60: Ratio = "SG_60" "specific gravity 60/60 °F" [ONE, ONE: 0.61 .. 1.165 in 0.3 .. 2.0];
    ) -> Density = "rho_60" "density of the oil at 60 °F" [LB_FT3, KG_M3];
    reduced [sg_60 ONE => KG_M3] { sg_60 * RHO_60 }
    constants [RHO_60 "rho_w_60"]
    sources [DEFINITION, API_MPMS_2004]
    checks [
        "sg_60=1" => "999.0171 kg/m3" within 2e-6 "the tables' water is 0.0011 kg/m3 lighter than the reference equation's",
            Limit("specific gravity 1 is water at 60 °F: 999.0171 kg/m3 by IAPWS-95");
        "sg_60=0.84984985" => "849.0136 kg/m3", ByHand("0.84984985 x 999.016");
    ]
}

//! Formula: oil content by volume

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Density, Ratio};

formula! {
    /// Share of volume that an oil takes in water, from its mass in a litre.
    ///
    /// Permits are written in mg/L; oil meters and marine rules speak of parts per million by
    /// volume. 15 mg/L of an oil of 840 kg/m3 is 17.9 µL/L: the two are never the same number.
    "volume-concentration" "Oil content by volume"
    fn share(
        c: Concentration = "C" "oil content by mass" [MG_L, MG_L: 0.0 .. 10000.0 in 0.0 .. 1e6];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
    ) -> Ratio = "phi" "share of the volume" [UL_L, UL_L];
    typed { c / rho_o }
    sources [DEFINITION]
    checks [
        "c=840 kg/m3, rho_o=840 kg/m3" => "1", Limit("all oil");
        "c=15 mg/L, rho_o=840 kg/m3" => "17.86 µL/L", ByHand("15 / 0.840");
    ]
}

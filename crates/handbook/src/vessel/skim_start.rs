//! Formula: oil layer at which a skim weir starts

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length, ratio};

formula! {
    /// The thickness at which the oil surface reaches a fixed skim weir or slotted pipe.
    ///
    /// The lip must stand above the clear water at the largest flow, or water goes over it. A fixed lip
    /// is therefore poor for oils above some 900 kg/m3, which hardly rise. Needs an oil lighter than the water.
    "skim-start" "Oil layer at which a skim weir starts"
    fn thickness(
        z_skim: Length = "Z_sk" "elevation of the skim lip" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        z_water: Length = "Z_cw" "level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_sk" "oil layer at which skimming starts" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_skim - z_water) / (ratio(1.0) - r)
    }
    sources [HYDROSTATICS]
    checks [
        "z_skim=56.75 in, z_water=56 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "5.06 in", ByHand("0.75 / (1 - 0.85 / 0.998)");
        "z_skim=57.5 in, z_water=56 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "10.1 in", ByHand("1.5 / (1 - 0.85 / 0.998)");
        "z_skim=56 in, z_water=56 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "0.00000 in",
            Limit("a lip at the clear-water level skims from the first oil");
        "z_skim=57 in, z_water=56 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "outside: result",
            Limit("an oil as heavy as the water never reaches the lip");
    ]
}

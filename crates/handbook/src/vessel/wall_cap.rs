//! Formula: thickest oil layer below the rim

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length, ratio};

formula! {
    /// How thick the layer may grow before its surface comes within the freeboard of the rim or cover.
    ///
    /// Take the highest clear-water level, at the largest flow, and the head loss of fouled plates and
    /// mesh (2 to 4 in is a proposal of this handbook). Freeboard of 6 in, 12 in with waves, is a proposal
    /// too. Needs an oil lighter than the water. A negative result means that the rim is too low.
    "wall-cap" "Thickest oil layer below the rim"
    fn thickness(
        z_rim: Length = "Z_rim" "elevation of the rim" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        freeboard: Length = "F" "freeboard" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        z_water: Length = "Z_cw" "highest level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        loss: Length = "h_L" "head loss from the chamber to the clear well" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_max" "thickest oil layer that stays below the rim" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_rim - freeboard - z_water - loss) / (ratio(1.0) - r)
    }
    sources [HYDROSTATICS]
    checks [
        "z_rim=72 in, freeboard=6 in, z_water=57.25 in, loss=3 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "38.33 in",
            ByHand("5.75 / 0.15");
        "z_rim=72 in, freeboard=6 in, z_water=63 in, loss=3 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0.00000 in",
            Limit("flow and loss reach the freeboard");
        "z_rim=72 in, freeboard=6 in, z_water=57 in, loss=3 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "outside: result",
            Limit("an oil as heavy as the water never lifts the surface");
    ]
}

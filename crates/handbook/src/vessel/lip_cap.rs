//! Formula: thickest oil layer above the downcomer lip

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length};

formula! {
    /// How thick the layer may grow before oil passes under the lip of the downcomer.
    ///
    /// Take the lowest clear-water level that can occur (no flow, evaporation, a pumped-down well), not
    /// the level at design flow. A margin of 6 in, or 3 in on small units, is a proposal of this handbook.
    /// A negative result means that there is no room for oil at all.
    "lip-cap" "Thickest oil layer above the downcomer lip"
    fn thickness(
        z_water: Length = "Z_cw" "lowest possible level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        z_lip: Length = "Z_lip" "elevation of the downcomer lip" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        margin: Length = "m" "least submergence of the lip below the interface" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_max" "thickest oil layer that stays above the lip" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_water - z_lip - margin) / r
    }
    sources [HYDROSTATICS]
    checks [
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.74 g/cm3, rho_w=0.998 g/cm3" => "53.95 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.80 g/cm3, rho_w=0.998 g/cm3" => "49.90 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "46.96 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.88 g/cm3, rho_w=0.998 g/cm3" => "45.36 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.93 g/cm3, rho_w=0.998 g/cm3" => "42.92 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=0 in, rho_o=0.95 g/cm3, rho_w=0.998 g/cm3" => "42.02 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.74 g/cm3, rho_w=0.998 g/cm3" => "45.85 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.80 g/cm3, rho_w=0.998 g/cm3" => "42.41 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "39.92 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.88 g/cm3, rho_w=0.998 g/cm3" => "38.56 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.93 g/cm3, rho_w=0.998 g/cm3" => "36.49 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_lip=16 in, margin=6 in, rho_o=0.95 g/cm3, rho_w=0.998 g/cm3" => "35.72 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=12 in, z_lip=0 in, margin=0 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "14.12 in", ByHand("12 / 0.85");
        "z_water=20 in, z_lip=16 in, margin=4 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0.00000 in",
            Limit("the margin takes all the water above the lip");
    ]
}

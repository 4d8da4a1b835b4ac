//! Formula: oil left by a fixed draw-off

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length};

formula! {
    /// The layer that a fixed suction leaves behind: pumping draws water once the interface has risen to it.
    ///
    /// Holds while the clear-water level stays, which needs water to follow the oil from the clear well or
    /// a hose; else the level falls and air is drawn.
    "oil-draw-residue" "Oil left by a fixed draw-off"
    fn thickness(
        z_water: Length = "Z_cw" "level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        z_draw: Length = "Z_in" "elevation of the draw-off" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_res" "oil layer left" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_water - z_draw) / r
    }
    sources [HYDROSTATICS]
    checks [
        "z_water=56 in, z_draw=55 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "1.17 in",
            ByHand("1 in below the clear water: 0.998 / 0.85");
        "z_water=56 in, z_draw=56 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "0.00000 in",
            Limit("a draw-off at the clear-water level leaves nothing");
    ]
}

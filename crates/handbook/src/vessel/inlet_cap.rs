//! Formula: thickest oil layer below the inlet

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length, ratio};

formula! {
    /// How thick the layer may grow before its surface reaches the invert of a free-draining inlet.
    ///
    /// Beyond it the inlet is submerged: the pipe upstream backs up. A gap of 1 to 2 in is a proposal of
    /// this handbook. Needs an oil lighter than the water. A negative result means that the inlet is
    /// submerged without any oil.
    "inlet-cap" "Thickest oil layer below the inlet"
    fn thickness(
        z_inlet: Length = "Z_inv" "elevation of the inlet invert" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        gap: Length = "g_in" "gap kept below the invert" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        z_water: Length = "Z_cw" "highest level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        loss: Length = "h_L" "head loss from the chamber to the clear well" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_max" "thickest oil layer that leaves the inlet free" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_inlet - gap - z_water - loss) / (ratio(1.0) - r)
    }
    sources [HYDROSTATICS]
    checks [
        "z_inlet=61 in, gap=1 in, z_water=57 in, loss=1.5 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "10.00 in",
            ByHand("1.5 / 0.15");
        "z_inlet=60 in, gap=2 in, z_water=57 in, loss=1 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0.00000 in",
            Limit("flow and loss reach the gap");
        "z_inlet=61 in, gap=1 in, z_water=57 in, loss=1 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "outside: result",
            Limit("an oil as heavy as the water never lifts the surface");
    ]
}

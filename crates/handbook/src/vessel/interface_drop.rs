//! Formula: drop of the interface below the clear water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length};

formula! {
    /// How far the underside of a floating layer lies below the water that balances it in the clear well.
    ///
    /// Hydrostatics, exact for liquids at rest; a head loss between the chamber and the clear well lifts
    /// the interface by as much. Rise of the surface and drop of the interface add up to the layer.
    "interface-drop" "Drop of the interface below the clear water"
    fn drop(
        h: Length = "h_o" "thickness of the oil layer" [IN, MM: 0.0 .. 3000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "Delta_i" "drop of the interface below the clear-water level" [IN, MM];
    typed { rho_o / rho_w * h }
    sources [HYDROSTATICS]
    checks [
        "h=4.70 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "4.00 in",
            ByHand("level schedule of one tank, clear water at 56 in; water 0.998");
        "h=11.27 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "9.60 in",
            ByHand("level schedule of one tank, clear water at 56 in; water 0.998");
        "h=16.91 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "14.40 in",
            ByHand("level schedule of one tank, clear water at 56 in; water 0.998");
        "h=18.79 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "16.00 in",
            ByHand("level schedule of one tank, clear water at 56 in; water 0.998");
        "h=12 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "10.20 in", ByHand("0.85 x 12");
        "h=12 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "12.00000 in",
            Limit("an oil as heavy as the water hangs down by its whole thickness");
        "h=0 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0.00000 in", Limit("no layer");
    ]
}

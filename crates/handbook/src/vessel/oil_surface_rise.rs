//! Formula: rise of the oil surface above the clear water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length, ratio};

formula! {
    /// How far the surface of a floating layer stands above the water that balances it in the clear well.
    ///
    /// Hydrostatics, exact for liquids at rest; the head lost on the way to the clear well comes on top.
    /// An oil nearly as heavy as the water hardly rises, so a layer must be measured at its interface,
    /// not at its surface.
    "oil-surface-rise" "Rise of the oil surface above the clear water"
    fn rise(
        h: Length = "h_o" "thickness of the oil layer" [IN, MM: 0.0 .. 3000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "Delta_s" "rise of the oil surface above the clear-water level" [IN, MM];
    typed { (ratio(1.0) - rho_o / rho_w) * h }
    sources [HYDROSTATICS]
    checks [
        "h=21.58 in, rho_o=0.74 g/cm3, rho_w=0.998 g/cm3" => "5.58 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=19.96 in, rho_o=0.80 g/cm3, rho_w=0.998 g/cm3" => "3.96 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=18.79 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "2.79 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=18.15 in, rho_o=0.88 g/cm3, rho_w=0.998 g/cm3" => "2.15 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=17.17 in, rho_o=0.93 g/cm3, rho_w=0.998 g/cm3" => "1.17 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=16.81 in, rho_o=0.95 g/cm3, rho_w=0.998 g/cm3" => "0.81 in",
            ByHand("set points of one tank, hand arithmetic; water 0.998");
        "h=4.70 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "0.70 in",
            ByHand("surface 56 in higher in the level schedule of one tank; water 0.998");
        "h=11.27 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "1.67 in",
            ByHand("surface 56 in higher in the level schedule of one tank; water 0.998");
        "h=16.91 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "2.51 in",
            ByHand("surface 56 in higher in the level schedule of one tank; water 0.998");
        "h=12 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "1.80 in", ByHand("(1 - 0.85) x 12");
        "h=12 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "0.000000 in", Limit("an oil as heavy as the water does not rise");
    ]
}

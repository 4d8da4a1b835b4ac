//! Formula: oil held by displacing water

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::NZ_PETROLEUM;
use stillrise_units::{Density, Volume};

formula! {
    /// How much oil a chamber holds before it escapes under the baffle: it displaces its own weight of water.
    ///
    /// The water volume is that above the lip of the exit baffle at rest. True for upright walls; where the
    /// chamber narrows upwards it holds less.
    "oil-held" "Oil held by displacing water"
    fn volume(
        v_water: Volume = "V_w" "volume of water above the lip" [GAL, L: 0.0 .. 500000.0 in 0.0 .. 1e9];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Volume = "V_o" "volume of oil held" [GAL, L];
    typed { v_water / (rho_o / rho_w) }
    sources [NZ_PETROLEUM]
    checks [
        "v_water=2844 L, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "3346 L",
            Published(&NZ_PETROLEUM, "retail site: 2,844 L to the exit baffle hold 3,346 L of oil of 0.85");
        "v_water=2844 L, rho_o=1 g/cm3, rho_w=1 g/cm3" => "2844.0000 L",
            Limit("an oil as heavy as the water takes the water's place");
    ]
}

//! Formula: water pushed out by oil

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::{HYDROSTATICS, NZ_PETROLEUM};
use stillrise_units::{Density, Volume};

formula! {
    /// Water that leaves under a baffle while oil floats up behind it: the oil's own weight of it.
    ///
    /// All of it leaves before any oil does, as long as the layer stays above the lip. Where oil and water
    /// leave over the same rim, the oil goes first: a containment full of rain holds no oil. Upright walls.
    "displaced-water" "Water pushed out by oil"
    fn volume(
        oil: Volume = "V_o" "volume of oil that comes in" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Volume = "V_w" "volume of water pushed out" [GAL, M3];
    typed { oil * (rho_o / rho_w) }
    sources [HYDROSTATICS, NZ_PETROLEUM]
    checks [
        "oil=3346 L, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "2844 L",
            Published(&NZ_PETROLEUM, "retail site: 2,844 L to the exit baffle hold 3,346 L of oil of 0.85");
        "oil=60 m3, rho_o=1 g/cm3, rho_w=1 g/cm3" => "60.000000 m3", Limit("an oil as heavy as the water takes the water's place");
        "oil=0 m3, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0 m3", Limit("nothing comes in");
    ]
}

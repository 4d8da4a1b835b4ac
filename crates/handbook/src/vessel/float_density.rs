//! Formula: best density of an interface float

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::Density;

formula! {
    /// The density midway between the oil and the water, which leaves equal forces either way.
    ///
    /// Use the heaviest oil and the lightest water of all seasons. A margin of at least 30 kg/m3 to either
    /// side is a proposal of this handbook, so that the float overcomes its switch and cable.
    "float-density" "Best density of an interface float"
    fn density(
        rho_o: Density = "rho_o" "density of the heaviest oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the lightest water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Density = "rho_f" "best density of the float" [LB_FT3, KG_M3];
    typed { (rho_o + rho_w) / 2.0 }
    sources [HYDROSTATICS]
    checks [
        "rho_o=859.96 kg/m3, rho_w=999.84 kg/m3" => "0.930 g/cm3", ByHand("0 °C: oil 0.85 at 60 °F, 0.00064 per kelvin");
        "rho_o=847.16 kg/m3, rho_w=998.21 kg/m3" => "0.923 g/cm3", ByHand("20 °C: oil 0.85 at 60 °F, 0.00064 per kelvin");
        "rho_o=834.36 kg/m3, rho_w=992.22 kg/m3" => "0.913 g/cm3", ByHand("40 °C: oil 0.85 at 60 °F, 0.00064 per kelvin");
        "rho_o=998 kg/m3, rho_w=998 kg/m3" => "998.0000 kg/m3", Limit("equal densities");
    ]
}

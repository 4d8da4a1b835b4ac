//! Formula: density of a grain that carries oil

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Density, Ratio};

formula! {
    /// Density of a grain with the oil that clings to it, by the oil's share of their mass together.
    ///
    /// Volumes add. It takes nearly 80 % of a light oil by mass to make quartz as light as water, far less with
    /// organic grains; such a grain neither settles nor rises. One share for all sizes is a simplification: a
    /// film of one thickness weighs more on a fine grain.
    "coated-density" "Density of a grain that carries oil"
    fn density(
        rho_s: Density = "rho_s" "density of the bare grain" [LB_FT3, KG_M3: 1050.0 .. 3000.0 in 500.0 .. 20000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        oil: Ratio = "w" "oil, as a share of the mass of grain and oil" [PERCENT, PERCENT: 0.0 .. 60.0 in 0.0 .. 100.0];
    ) -> Density = "rho_c" "density of grain and oil together" [LB_FT3, KG_M3];
    typed { rho_s * rho_o / (oil * rho_s + rho_o - oil * rho_o) }
    sources [DEFINITION]
    checks [
        "rho_s=2650 kg/m3, rho_o=850 kg/m3, oil=0 %" => "2650.000 kg/m3", Limit("a bare grain");
        "rho_s=2650 kg/m3, rho_o=850 kg/m3, oil=100 %" => "850.000 kg/m3", Limit("oil alone");
        "rho_s=2000 kg/m3, rho_o=1000 kg/m3, oil=50 %" => "1333.333 kg/m3", ByHand("2 kg in 1/2 + 1 litres");
        "rho_s=2650 kg/m3, rho_o=850 kg/m3, oil=20 %" => "1861.57 kg/m3", ByHand("1 / (0.2/850 + 0.8/2650) = 1 / 0.000537181");
    ]
}

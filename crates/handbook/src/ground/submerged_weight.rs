//! Formula: weight of a solid under water

use crate::formula;
use crate::page::Evidence::{Limit, Memory, Published};
use crate::sources::{BUOYANCY_PERMIT, HYDROSTATICS};
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// What a slab, a deadman or steel still weighs below the groundwater.
    ///
    /// Concrete of 150 lb/ft3 keeps 58 % of its weight, steel 87 %; a plastic lighter than water turns negative and adds
    /// to the uplift. Work a slab above the groundwater with the density of its surroundings set to none.
    "submerged-weight" "Weight of a solid under water"
    fn weight(
        volume: Volume = "V" "volume of the solid" [FT3, M3: 0.0 .. 200.0 in 0.0 .. 1e6];
        rho: Density = "rho" "density of the solid" [LB_FT3, KG_M3: 900.0 .. 8500.0 in 100.0 .. 20000.0];
        rho_w: Density = "rho_w" "density of the water around it" [LB_FT3, KG_M3: 0.0 .. 1050.0 in 0.0 .. 2000.0];
    ) -> Force = "W_s" "weight under water" [LBF, KN];
    typed { volume * (rho - rho_w) * G }
    sources [HYDROSTATICS]
    checks [
        "volume=98 ft3, rho=150 lb/ft3, rho_w=62.4 lb/ft3" => "9000 lbf" within 0.05 "the source prints whole kips",
            Published(&BUOYANCY_PERMIT, "slab of 12 x 13 x 0.67 ft less the riser: 9 kips");
        "volume=12.5 ft3, rho=150 lb/ft3, rho_w=62.4 lb/ft3" => "1100 lbf" within 0.005 "the source prints two decimals of a kip",
            Published(&BUOYANCY_PERMIT, "two deadmen of 1 x 1 x 6.25 ft: 1.10 kips");
        "volume=1 ft3, rho=152.4 lb/ft3, rho_w=62.4 lb/ft3" => "90 lbf", Memory("recommended practice: concrete weighs 90 lb/ft3 submerged");
        "volume=1 m3, rho=7850 kg/m3, rho_w=0 kg/m3" => "76.98220 kN", Limit("in air: 7.85 t");
        "volume=1 m3, rho=1000 kg/m3, rho_w=1000 kg/m3" => "0 kN", Limit("as dense as the water");
    ]
}

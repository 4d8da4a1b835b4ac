//! Formula: weight of soil, moist above the groundwater and submerged below

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{BUOYANCY_PERMIT, SOIL_MECHANICS};
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// What soil weighs on a unit: as it lies above the groundwater, less the water that it displaces below.
    ///
    /// Take the lightest density that can be vouched for. The permit calculation uses 120 lb/ft3 for both and lets the
    /// groundwater stand at grade, so that all of it is submerged.
    "soil-weight" "Weight of soil, moist and submerged"
    fn weight(
        volume: Volume = "V_soil" "volume of the soil, all of it" [FT3, M3: 0.0 .. 1000.0 in 0.0 .. 1e6];
        below: Volume = "V_w" "part of it below the groundwater" [FT3, M3: 0.0 .. 1000.0 in 0.0 .. 1e6];
        rho_m: Density = "rho_m" "density of the moist soil" [LB_FT3, KG_M3: 1400.0 .. 2200.0 in 500.0 .. 4000.0];
        rho_s: Density = "rho_s" "density of the soil saturated with water" [LB_FT3, KG_M3: 1600.0 .. 2300.0 in 500.0 .. 4000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 990.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Force = "W_soil" "weight of the soil" [LBF, KN];
    typed { ((volume - below) * rho_m + below * (rho_s - rho_w)) * G }
    sources [SOIL_MECHANICS, BUOYANCY_PERMIT]
    checks [
        "volume=286 ft3, below=286 ft3, rho_m=120 lb/ft3, rho_s=120 lb/ft3, rho_w=62.4 lb/ft3" => "16000 lbf"
            within 0.03 "the source prints whole kips", Published(&BUOYANCY_PERMIT, "286 x (120 - 62.4) / 1,000 = 16 kips");
        "volume=100 ft3, below=40 ft3, rho_m=110 lb/ft3, rho_s=125 lb/ft3, rho_w=62.4 lb/ft3" => "9104.0 lbf",
            ByHand("60 x 110 + 40 x 62.6");
        "volume=10 m3, below=0 m3, rho_m=1800 kg/m3, rho_s=2000 kg/m3, rho_w=1000 kg/m3" => "176.5197 kN", Limit("no groundwater: 18 t");
        "volume=10 m3, below=10 m3, rho_m=1800 kg/m3, rho_s=2000 kg/m3, rho_w=1000 kg/m3" => "98.0665 kN", Limit("water to grade: 10 x 1,000 kg");
    ]
}

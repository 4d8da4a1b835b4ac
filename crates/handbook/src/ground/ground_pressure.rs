//! Formula: pressure of ground and groundwater at a depth

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{HYDROSTATICS, SOIL_MECHANICS};
use stillrise_units::math::max;
use stillrise_units::{Density, G, Length, Pressure, Ratio};

const GRAVITY: f64 = G.value;

formula! {
    /// Pressure on a wall or shell from outside: the water in full, and a share of what the soil weighs above.
    ///
    /// A share of 0 is water alone, as a shell in well compacted backfill is often worked; 1 is the full weight, which a
    /// roof carries. On a wall that does not give way the share at rest is one less the sine of the soil's angle of
    /// friction, about 0.5 for sand (from memory). Traffic comes on top: `wheel-pressure`.
    "ground-pressure" "Pressure of ground and groundwater at a depth"
    fn pressure(
        depth: Length = "z" "depth below grade" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        water: Length = "z_w" "depth of the groundwater below grade, negative in a flood" [FT, M: -5.0 .. 20.0 in -1000.0 .. 10000.0];
        rho_m: Density = "rho_m" "density of the moist soil" [LB_FT3, KG_M3: 1400.0 .. 2200.0 in 0.0 .. 4000.0];
        rho_s: Density = "rho_s" "density of the soil saturated with water" [LB_FT3, KG_M3: 1600.0 .. 2300.0 in 500.0 .. 4000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 990.0 .. 1050.0 in 500.0 .. 2000.0];
        share: Ratio = "K" "share of the soil's weight that presses" [ONE, ONE: 0.0 .. 1.0 in 0.0 .. 5.0];
    ) -> Pressure = "p" "pressure from outside" [PSI, KPA];
    reduced [depth M, water M, rho_m KG_M3, rho_s KG_M3, rho_w KG_M3, share ONE => PA] {
        let wet = max(0.0, depth - water);
        let soil_wet = max(0.0, depth - max(0.0, water));
        let soil_moist = depth - soil_wet;
        GRAVITY * (rho_w * wet + share * (rho_m * soil_moist + (rho_s - rho_w) * soil_wet))
    }
    constants [GRAVITY "g"]
    sources [HYDROSTATICS, SOIL_MECHANICS]
    checks [
        "depth=11 ft, water=0 ft, rho_m=120 lb/ft3, rho_s=120 lb/ft3, rho_w=62.4 lb/ft3, share=0" => "4.767 psi",
            ByHand("bottom of a tank of 96 in below 3 ft of cover, water to grade: 11 x 62.4 / 144");
        "depth=10 ft, water=4 ft, rho_m=110 lb/ft3, rho_s=125 lb/ft3, rho_w=62.4 lb/ft3, share=0.5" => "782.2 psf",
            ByHand("62.4 x 6 + 0.5 x (110 x 4 + 62.6 x 6) = 374.4 + 407.8");
        "depth=2 m, water=0 m, rho_m=1800 kg/m3, rho_s=2000 kg/m3, rho_w=1000 kg/m3, share=1" => "39.2266 kPa",
            Limit("the full weight of 2 m of saturated soil");
        "depth=2 m, water=5 m, rho_m=1800 kg/m3, rho_s=2000 kg/m3, rho_w=1000 kg/m3, share=0" => "0 kPa", Limit("dry, and soil not counted");
        "depth=2 m, water=-1 m, rho_m=1800 kg/m3, rho_s=2000 kg/m3, rho_w=1000 kg/m3, share=0" => "29.41995 kPa", Limit("flooded 1 m above grade: 3 m of water");
    ]
}

//! Formula: total dynamic head of a pump

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{DEFINITION, PUMP_HEAD_ARTICLE};
use stillrise_units::{Density, G, Length, Pressure};

formula! {
    /// Head that a pump must give: from the lowest water in the sump up to the highest point of the discharge, what pipe
    /// and fittings lose, and the pressure wanted there.
    ///
    /// Take the stop level for the greatest lift and the start level for the greatest flow. Losses come from
    /// `pipe-friction-loss` and `fitting-loss`.
    "total-dynamic-head" "Total dynamic head of a pump"
    fn head(
        lift: Length = "z" "lowest water to the highest point of the discharge" [FT, M: 0.0 .. 50.0 in -100.0 .. 10000.0];
        loss: Length = "h_f" "loss of pipe and fittings" [FT, M: 0.0 .. 50.0 in 0.0 .. 10000.0];
        p: Pressure = "p" "pressure wanted at the discharge" [PSI, KPA: 0.0 .. 500.0 in 0.0 .. 1e6];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "H" "total dynamic head" [FT, M];
    typed { lift + loss + p / (rho * G) }
    sources [DEFINITION, PUMP_HEAD_ARTICLE]
    checks [
        "lift=28 ft, loss=2.3 ft, p=0 psi, rho=62.4 lb/ft3" => "30.3 ft", Published(&PUMP_HEAD_ARTICLE, "static head 28 ft and friction of 2.3 ft, added");
        "lift=10 ft, loss=4 ft, p=5 psi, rho=62.4 lb/ft3" => "25.54 ft", ByHand("14 + 720 / 62.4");
        "lift=0 m, loss=0 m, p=9.80665 kPa, rho=1000 kg/m3" => "1.000000 m", Limit("a metre of water");
    ]
}

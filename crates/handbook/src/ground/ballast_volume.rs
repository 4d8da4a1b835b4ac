//! Formula: concrete needed to hold a force down

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::{FEMA_259, HYDROSTATICS};
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// Volume of concrete whose weight under water is the force wanted: slab or deadmen together.
    ///
    /// Soil that stands on the concrete beyond the unit's outline adds to it and is left out here: work it with
    /// `soil-over-box` or as area times depth.
    "ballast-volume" "Concrete needed to hold a force down"
    fn volume(
        force: Force = "F_a" "force that anchors must add" [LBF, KN: 0.0 .. 1000.0 in 0.0 .. 1e9];
        rho: Density = "rho_c" "density of the concrete" [LB_FT3, KG_M3: 2200.0 .. 2500.0 in 500.0 .. 20000.0];
        rho_w: Density = "rho_w" "density of the water around it" [LB_FT3, KG_M3: 990.0 .. 1050.0 in 0.0 .. 2000.0];
    ) -> Volume = "V_c" "volume of the concrete" [FT3, M3];
    typed { force / (G * (rho - rho_w)) }
    sources [FEMA_259, HYDROSTATICS]
    checks [
        "force=2048 lbf, rho=150 lb/ft3, rho_w=62.4 lb/ft3" => "23.4 ft3", Published(&FEMA_259, "volume of concrete: 23.4 ft3");
        "force=9.80665 kN, rho=2000 kg/m3, rho_w=1000 kg/m3" => "1.000000 m3", Limit("a cubic metre keeps a tonne");
        "force=1 kN, rho=1000 kg/m3, rho_w=1000 kg/m3" => "outside: result", Limit("ballast as light as the water holds nothing");
    ]
}

//! Formula: sludge made a day

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Density, Flow, MassRate, Ratio};

formula! {
    /// Wet sludge from dry solids, their share of the sludge by mass, and the density of the sludge.
    ///
    /// Settled grit and silt lie at 15 to 40 % solids; 20 % and 70 lb/ft3 are defaults from memory.
    "sludge-rate" "Sludge made a day"
    fn rate(
        dry: MassRate = "m_s" "dry solids" [LB_D, KG_D: 0.0 .. 1000.0 in 0.0 .. 1e7];
        solids: Ratio = "w" "share of solids in the sludge by mass" [PERCENT, PERCENT: 5.0 .. 60.0 in 0.0 .. 100.0];
        rho_sludge: Density = "rho_s" "density of the wet sludge" [LB_FT3, KG_M3: 1000.0 .. 1600.0 in 500.0 .. 3000.0];
    ) -> Flow = "Q_s" "wet sludge" [GPD, L_D];
    typed { dry / (solids * rho_sludge) }
    sources [DEFINITION]
    checks [
        "dry=20 lb/d, solids=20 %, rho_sludge=70 lb/ft3" => "10.7 gpd", ByHand("20 / (0.2 x 70) x 7.48");
        "dry=1000 kg/d, solids=100 %, rho_sludge=1000 kg/m3" => "1000.0000 L/d", Limit("all solids: mass over density");
        "dry=20 lb/d, solids=0 %, rho_sludge=70 lb/ft3" => "outside: result", Limit("solids spread through endless water");
    ]
}

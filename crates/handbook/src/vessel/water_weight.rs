//! Formula: mass of the liquid

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Density, Mass, Volume};

formula! {
    /// Volume times density: what a vessel carries when filled.
    ///
    /// For bearing and supports take the vessel full of water to the rim, not to the weir.
    "water-weight" "Mass of the liquid"
    fn mass(
        volume: Volume = "V" "volume of the liquid" [GAL, M3: 0.0 .. 2000.0 in 0.0 .. 1e6];
        rho: Density = "rho" "density of the liquid" [LB_FT3, KG_M3: 600.0 .. 1500.0 in 100.0 .. 20000.0];
    ) -> Mass = "m" "mass of the liquid" [LB, KG];
    typed { volume * rho }
    sources [DEFINITION]
    checks [
        "volume=250 ft3, rho=62.4 lb/ft3" => "15600 lb", ByHand("10 x 5 ft, 5 ft deep");
        "volume=1 gal, rho=1000 kg/m3" => "8.345 lb", ByHand("3.785412 kg / 0.45359237");
        "volume=1 m3, rho=1000 kg/m3" => "1.00000000 t", Limit("a cubic metre of water is a tonne");
    ]
}

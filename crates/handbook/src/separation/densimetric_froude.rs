//! Formula: densimetric Froude number of a zone

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::{abs, sqrt};
use stillrise_units::{Density, G, Length, Ratio, Velocity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

const KELL: &str = "independent evaluation in Python, densities of Kell's formula from 15 °C up";

formula! {
    /// Velocity through a zone over that of a wave along the boundary of two waters.
    ///
    /// Well below one, water of another temperature or salt does not mix over the depth: warm
    /// water runs along the top, cold or salt water along the floor, past the volume that the
    /// residence time counts on. A fifth of a kelvin is enough in most basins. It tells of the
    /// danger, not of how much oil is lost by it.
    "densimetric-froude" "Densimetric Froude number of a zone"
    fn froude(
        u: Velocity = "U" "mean velocity through the zone" [FT_MIN, MM_S: 0.5 .. 50.0 in 0.0 .. 1e6];
        depth: Length = "H" "depth of water" [FT, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
        rho: Density = "rho" "density of the water in the zone" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_in: Density = "rho_in" "density of the water that enters" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Ratio = "Fr" "densimetric Froude number" [ONE, ONE];
    reduced [u M_S, depth M, rho KG_M3, rho_in KG_M3 => ONE] {
        let g_reduced = GRAVITY * abs(rho - rho_in) / rho;
        u / sqrt(g_reduced * depth)
    }
    constants [GRAVITY "g"]
    sources [DEFINITION]
    checks [
        "u=5 mm/s, depth=1.5 m, rho=999.0996088 kg/m3, rho_in=999.0692269 kg/m3" => "0.236407", ByHand(KELL);
        "u=5 mm/s, depth=1.5 m, rho=999.0996088 kg/m3, rho_in=998.9430280 kg/m3" => "0.104136", ByHand(KELL);
        "u=5 mm/s, depth=1.5 m, rho=999.0996088 kg/m3, rho_in=998.2041322 kg/m3" => "0.0435453", ByHand(KELL);
        "u=9.80665 m/s, depth=9.80665 m, rho=1000 kg/m3, rho_in=2000 kg/m3" => "1.000000", Limit("twice as heavy, so that the reduced gravity is g: U = sqrt(g H)");
        "u=5 mm/s, depth=1.5 m, rho=1000 kg/m3, rho_in=1000 kg/m3" => "outside: result", Limit("one water has no boundary");
    ]
}

//! Formula: speed of a density current

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::BENJAMIN;
use stillrise_units::math::{abs, sqrt};
use stillrise_units::{Density, G, Length, Velocity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

const KELL: &str = "independent evaluation in Python, densities of Kell's formula from 15 °C up";

formula! {
    /// Speed at which lighter water creeps along the top, or heavier along the floor, of still water.
    ///
    /// A front that fills half the depth and loses no energy; thinner currents and rough floors are
    /// slower, a strong inlet faster. Where it exceeds the mean velocity through the zone, the
    /// residence time is not what volume over flow says. Compare, and do not take it off the
    /// residence time: how it shortens the stay of the rest is not in it.
    "density-current-speed" "Speed of a density current"
    fn speed(
        depth: Length = "H" "depth of water" [FT, M: 0.3 .. 5.0 in 0.0 .. 1000.0];
        rho: Density = "rho" "density of the water in the zone" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_in: Density = "rho_in" "density of the water that enters" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Velocity = "U_g" "speed of the current" [FT_MIN, MM_S];
    reduced [depth M, rho KG_M3, rho_in KG_M3 => M_S] {
        let g_reduced = GRAVITY * abs(rho - rho_in) / rho;
        0.5 * sqrt(g_reduced * depth)
    }
    constants [GRAVITY "g"]
    sources [BENJAMIN]
    checks [
        "depth=1.5 m, rho=999.0996088 kg/m3, rho_in=999.0692269 kg/m3" => "10.5750 mm/s", ByHand(KELL);
        "depth=1.5 m, rho=999.0996088 kg/m3, rho_in=998.9430280 kg/m3" => "24.0072 mm/s", ByHand(KELL);
        "depth=1.5 m, rho=999.0996088 kg/m3, rho_in=998.2041322 kg/m3" => "57.4115 mm/s", ByHand(KELL);
        "depth=9.80665 m, rho=1000 kg/m3, rho_in=2000 kg/m3" => "4.903325 m/s", Limit("twice as heavy, so that the reduced gravity is g: half of sqrt(g H)");
        "depth=1.5 m, rho=1000 kg/m3, rho_in=1000 kg/m3" => "0 mm/s", Limit("one water has no current");
    ]
}

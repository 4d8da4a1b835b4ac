//! Formula: droplet that just rises at a given velocity, with the drag of a sphere

use super::drag_rise::{DRAG, FLOOR, POWER};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SCHILLER_NAUMANN;
use stillrise_units::math::{max, pow, root, sqrt};
use stillrise_units::{Density, G, Length, Velocity, Viscosity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// `drag-rise` read backwards: the diameter that rises as fast as the water sinks, or as an overflow rate.
    ///
    /// For small droplets that of `stokes-cut`; larger ones rise slower than Stokes says, so the true cut is
    /// coarser. Oil as heavy as the water has no cut.
    "drag-cut" "Droplet that just rises at a given velocity, with the drag of a sphere"
    fn diameter(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in 0.0 .. 10000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Length = "d" "droplet diameter" [UM, UM];
    solves [v M_S, rho_w KG_M3, rho_o KG_M3, mu PA_S => d M] {
        GRAVITY * (rho_w - rho_o) * d * d
            => 18.0 * mu * v * max(1.0 + DRAG * pow(rho_w * v * d / mu, POWER), FLOOR / 24.0 * (rho_w * v * d / mu))
    } by {
        let stokes = sqrt(18.0 * mu * v / (GRAVITY * (rho_w - rho_o)));
        let drag = |d: f64| max(1.0 + DRAG * pow(rho_w * v * d / mu, POWER), FLOOR / 24.0 * (rho_w * v * d / mu));
        let over = |d: f64| d - stokes * sqrt(drag(d));
        // The right side grows more slowly than d, so that some size is above the root.
        let mut high = 2.0 * stokes;
        while over(high) < 0.0 && high < 1e9 {
            high *= 4.0;
        }
        if stokes > 0.0 { root(stokes, high, over) } else if stokes == 0.0 { Some(0.0) } else { None }
    }
    constants [GRAVITY "g", DRAG "0.15", POWER "0.687", FLOOR "0.44"]
    sources [SCHILLER_NAUMANN]
    checks [
        "v=0.30685 mm/s, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s" => "60.000 um", ByHand("the inverse of drag-rise, solved by bracketing in Python, scipy 1.17.1");
        "v=32.604 mm/s, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s" => "1000.0 um", ByHand("the inverse of drag-rise, solved by bracketing in Python, scipy 1.17.1");
        "v=0.00008172 mm/s, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP" => "1.000 um", Limit("Stokes' law at a vanishing Reynolds number");
        "v=456.1 mm/s, rho_w=1000 kg/m3, rho_o=300 kg/m3, mu=0.1 cP" => "10.000 mm", Limit("drag coefficient at its floor: d = 3 x 0.44 v^2/(4 g 0.7)");
        "v=0 mm/s, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP" => "0 um", Limit("what does not rise has no size");
        "v=0.3 mm/s, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP" => "outside: result", Limit("no cut without a difference of density");
    ]
}

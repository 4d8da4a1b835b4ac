//! Formula: rise of a droplet with the drag of a sphere

use super::stokes_rise;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{RISE_TIME_TABLE, SCHILLER_NAUMANN};
use stillrise_units::math::{abs, max, min, pow, sqrt};
use stillrise_units::{Density, G, Length, Velocity, Viscosity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;
/// Coefficient and exponent of Schiller and Naumann, and the floor of the drag coefficient.
pub(super) const DRAG: f64 = 0.15;
pub(super) const POWER: f64 = 0.687;
pub(super) const FLOOR: f64 = 0.44;

formula! {
    /// Terminal velocity of one rigid droplet at any Reynolds number up to some 100 000.
    ///
    /// Drag after Schiller and Naumann, `C_d = max(24/Re (1 + 0.15 Re^0.687), 0.44)`; the relation
    /// below is the balance of buoyancy and that drag, multiplied out so that it holds at rest too.
    /// Small droplets give Stokes' law. Droplets below 3 mm move as rigid spheres, because
    /// surface-active matter holds their skin still. Sinking oil gives a negative velocity.
    "drag-rise" "Rise of a droplet with the drag of a sphere"
    fn rise(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 3000.0 in 0.0 .. 10000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 3000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Velocity = "v" "rise velocity" [FT_MIN, MM_S];
    solves [d M, rho_w KG_M3, rho_o KG_M3, mu PA_S => v M_S] {
        18.0 * mu * v * max(1.0 + DRAG * pow(rho_w * abs(v) * d / mu, POWER), FLOOR / 24.0 * (rho_w * abs(v) * d / mu))
            => GRAVITY * (rho_w - rho_o) * d * d
    } by {
        let stokes = stokes_rise::plain(d, rho_w, rho_o, mu);
        Some(stokes * slowing(rho_w * abs(stokes) * d / mu))
    }
    constants [GRAVITY "g", DRAG "0.15", POWER "0.687", FLOOR "0.44"]
    sources [SCHILLER_NAUMANN]
    checks [
        "d=300 um, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "6.35 mm/s"
            within 0.07 "the table prints 12 s, to the second, where this page gives 12.8 s and Stokes' law 10.5 s",
            Published(&RISE_TIME_TABLE, "300 µm: 3 in in 12 s");
        "d=60 um, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s" => "0.30685 mm/s",
            ByHand("solved by bracketing in Python, scipy 1.17.1");
        "d=1000 um, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s" => "32.604 mm/s",
            ByHand("solved by bracketing in Python, scipy 1.17.1");
        "d=1 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP" => "0.00008172 mm/s",
            Limit("Stokes' law at a vanishing Reynolds number: 9.80665 x 150 x 1e-12 / 0.018");
        "d=1 um, rho_w=1000 kg/m3, rho_o=1150 kg/m3, mu=1 cP" => "-0.00008172 mm/s", Limit("the same difference of density downwards");
        "d=0 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP" => "0 mm/s", Limit("no droplet, no buoyancy");
        "d=10000 um, rho_w=1000 kg/m3, rho_o=300 kg/m3, mu=0.1 cP" => "456.1 mm/s",
            Limit("drag coefficient at its floor: sqrt(4 x 9.80665 x 0.7 x 0.01 / (3 x 0.44)) m/s");
    ]
}

/// Terminal velocity over that of Stokes, for a droplet whose Stokes velocity would give `re`.
///
/// With q that share, `q max(1 + 0.15 (q re)^0.687, 0.44/24 q re) = 1`: the smaller of the roots of the
/// two branches. The first branch is convex and 1/(1 + 0.15 re^0.687) lies just below its root, so
/// Newton overshoots once and then comes down to it.
pub(crate) fn slowing(re: f64) -> f64 {
    let slow = DRAG * pow(re, POWER);
    let mut share = 1.0 / (1.0 + slow);
    // The root differs from this by the square of what is small.
    if slow < 1e-8 {
        return share;
    }
    for _ in 0..60 {
        let bend = slow * pow(share, POWER);
        let step = (share + bend * share - 1.0) / (1.0 + (1.0 + POWER) * bend);
        share -= step;
        // Newton doubles the digits: a step this small leaves an error of its square.
        if abs(step) < 1e-8 * share {
            break;
        }
    }
    let floor = if re > 0.0 { sqrt(24.0 / (FLOOR * re)) } else { 1.0 };
    min(min(1.0, floor), share)
}

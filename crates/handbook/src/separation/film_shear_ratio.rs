//! Formula: pull of the water on an oil film over the film's own drive

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{JUDGEMENT, PLANE_POISEUILLE};
use stillrise_units::math::sin;
use stillrise_units::{Angle, Density, G, Length, Ratio, Velocity, Viscosity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// Shear of the water in a gap on the oil film under the plate, over the buoyancy that drains it.
    ///
    /// By judgement a film is in danger of being held up or torn off above 0.3. It counts the developed
    /// laminar flow alone: edges, where the water turns into the pack and out of it, and surges
    /// pull harder. Near one, the film of `film-thickness` is no longer what drains. Across the flow
    /// the pull is sideways, and carries the oil along before it leaves.
    "film-shear-ratio" "Pull of the water on the oil film under a plate"
    fn pull(
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 1e5];
        u: Velocity = "U" "mean velocity in the gap" [FT_MIN, MM_S: 0.1 .. 50.0 in 0.0 .. 1e5];
        gap: Length = "h" "gap, square to the plates" [IN, MM: 5.0 .. 50.0 in 0.1 .. 10000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        theta: Angle = "theta" "angle of the plates to the horizontal" [DEG, DEG: 30.0 .. 70.0 in 0.0 .. 90.0];
        film: Length = "delta" "thickness of the film" [MIL, MM: 0.01 .. 5.0 in 0.0 .. 1000.0];
    ) -> Ratio = "R_s" "shear over drive" [ONE, ONE];
    reduced [mu PA_S, u M_S, gap M, rho_w KG_M3, rho_o KG_M3, theta RAD, film M => ONE] {
        6.0 * mu * u / gap / ((rho_w - rho_o) * GRAVITY * sin(theta) * film)
    }
    constants [GRAVITY "g"]
    sources [PLANE_POISEUILLE, JUDGEMENT]
    checks [
        "mu=1 mPa s, u=5 mm/s, gap=12.7 mm, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=50 deg, film=0.1 mm" => "0.0212462", ByHand("0.0023622 Pa over 0.1111825 Pa");
        "mu=1 mPa s, u=5 mm/s, gap=12.7 mm, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=60 deg, film=0.1 mm" => "0.0187934", ByHand("0.0023622 Pa over 0.1256936 Pa");
        "mu=1 mPa s, u=10 mm/s, gap=6 mm, rho_w=1000 kg/m3, rho_o=900 kg/m3, theta=90 deg, film=10.19716213 um" => "1.000000",
            Limit("0.01 Pa either way: one over 9.80665 is 0.1019716213");
        "mu=1 mPa s, u=0 mm/s, gap=6 mm, rho_w=1000 kg/m3, rho_o=900 kg/m3, theta=50 deg, film=0.1 mm" => "0.000000", Limit("still water pulls at nothing");
        "mu=1 mPa s, u=10 mm/s, gap=6 mm, rho_w=1000 kg/m3, rho_o=900 kg/m3, theta=50 deg, film=0 mm" => "outside: result", Limit("no film has no drive");
    ]
}

//! Formula: thickness of the oil film under a plate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::FALLING_FILM;
use stillrise_units::math::{pow, sin};
use stillrise_units::{Angle, Density, Flow, G, Length, Viscosity};

const OWN: &str = "100 mg/L caught from 5 mm/s in a gap of 12.7 mm, 1 m wide; independent evaluation in Python";
/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// Thickness of the oil that drains upwards under an inclined plate, at the edge it leaves by.
    ///
    /// A smooth laminar film of the oil caught on the plate, buoyancy against the oil's own viscosity; the
    /// water is taken to slip along it freely, which is right while `film-shear-ratio` is small.
    /// Counted from the lower edge the film thickens with the cube root of the oil caught so far. Clean plates that
    /// oil wets; on others it runs in rivulets, thicker. Level plates have no film that drains.
    "film-thickness" "Thickness of the oil film under a plate"
    fn thickness(
        q: Flow = "Q_o" "oil caught by one plate" [GPH, L_H: 0.0 .. 100.0 in 0.0 .. 1e6];
        width: Length = "w" "width of the plate across the drainage" [FT, M: 0.1 .. 5.0 in 0.001 .. 1000.0];
        mu_o: Viscosity = "mu_o" "viscosity of the oil" [CP, MPA_S: 0.5 .. 1000.0 in 0.01 .. 1e6];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        theta: Angle = "theta" "angle of the plates to the horizontal" [DEG, DEG: 30.0 .. 70.0 in 0.0 .. 90.0];
    ) -> Length = "delta" "thickness of the film" [MIL, MM];
    reduced [q M3_S, width M, mu_o PA_S, rho_w KG_M3, rho_o KG_M3, theta RAD => M] {
        pow(3.0 * mu_o * (q / width) / ((rho_w - rho_o) * GRAVITY * sin(theta)), 1.0 / 3.0)
    }
    constants [GRAVITY "g"]
    sources [FALLING_FILM]
    checks [
        "q=0.02689412 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=50 deg" => "0.100262 mm", ByHand(OWN);
        "q=0.02689412 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=60 deg" => "0.0962449 mm", ByHand(OWN);
        "q=5.88399 L/h, width=1 m, mu_o=100 mPa s, rho_w=1000 kg/m3, rho_o=900 kg/m3, theta=30 deg" => "1.00000 mm",
            ByHand("backwards: 490.3325 x 1e-9 / 0.3 = 1.6344e-6 m2/s");
        "q=0.21515296 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=50 deg" => "0.200524 mm",
            Limit("eight times the oil, twice the film");
        "q=0 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=50 deg" => "0.000000 mm", Limit("no oil, no film");
        "q=1 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=850 kg/m3, theta=0 deg" => "outside: result", Limit("a level plate does not drain");
        "q=1 L/h, width=1 m, mu_o=50 mPa s, rho_w=998 kg/m3, rho_o=1010 kg/m3, theta=50 deg" => "outside: result", Limit("heavier oil leaves the underside");
    ]
}

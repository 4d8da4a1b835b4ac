//! Formula: rise of a large droplet that deforms

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::GRACE;
use stillrise_units::math::pow;
use stillrise_units::{Density, G, Length, SurfaceTension, Velocity, Viscosity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;
/// Viscosity of the water to which the correlation refers, Pa s.
const MU_REFERENCE: f64 = 0.9e-3;

/// Grace's J of H; not a number up to 2, where the droplet is a sphere.
fn deformed(h: f64) -> f64 {
    if h > 59.3 {
        3.42 * pow(h, 0.441)
    } else if h > 2.0 {
        0.94 * pow(h, 0.757)
    } else {
        f64::NAN
    }
}

formula! {
    /// Terminal velocity of a droplet too large to stay a sphere, in water with traces of surface-active matter,
    /// Grace, Wairegi and Nguyen.
    ///
    /// Holds for H above 2, for oils in water from some 0.9 mm; below there is no answer, and `drag-rise`
    /// holds. Up to 3 mm both agree within 15 % for oils of 810 to 880 kg/m3 at 15 mN/m and more, and within 29 %
    /// at the ends of the ranges: what deforms is far larger than what a separator is sized for.
    "grace-rise" "Rise of a large droplet that deforms"
    fn rise(
        d: Length = "d" "droplet diameter" [MM, MM: 0.9 .. 10.0 in 0.01 .. 100.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        sigma: SurfaceTension = "sigma" "interfacial tension" [MN_M, MN_M: 5.0 .. 60.0 in 0.001 .. 1000.0];
    ) -> Velocity = "v" "rise velocity" [FT_MIN, MM_S];
    reduced [d M, rho_w KG_M3, rho_o KG_M3, mu PA_S, sigma N_M => M_S] {
        let lift = GRAVITY * (rho_w - rho_o);
        let morton = lift * pow(mu, 4.0) / (pow(rho_w, 2.0) * pow(sigma, 3.0));
        let eotvos = lift * pow(d, 2.0) / sigma;
        let h = 4.0 / 3.0 * eotvos * pow(morton, -0.149) * pow(mu / MU_REFERENCE, -0.14);
        let j = deformed(h);
        mu / (rho_w * d) * pow(morton, -0.149) * (j - 0.857)
    }
    constants [GRAVITY "g", MU_REFERENCE "mu_ref"]
    helpers [deformed(f64) "J" "0.94 H^0.757 from H 2 to 59.3, 3.42 H^0.441 above, none below"]
    sources [GRACE]
    checks [
        "d=2 mm, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s, sigma=25 mN/m" => "70.42 mm/s",
            ByHand("independent evaluation in Python");
        "d=0.2 mm, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.0016 mPa s, sigma=25 mN/m" => "outside: result", Limit("H below 2: a sphere");
        "d=2 mm, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 mPa s, sigma=25 mN/m" => "outside: result", Limit("no buoyancy");
    ]
}

//! Formula: droplets that wander onto a fibre

use super::fibre_interception::ku;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{FIBRE_DIFFUSION, STOKES_EINSTEIN};
use core::f64::consts::PI;
use stillrise_units::math::{exp, ln, pow};
use stillrise_units::{Length, Ratio, Temperature, Velocity, Viscosity};

/// Boltzmann's constant, J/K: exact, the SI defines the kelvin by it.
const BOLTZMANN: f64 = 1.380_649e-23;
/// Coefficient of the boundary-layer theory.
const C_THEORY: f64 = 2.6;

const OWN: &str = "independent evaluation in Python, with Ku from four linear equations";

formula! {
    /// Share of the water that would meet the fibre from which Brownian motion brings droplets to it.
    ///
    /// The theory of a thin layer at the fibre, with the droplet's diffusion after Stokes and Einstein. It
    /// counts for nothing above 2 µm, some 0.0002, and is here so that it is seen to. The coefficient 2.6
    /// belongs beside the exact `fibre-interception`; a fit of experiments has 1.6 here and 0.6 of
    /// `(1 - α)/Ku R²/(1 + R)` there: the pairs must not be mixed. Droplets held apart by their charge
    /// arrive and do not touch.
    "fibre-brownian" "Droplets that wander onto a fibre"
    fn diffusion(
        d: Length = "d" "droplet diameter" [UM, UM: 0.05 .. 500.0 in 0.001 .. 10000.0];
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
        u: Velocity = "U" "velocity on the face of the bed" [FT_MIN, MM_S: 0.1 .. 20.0 in 1e-6 .. 1e6];
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
    ) -> Ratio = "eta_D" "share by Brownian motion" [ONE, ONE];
    reduced [d M, fibre M, u M_S, solidity ONE, mu PA_S, t K => ONE] {
        let diffusivity = BOLTZMANN * t / (3.0 * PI * mu * d);
        let peclet = u * fibre / diffusivity;
        C_THEORY * pow((1.0 - solidity) / ku(solidity), 1.0 / 3.0) / pow(peclet, 2.0 / 3.0)
    }
    constants [BOLTZMANN "k_B", C_THEORY "2.6"]
    helpers [ku(f64) "Ku" "Kuwabara's factor, `kuwabara-factor`"]
    sources [FIBRE_DIFFUSION, STOKES_EINSTEIN]
    checks [
        "d=0.1 um, fibre=150 um, u=3 mm/s, solidity=5 %, mu=1.001596 mPa s, t=20 °C" => "0.00123884", ByHand(OWN);
        "d=1 um, fibre=150 um, u=3 mm/s, solidity=5 %, mu=1.001596 mPa s, t=20 °C" => "0.000266900", ByHand(OWN);
        "d=2 um, fibre=150 um, u=3 mm/s, solidity=5 %, mu=1.001596 mPa s, t=20 °C" => "0.000168137", ByHand(OWN);
        "d=8 um, fibre=150 um, u=3 mm/s, solidity=5 %, mu=1.001596 mPa s, t=20 °C" => "0.0000667251",
            Limit("eight times the droplet, 8^(-2/3): a quarter of the share at 1 µm");
        "d=1 um, fibre=150 um, u=24 mm/s, solidity=5 %, mu=1.001596 mPa s, t=20 °C" => "0.0000667251",
            Limit("eight times as fast: a quarter again");
    ]
}

/// The page's number on plain SI numbers, Kuwabara's factor known, for what is asked for millions of times.
pub(super) fn share(d: f64, fibre: f64, u: f64, solidity: f64, ku: f64, mu: f64, t: f64) -> f64 {
    let peclet = u * fibre * (3.0 * PI * mu * d) / (BOLTZMANN * t);
    C_THEORY * exp((ln((1.0 - solidity) / ku) - 2.0 * ln(peclet)) / 3.0)
}

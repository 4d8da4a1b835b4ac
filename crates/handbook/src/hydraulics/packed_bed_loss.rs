//! Formula: loss of a packed bed

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{CARMAN, ERDIM, ERGUN, KTA};
use crate::{choice, formula};
use stillrise_units::math::pow;
use stillrise_units::{Density, Length, Pressure, Ratio, Velocity, Viscosity};

choice! {
    /// By whose law.
    BedLaw {
        /// Ergun 1952: the default
        Ergun "ergun",
        /// Carman 1937; a fifth more in creeping flow
        Carman "carman",
        /// Erdim, Akgiray and Demir 2015, fitted to beds of spheres
        Erdim "erdim",
        /// rule KTA 3102.3 of 1981, spheres at a voidage of 0.36 to 0.42; no answer outside it
        Kta "kta",
    }
}

/// The viscous term of the rule KTA 3102.3; not a number outside the voidages it was made for.
fn kta_viscous(voidage: f64) -> f64 {
    if (0.36..=0.42).contains(&voidage) { 160.0 } else { f64::NAN }
}

formula! {
    /// Pressure lost in a bed of grains or beads: a polishing medium, a bed of sand or granules.
    ///
    /// The diameter is that of a sphere of the same surface over volume, `6 (1 - voidage) / a`. Not for knitted mesh:
    /// at a voidage of 0.95 to 0.98 Ergun gives only a seventh to three quarters of what `mesh-loss` gives.
    /// Clean beds; oil and solids held close them.
    "packed-bed-loss" "Loss of a packed bed"
    fn loss(
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 1e5];
        u: Velocity = "U" "velocity on the face of the bed" [FT_MIN, MM_S: 0.0 .. 50.0 in 0.0 .. 1e4];
        length: Length = "L" "depth of the bed" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        d: Length = "d_p" "diameter of the grains" [MM, MM: 0.1 .. 50.0 in 0.001 .. 1000.0];
        voidage: Ratio = "epsilon" "open share of the bed" [PERCENT, PERCENT: 36.0 .. 60.0 in 1.0 .. 99.9];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 0.1 .. 2000.0];
        law: BedLaw = "law" "whose law";
    ) -> Pressure = "dp" "pressure lost" [PSI, PA];
    reduced [mu PA_S, u M_S, length M, d M, voidage ONE, rho KG_M3 => PA] {
        let re = rho * u * d / (mu * (1.0 - voidage));
        let f = if law == BedLaw::Ergun { 150.0 + 1.75 * re } else if law == BedLaw::Carman { 180.0 + 2.871 * pow(re, 0.9) }
            else if law == BedLaw::Erdim { 160.0 + 2.81 * pow(re, 0.904) } else { kta_viscous(voidage) + 3.0 * pow(re, 0.9) };
        f * mu * u * length / pow(d, 2.0) * pow(1.0 - voidage, 2.0) / pow(voidage, 3.0)
    }
    helpers [kta_viscous(f64) "c_KTA" "viscous term of the rule, voidage 0.36 to 0.42"]
    sources [ERGUN, CARMAN, ERDIM, KTA]
    checks [
        "mu=1.0016 mPa s, u=5 mm/s, length=1 m, d=1 mm, voidage=0.4, rho=998.2072 kg/m3, law=ergun" => "4634.92 Pa", ByHand("independent evaluation in Python");
        "mu=1 mPa s, u=0 mm/s, length=1 m, d=1 mm, voidage=0.4, rho=1000 kg/m3, law=carman" => "0 Pa", Limit("no flow, no loss");
        "mu=1 mPa s, u=0.001 mm/s, length=1 m, d=0.1 mm, voidage=0.5, rho=1000 kg/m3, law=ergun" => "30.00 Pa",
            Limit("creeping flow: 150 x 1e-3 x 1e-6 / 1e-8 x 0.25 / 0.125");
        "mu=1 mPa s, u=0.001 mm/s, length=1 m, d=0.1 mm, voidage=0.5, rho=1000 kg/m3, law=carman" => "36.00 Pa",
            Limit("creeping flow: 180 in place of 150");
        "mu=1 mPa s, u=5 mm/s, length=1 m, d=1 mm, voidage=0.6, rho=1000 kg/m3, law=kta" => "outside: result", Limit("the rule ends at a voidage of 0.42");
        "mu=0.01 mPa s, u=10 m/s, length=1 m, d=100 mm, voidage=0.5, rho=1000 kg/m3, law=ergun" => "7000.0 kPa",
            Limit("inertia alone: 1.75 x 1000 x 100 / 0.1 x 0.5 / 0.125");
    ]
}

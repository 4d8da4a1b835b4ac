//! Formula: pressure at which a thin cylinder collapses from outside

use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{MODEL_BASIN, ROARK_LONG_TUBE, ROARK_SHORT_TUBE};
use crate::{choice, formula};
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Pressure, Ratio};

choice! {
    /// Which law of collapse.
    CollapseLaw {
        /// between heads or rings that hold it round, Roark's coefficient 0.807 (from memory): the lower, the default
        ShortTube "short tube",
        /// between heads or rings, formula of the US Experimental Model Basin
        ModelBasin "model basin",
        /// far from heads and rings: the least that any length keeps
        LongTube "long tube",
    }
}

/// Length over diameter less the part that the heads hold; not a number where nothing is left.
fn free_length(ratio: f64, wall: f64) -> f64 {
    let free = ratio - 0.45 * sqrt(wall);
    if free > 0.0 { free } else { f64::NAN }
}

formula! {
    /// Elastic collapse of a round, perfect shell under pressure from outside: groundwater, soil, a vacuum while a tank
    /// with a blocked vent is pumped out.
    ///
    /// Divide by a factor of at least 2 for what is not round and not perfect: a proposal of this handbook, codes of
    /// pressure vessels take about 3 (from memory). The two short laws lie 6 to 8 % apart. Rings and inner bulkheads
    /// that are stiff enough shorten the free length. Below a ratio of radius to thickness of 10 the long law ends.
    "cylinder-collapse" "Pressure at which a thin cylinder collapses from outside"
    fn pressure(
        d: Length = "D" "diameter of the shell, mid-wall" [IN, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
        t: Length = "t" "thickness of the shell" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        length: Length = "L" "free length between heads or rings" [IN, M: 0.3 .. 15.0 in 0.001 .. 1e4];
        e: Pressure = "E" "modulus of elasticity" [PSI, KPA: 5e6 .. 2.2e8 in 1.0 .. 1e9];
        nu: Ratio = "nu" "Poisson's ratio" [ONE, ONE: 0.25 .. 0.4 in 0.0 .. 0.5];
        law: CollapseLaw = "law" "which law of collapse";
    ) -> Pressure = "p_c" "pressure of collapse" [PSI, KPA];
    reduced [d M, t M, length M, e PA, nu ONE => PA] {
        let r = d / 2.0;
        let flat = 1.0 - nu * nu;
        if law == CollapseLaw::ShortTube {
            0.807 * e * t * t / (length * r) * pow(t * t / (r * r) / (flat * flat * flat), 0.25)
        } else if law == CollapseLaw::ModelBasin {
            2.42 * e / pow(flat, 0.75) * pow(t / d, 2.5) / free_length(length / d, t / d)
        } else { 0.25 * e / flat * pow(t / r, 3.0) }
    }
    helpers [free_length(f64, f64) "L_f" "length over diameter, less 0.45 times the root of thickness over diameter"]
    sources [ROARK_SHORT_TUBE, MODEL_BASIN, ROARK_LONG_TUBE]
    checks [
        "d=13.5 in, t=0.375 in, length=100000 in, e=29000000 psi, nu=0.29, law=long tube" => "1357 psi",
            Published(&ROARK_LONG_TUBE, "radius 6.75 in, 0.375 in thick: 1.357e3 psi");
        "d=96 in, t=0.25 in, length=160 in, e=29000000 psi, nu=0.3, law=short tube" => "14.75 psi",
            ByHand("0.807 x 29e6 x 0.0625 / (160 x 48) x (2.7127e-5 / 0.753571)^0.25");
        "d=96 in, t=0.25 in, length=160 in, e=29000000 psi, nu=0.3, law=model basin" => "15.86 psi",
            ByHand("2.42 x 29e6 / 0.93170 x (0.25/96)^2.5 / (1.66667 - 0.45 x 0.05103)");
        "d=48 in, t=0.1345 in, length=72 in, e=29000000 psi, nu=0.3, law=short tube" => "19.69 psi", ByHand("independent script");
        "d=48 in, t=0.1345 in, length=72 in, e=29000000 psi, nu=0.3, law=model basin" => "21.21 psi", ByHand("independent script");
        "d=120 in, t=0.25 in, length=360 in, e=29000000 psi, nu=0.3, law=short tube" => "4.691 psi", ByHand("independent script");
        "d=120 in, t=0.3125 in, length=120 in, e=29000000 psi, nu=0.3, law=model basin" => "26.68 psi", ByHand("independent script");
        "d=1 m, t=10 mm, length=1 m, e=200000000 kPa, nu=0, law=long tube" => "400.0000 kPa", Limit("a ring without Poisson's ratio: a quarter of E (t/R)^3");
        "d=1 m, t=10 mm, length=0.02 m, e=200000000 kPa, nu=0.3, law=model basin" => "outside: result", Limit("the heads hold all of it");
    ]
}

//! Formula: oil left behind an ideal cut, Rosin-Rammler

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{HAZEN_CAMP, ROSIN_RAMMLER};
use stillrise_units::math::{exp, gamma, gamma_share, pow};
use stillrise_units::{Length, Ratio};

const OWN: &str = "closed form and quadrature in Python, agreeing to 1e-5";
const SCIPY: &str = "scipy 1.17.1, integrate.quad over stats.weibull_min";

formula! {
    /// Share of a Rosin-Rammler oil volume that an ideal basin leaves in the water.
    ///
    /// Droplets above the cut are all caught, those below it in the ratio (d/d_c)² of their Stokes
    /// velocities. `lognormal-removal` is the same of log-normal droplets, `remaining-oil` of either in a
    /// basin that mixes, from their median. Assumes Stokes' law.
    "rosin-rammler-removal" "Oil left behind an ideal cut, Rosin-Rammler"
    fn remaining(
        delta: Length = "delta" "characteristic size: 63.2 % of the volume is finer" [UM, UM: 5.0 .. 1000.0 in 0.01 .. 100000.0];
        n: Ratio = "n" "exponent" [ONE, ONE: 1.0 .. 4.0 in 0.1 .. 50.0];
        cut: Length = "d_c" "smallest droplet wholly caught" [UM, UM: 5.0 .. 300.0 in 0.01 .. 1000000.0];
    ) -> Ratio = "R" "share of the oil that is left" [PERCENT, PERCENT];
    reduced [delta UM, n ONE, cut UM => ONE] {
        let x = pow(cut / delta, n);
        1.0 - exp(-x) - (delta / cut) * (delta / cut) * gamma_lower(1.0 + 2.0 / n, x)
    }
    helpers [gamma_lower(f64, f64) "gamma" "lower incomplete gamma function: integral of t^(a - 1) e^-t from 0 to x"]
    sources [ROSIN_RAMMLER, HAZEN_CAMP]
    checks [
        "delta=100 um, n=2, cut=60 um" => "0.16021", ByHand(OWN);
        "delta=100 um, n=1.5, cut=60 um" => "0.22707", ByHand(OWN);
        "delta=60 um, n=2.6, cut=60 um" => "0.32416", ByHand(OWN);
        "delta=100 um, n=2, cut=60 um" => "0.16021202", Library(SCIPY);
        "delta=100 um, n=1.5, cut=60 um" => "0.22707373", Library(SCIPY);
        "delta=60 um, n=2.6, cut=60 um" => "0.32415785", Library(SCIPY);
        "delta=100 um, n=3, cut=150 um" => "0.60503716", Library(SCIPY);
        "delta=100 um, n=1, cut=30 um" => "0.17919304", Library(SCIPY);
        "delta=50 um, n=2.5, cut=200 um" => "0.94178851", Library(SCIPY);
        "delta=60 um, n=50, cut=1000000 um" => "100 %", Limit("a cut far above all droplets catches nothing");
        "delta=1000 um, n=50, cut=500 um" => "0.000 %", Limit("near-equal droplets above the cut: all are caught");
    ]
}

fn gamma_lower(a: f64, x: f64) -> f64 {
    gamma(a) * gamma_share(a, x)
}

//! Formula: oil left behind an ideal cut

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, HAZEN_CAMP};
use stillrise_units::math::{exp, ln, normal_cdf};
use stillrise_units::{Length, Ratio};

const OWN: &str = "closed form and quadrature in Python, agreeing to 1e-5";
const ONE_LESS: &str = "1 less the removal of an independent evaluation in Python, verified by quadrature";

formula! {
    /// Share of a log-normal oil volume that an ideal basin leaves in the water.
    ///
    /// Droplets above the cut are all caught, those below it in the ratio (d/d_c)² of their
    /// Stokes velocities. A "60 µm cut" on a feed of 60 µm median still passes 28 % of the oil
    /// at a spread of 2, and more once the basin mixes (`remaining-oil`). Assumes Stokes' law.
    "lognormal-removal" "Oil left behind an ideal cut"
    fn remaining(
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 100000.0];
        sg: Ratio = "s_g" "geometric spread" [ONE, ONE: 1.2 .. 4.0 in 1.001 .. 20.0];
        cut: Length = "d_c" "smallest droplet wholly caught" [UM, UM: 5.0 .. 300.0 in 0.01 .. 1000000.0];
    ) -> Ratio = "R" "share of the oil that is left" [PERCENT, PERCENT];
    reduced [d50 UM, sg ONE, cut UM => ONE] {
        let s = ln(sg);
        let z = ln(cut / d50) / s;
        normal_cdf(z) - (d50 / cut) * (d50 / cut) * exp(2.0 * s * s) * normal_cdf(z - 2.0 * s)
    }
    sources [DEFINITION, HAZEN_CAMP]
    checks [
        "d50=100 um, sg=2, cut=60 um" => "0.10810", ByHand(OWN);
        "d50=60 um, sg=2, cut=60 um" => "0.28348", ByHand(OWN);
        "d50=40 um, sg=2, cut=60 um" => "0.47503", ByHand(OWN);
        "d50=60 um, sg=3, cut=60 um" => "0.34349", ByHand(OWN);
        "d50=60 um, sg=2, cut=20 um" => "0.02160", ByHand(OWN);
        "d50=100 um, sg=2, cut=30 um" => "0.01522", ByHand(OWN);
        "d50=30 um, sg=2.5, cut=30 um" => "0.32076", ByHand(OWN);
        "d50=60 um, sg=1.6487212707, cut=10 um" => "0.00003381", ByHand(ONE_LESS);
        "d50=60 um, sg=1.6487212707, cut=30 um" => "0.02670894", ByHand(ONE_LESS);
        "d50=60 um, sg=1.6487212707, cut=60 um" => "0.23842171", ByHand(ONE_LESS);
        "d50=60 um, sg=1.6487212707, cut=150 um" => "0.75620141", ByHand(ONE_LESS);
        "d50=100 um, sg=2.0137527075, cut=30 um" => "0.01594568", ByHand(ONE_LESS);
        "d50=100 um, sg=2.0137527075, cut=60 um" => "0.10993912", ByHand(ONE_LESS);
        "d50=100 um, sg=2.0137527075, cut=150 um" => "0.47496910", ByHand(ONE_LESS);
        "d50=150 um, sg=2, cut=30 um" => "0.00329834", ByHand(ONE_LESS);
        "d50=150 um, sg=2, cut=60 um" => "0.03783746", ByHand(ONE_LESS);
        "d50=150 um, sg=2, cut=150 um" => "0.28348097", ByHand(ONE_LESS);
        "d50=30 um, sg=2.7182818285, cut=10 um" => "0.07131941", ByHand(ONE_LESS);
        "d50=30 um, sg=2.7182818285, cut=30 um" => "0.33189800", ByHand(ONE_LESS);
        "d50=30 um, sg=2.7182818285, cut=60 um" => "0.57923505", ByHand(ONE_LESS);
        "d50=30 um, sg=2.7182818285, cut=150 um" => "0.84336615", ByHand(ONE_LESS);
        "d50=60 um, sg=1.001, cut=120 um" => "75.00 %", Limit("equal droplets of half the cut: a quarter is caught");
        "d50=60 um, sg=1.001, cut=30 um" => "0 %", Limit("equal droplets above the cut: all are caught");
    ]
}

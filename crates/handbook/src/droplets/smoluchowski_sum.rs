//! Formula: sizes after coalescence at a rate that grows with volume

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::GOLOVIN;
use stillrise_units::Ratio;
use stillrise_units::math::{exp, sqrt};

const OWN: &str = "closed form evaluated in Python, number, volume and second moment checked by quadrature";

formula! {
    /// Density of the number of droplets over their volume when two join at a rate that is proportional to their
    /// volumes together, the volumes exponentially spread at the start (Golovin).
    "smoluchowski-sum" "Sizes after coalescence at a rate that grows with volume"
    fn density(
        x: Ratio = "x" "volume over the mean at the start" [ONE, ONE: 0.0 .. 100.0 in 0.0 .. 300.0];
        tau: Ratio = "tau" "rate times number times mean volume at the start times time" [ONE, ONE: 0.0 .. 5.0 in 1e-6 .. 50.0];
    ) -> Ratio = "n" "density of number" [ONE, ONE];
    reduced [x ONE, tau ONE => ONE] {
        let joined = 1.0 - exp(-tau);
        (1.0 - joined) / sqrt(joined) * exp(-(1.0 + joined) * x) * i_1(2.0 * x * sqrt(joined)) / x
    }
    helpers [i_1(f64) "I_1" "modified Bessel function of the first kind, by its power series"]
    sources [GOLOVIN]
    checks [
        "x=0.1, tau=1" => "0.313470", ByHand(OWN);
        "x=1, tau=1" => "0.0971839", ByHand(OWN);
        "x=5, tau=1" => "0.0100902", ByHand(OWN);
        "x=20, tau=1" => "6.98138e-4", ByHand(OWN);
        "x=0.1, tau=2" => "0.112799", ByHand(OWN);
        "x=1, tau=2" => "0.0314408", ByHand(OWN);
        "x=5, tau=2" => "3.56022e-3", ByHand(OWN);
        "x=20, tau=2" => "4.27043e-4", ByHand(OWN);
        "x=0.1, tau=3" => "0.0411606", ByHand(OWN);
        "x=1, tau=3" => "0.0110237", ByHand(OWN);
        "x=5, tau=3" => "1.24927e-3", ByHand(OWN);
        "x=20, tau=3" => "1.59532e-4", ByHand(OWN);
        "x=1, tau=0.000001" => "0.3679", Limit("the spread at the start, e^-1");
    ]
}

/// I_1 by its power series (Abramowitz and Stegun, 9.6.10): all terms are positive, none cancels.
fn i_1(z: f64) -> f64 {
    let quarter = 0.25 * z * z;
    let (mut term, mut sum) = (0.5 * z, 0.5 * z);
    for k in 1..2000 {
        let k = f64::from(k);
        term *= quarter / (k * (k + 1.0));
        sum += term;
        if term < 1e-17 * sum {
            break;
        }
    }
    sum
}

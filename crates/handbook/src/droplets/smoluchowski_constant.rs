//! Formula: sizes of droplets when all meet equally often

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{SCOTT, SMOLUCHOWSKI};
use stillrise_units::Ratio;
use stillrise_units::math::exp;

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Number of droplets per step of volume, over N_0/v_0, when any two meet equally often.
    ///
    /// Of volumes that are spread exponentially about their mean v_0 at the start, and stay so, about a mean
    /// that grows. Time counts as in `smoluchowski-number`. The number left is 2/(2 + τ), the volume stays,
    /// the sum of the squares of volume grows as 2 + τ. An exact case to hold a calculation of
    /// coalescence against, not a forecast.
    "smoluchowski-constant" "Sizes of droplets when all meet equally often"
    fn density(
        tau: Ratio = "tau" "time times rate times first number" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e12];
        x: Ratio = "x" "volume of a droplet over the first mean" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e12];
    ) -> Ratio = "f" "droplets per step of volume" [ONE, ONE];
    reduced [tau ONE, x ONE => ONE] { 4.0 / ((2.0 + tau) * (2.0 + tau)) * exp(-2.0 * x / (2.0 + tau)) }
    sources [SMOLUCHOWSKI, SCOTT]
    checks [
        "tau=1, x=0.1" => "0.415781", ByHand(OWN);
        "tau=1, x=1" => "0.228185", ByHand(OWN);
        "tau=1, x=5" => "0.0158551", ByHand(OWN);
        "tau=1, x=20" => "7.198e-7", ByHand(OWN);
        "tau=2, x=0.1" => "0.237807", ByHand(OWN);
        "tau=2, x=1" => "0.151633", ByHand(OWN);
        "tau=2, x=5" => "0.0205212", ByHand(OWN);
        "tau=2, x=20" => "1.135e-5", ByHand(OWN);
        "tau=10, x=0.1" => "0.0273187", ByHand(OWN);
        "tau=10, x=1" => "0.0235134", ByHand(OWN);
        "tau=10, x=5" => "0.0120722", ByHand(OWN);
        "tau=10, x=20" => "9.909e-4", ByHand(OWN);
        "tau=100, x=0.1" => "3.83714e-4", ByHand(OWN);
        "tau=100, x=1" => "3.77002e-4", ByHand(OWN);
        "tau=100, x=5" => "3.48563e-4", ByHand(OWN);
        "tau=100, x=20" => "2.59746e-4", ByHand(OWN);
        "tau=0, x=1" => "0.367879", Limit("the exponential at the start: 1/e");
        "tau=2, x=0" => "0.25", Limit("a quarter of the first density where no smaller ones can join to it");
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::droplets::moments;
    use stillrise_units::ratio;

    #[test]
    fn the_volume_stays_and_its_squares_grow_as_2_plus_tau() {
        for tau in [0.0, 1.0, 2.0, 10.0, 100.0] {
            let found = moments(|x| density(ratio(tau), x));
            for (got, exact) in found.into_iter().zip([2.0 / (2.0 + tau), 1.0, 2.0 + tau]) {
                assert!((got / exact - 1.0).abs() < 1e-6, "{tau}: {got} {exact}");
            }
        }
    }
}

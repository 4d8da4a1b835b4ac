//! Formula: sizes after coalescence at a constant rate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SMOLUCHOWSKI;
use stillrise_units::Ratio;
use stillrise_units::math::exp;

const OWN: &str = "closed form evaluated in Python, its sums checked by quadrature";

formula! {
    /// Density of the number of droplets over their volume, in mean volumes and numbers at the start, when any
    /// two join at one rate and the volumes began exponentially spread.
    "smoluchowski-density" "Sizes after coalescence at a constant rate"
    fn density(
        x: Ratio = "x" "volume over the mean at the start" [ONE, ONE: 0.0 .. 100.0 in 0.0 .. 1e6];
        tau: Ratio = "tau" "rate times number at the start times time" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e9];
    ) -> Ratio = "n" "density of number" [ONE, ONE];
    reduced [x ONE, tau ONE => ONE] { 4.0 / ((2.0 + tau) * (2.0 + tau)) * exp(-2.0 * x / (2.0 + tau)) }
    sources [SMOLUCHOWSKI]
    checks [
        "x=0.1, tau=1" => "0.415781", ByHand(OWN);
        "x=1, tau=1" => "0.228185", ByHand(OWN);
        "x=5, tau=1" => "0.0158551", ByHand(OWN);
        "x=20, tau=1" => "7.198e-7", ByHand(OWN);
        "x=0.1, tau=2" => "0.237807", ByHand(OWN);
        "x=1, tau=2" => "0.151633", ByHand(OWN);
        "x=5, tau=2" => "0.0205212", ByHand(OWN);
        "x=20, tau=2" => "1.135e-5", ByHand(OWN);
        "x=0.1, tau=10" => "0.0273187", ByHand(OWN);
        "x=1, tau=10" => "0.0235134", ByHand(OWN);
        "x=5, tau=10" => "0.0120722", ByHand(OWN);
        "x=20, tau=10" => "9.909e-4", ByHand(OWN);
        "x=0.1, tau=100" => "3.83714e-4", ByHand(OWN);
        "x=1, tau=100" => "3.77002e-4", ByHand(OWN);
        "x=5, tau=100" => "3.48563e-4", ByHand(OWN);
        "x=20, tau=100" => "2.59746e-4", ByHand(OWN);
        "x=0, tau=0" => "1", Limit("the spread at the start");
    ]
}

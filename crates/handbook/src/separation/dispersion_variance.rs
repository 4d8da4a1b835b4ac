//! Formula: spread of the stay in a tank with dispersion

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CLOSED_DISPERSION;
use stillrise_units::Ratio;
use stillrise_units::math::exp;

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Variance of the residence time over its mean squared, in a tank closed at both ends, from its dispersion
    /// number (dispersion over velocity times length).
    "dispersion-variance" "Spread of the stay in a tank with dispersion"
    fn variance(
        d: Ratio = "d" "dispersion number" [ONE, ONE: 0.01 .. 10.0 in 1e-6 .. 1e6];
    ) -> Ratio = "sigma^2" "variance over the mean squared" [ONE, ONE];
    reduced [d ONE => ONE] { 2.0 * d - 2.0 * d * d * (1.0 - exp(-1.0 / d)) }
    sources [CLOSED_DISPERSION]
    checks [
        "d=0.01" => "0.0198", ByHand(OWN);
        "d=0.05" => "0.0950", ByHand(OWN);
        "d=0.1" => "0.1800", ByHand(OWN);
        "d=0.2" => "0.3205", ByHand(OWN);
        "d=0.5" => "0.5677", ByHand(OWN);
        "d=1" => "0.7358", ByHand(OWN);
        "d=2" => "0.8522", ByHand(OWN);
        "d=0.00001" => "0.00002000", Limit("little dispersion: twice the number");
    ]
}

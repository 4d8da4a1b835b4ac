//! Formula: spread of the residence time with dispersion

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CLOSED_DISPERSION;
use stillrise_units::Ratio;
use stillrise_units::math::exp;

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Variance of the residence time over the square of its mean, in a basin closed at both ends.
    ///
    /// Closed: nothing mixes back into the inlet pipe or from beyond the outlet, as through a weir. A tracer
    /// curve taken inside the basin has another variance. At 0 it is plug flow, without bound one mixed tank.
    "dispersion-variance" "Spread of the residence time with dispersion"
    fn variance(
        d: Ratio = "d" "dispersion number: dispersion over velocity times length" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 1000.0];
    ) -> Ratio = "Var" "variance over the square of the mean" [ONE, ONE];
    reduced [d ONE => ONE] { 2.0 * d - 2.0 * d * d * (1.0 - exp(-1.0 / d)) }
    sources [CLOSED_DISPERSION]
    checks [
        "d=0.01" => "0.0198", ByHand(OWN);
        "d=0.05" => "0.0950", ByHand(OWN);
        "d=0.1" => "0.18000091", ByHand(OWN);
        "d=0.2" => "0.32053904", ByHand(OWN);
        "d=0.5" => "0.56766764", ByHand(OWN);
        "d=2" => "0.85224528", ByHand(OWN);
        "d=10" => "0.96748361", ByHand(OWN);
        "d=1" => "0.735759", Limit("2/e");
        "d=0" => "0", Limit("plug flow");
        "d=1000" => "1.000", Limit("one mixed tank");
    ]
}

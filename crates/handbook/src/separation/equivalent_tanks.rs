//! Formula: number of tanks in series of one spread

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::TANKS_IN_SERIES;
use stillrise_units::Ratio;

const OWN: &str = "independent evaluation in Python of a basin with dispersion";

formula! {
    /// How many equal mixed tanks in series spread the residence time as much.
    ///
    /// From a tracer test, or from `dispersion-variance`. The variance hangs on the tail of the curve, which
    /// a test that ends early cuts off: n is then too high. Above 1 the basin has dead corners or a short
    /// circuit, and tanks in series do not describe it.
    "equivalent-tanks" "Number of tanks in series of one spread"
    fn tanks(
        variance: Ratio = "Var" "variance of the residence time over the square of its mean" [ONE, ONE: 0.02 .. 1.0 in 1e-6 .. 100.0];
    ) -> Ratio = "n" "number of tanks" [ONE, ONE];
    typed { 1.0 / variance }
    sources [TANKS_IN_SERIES]
    checks [
        "variance=0.0198" => "50.5", ByHand(OWN);
        "variance=0.095" => "10.53", ByHand(OWN);
        "variance=0.18000091" => "5.556", ByHand(OWN);
        "variance=0.32053904" => "3.120", ByHand(OWN);
        "variance=0.56766764" => "1.762", ByHand(OWN);
        "variance=0.73575888" => "1.359", ByHand(OWN);
        "variance=0.85224528" => "1.173", ByHand(OWN);
        "variance=1" => "1", Limit("one mixed tank: times spread as their mean");
    ]
}

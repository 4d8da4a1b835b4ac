//! Formula: tanks in series of a measured spread

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::TANKS_IN_SERIES;
use stillrise_units::Ratio;

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Number of mixed tanks in series whose residence time spreads as was measured.
    ///
    /// A tracer's variance is dear to measure: a long tail that is cut off makes a tank look better than it is.
    "equivalent-tanks" "Tanks in series of a measured spread"
    fn tanks(
        variance: Ratio = "sigma^2" "variance of the stay over the mean squared" [ONE, ONE: 0.02 .. 1.0 in 1e-6 .. 1e6];
    ) -> Ratio = "n" "number of tanks" [ONE, ONE];
    reduced [variance ONE => ONE] { 1.0 / variance }
    sources [TANKS_IN_SERIES]
    checks [
        "variance=0.0198" => "50.5" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.0950" => "10.53" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.1800" => "5.556" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.3205" => "3.12" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.5677" => "1.762" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.7358" => "1.359" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=0.8522" => "1.173" within 3e-3 "the variance is printed to four places", ByHand(OWN);
        "variance=1" => "1", Limit("one mixed tank");
    ]
}

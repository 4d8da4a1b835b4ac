//! Formula: half the width of the interval that holds a mean

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::STUDENT;
use stillrise_units::math::sqrt;
use stillrise_units::{Concentration, Ratio};

formula! {
    /// How far the true mean may lie from the mean of a set on either side, by Student's t.
    ///
    /// At the 97.5th percentile of t the interval holds the true mean in 95 of 100 sets of independent, normal
    /// results. Oil contents are skewed and grabs of one day are not independent: with few results the upper end is
    /// then too low and the interval holds less often than it says.
    "mean-half-width" "Half the width of the interval of a mean"
    fn half_width(
        deviation: Concentration = "s_C" "standard deviation of the results" [MG_L, MG_L: 0.0 .. 1000.0 in 0.0 .. 1e7];
        n: Ratio = "n" "number of results" [ONE, ONE: 2.0 .. 1000.0 in 2.0 .. 10000.0];
        t: Ratio = "t" "quantile of Student's distribution" [ONE, ONE: 0.0 .. 13.0 in 0.0 .. 400.0];
    ) -> Concentration = "w" "half the width of the interval" [MG_L, MG_L];
    reduced [deviation MG_L, n ONE, t ONE => MG_L] { t * deviation / sqrt(n) }
    sources [STUDENT]
    checks [
        "deviation=7.702813338860896 mg/L, n=10, t=2.2621571627409915" => "5.5102607 mg/L", Library("scipy 1.17.1, half of stats.t.interval(0.95, 9, scale = stats.sem) of the ten results of sample-deviation");
        "deviation=2 mg/L, n=4, t=3" => "3.00000 mg/L", ByHand("3 x 2 / 2");
        "deviation=0 mg/L, n=4, t=3" => "0 mg/L", Limit("what does not vary");
    ]
}

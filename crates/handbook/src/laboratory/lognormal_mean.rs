//! Formula: arithmetic mean of a log-normal law

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::AITCHISON_BROWN;
use stillrise_units::math::exp;
use stillrise_units::{Concentration, Ratio};

const SCIPY: &str = "scipy 1.17.1, stats.lognorm.mean";

formula! {
    /// Arithmetic mean of what is spread log-normally about a median.
    ///
    /// Wide laws have means that rest on their rare high values: at a deviation of 1.5 the mean is three times
    /// the median, and a set of few results can hardly know it.
    "lognormal-mean" "Arithmetic mean of a log-normal law"
    fn mean(
        median: Concentration = "C_g" "median" [MG_L, MG_L: 0.0 .. 10000.0 in 0.0 .. 1e6];
        s: Ratio = "s" "standard deviation of the logarithms" [ONE, ONE: 0.0 .. 1.5 in 0.0 .. 5.0];
    ) -> Concentration = "C_mean" "arithmetic mean" [MG_L, MG_L];
    reduced [median MG_L, s ONE => MG_L] { median * exp(s * s / 2.0) }
    sources [AITCHISON_BROWN]
    checks [
        "median=10 mg/L, s=0.3" => "10.460279 mg/L", Library(SCIPY);
        "median=10 mg/L, s=1" => "16.487213 mg/L", Library(SCIPY);
        "median=10 mg/L, s=1.5" => "30.802168 mg/L", Library(SCIPY);
        "median=10 mg/L, s=0" => "10.0000 mg/L", Limit("what does not vary is its median");
    ]
}

//! Formula: geometric mean of results

use super::mean_log as mean_log_of;
use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::page::Series;
use crate::sources::{AITCHISON_BROWN, DEFINITION};
use stillrise_units::Concentration;
use stillrise_units::math::exp;

formula! {
    /// Geometric mean of results that were all detected: the median of the log-normal law through them.
    ///
    /// Half of the results of a log-normal effluent lie above it. It is lower than the arithmetic mean, the more
    /// the wider they scatter, and says nothing of the mass that leaves: a permit's average and a load are
    /// arithmetic. With non-detects among the results it has no value; see `censored-median`.
    "geometric-mean" "Geometric mean of results"
    fn mean(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
    ) -> Concentration = "C_g" "geometric mean" [MG_L, MG_L];
    reduced [=> KG_M3] { exp(mean_log(results)) }
    helpers [mean_log(Series) "m" "mean of the logarithms, all detected"]
    sources [DEFINITION, AITCHISON_BROWN]
    checks [
        "results=[12 mg/L: 1; 8.4 mg/L: 1; 22 mg/L: 1; 15 mg/L: 1; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 11 mg/L: 1; 7.7 mg/L: 1; 18 mg/L: 1]" => "12.511368 mg/L", Library("scipy 1.17.1, stats.gmean");
        "results=[4 mg/L: 1; 9 mg/L: 1]" => "6.00000 mg/L", ByHand("root of 36");
        "results=[7 mg/L: 1]" => "7.00000 mg/L", Limit("one result is its own mean");
        "results=[4 mg/L: 1; 5 mg/L: 0]" => "outside: result", Limit("a logarithm of less than 5 is not known");
    ]
}

fn mean_log(results: Series) -> f64 {
    mean_log_of(&results)
}

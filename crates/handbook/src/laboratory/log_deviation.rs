//! Formula: standard deviation of the logarithms of results

use super::{count, mean_log};
use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::page::Series;
use crate::sources::{AITCHISON_BROWN, EPA_TSD};
use stillrise_units::Ratio;
use stillrise_units::math::{ln, sqrt};

formula! {
    /// Standard deviation of the natural logarithms of results that were all detected, with n - 1.
    ///
    /// The width of the log-normal law through them: e to this power is the geometric standard deviation. With
    /// non-detects among the results it has no value; see `censored-deviation`.
    "log-deviation" "Standard deviation of the logarithms"
    fn deviation(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
    ) -> Ratio = "s" "standard deviation of the logarithms" [ONE, ONE];
    reduced [=> ONE] { sqrt(squares(results.clone()) / (n(results) - 1.0)) }
    helpers [
        squares(Series) "S_ln" "sum of the squared distances of the logarithms from their mean, all detected";
        n(Series) "n" "number of results";
    ]
    sources [AITCHISON_BROWN, EPA_TSD]
    checks [
        "results=[12 mg/L: 1; 8.4 mg/L: 1; 22 mg/L: 1; 15 mg/L: 1; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 11 mg/L: 1; 7.7 mg/L: 1; 18 mg/L: 1]" => "0.50502014", Library("scipy 1.17.1, logarithm of stats.gstd");
        "results=[1 mg/L: 1; 4 mg/L: 1]" => "0.980258", ByHand("ln 4 over the root of 2: each lies ln 2 off the mean");
        "results=[3 mg/L: 1; 3 mg/L: 1]" => "0", Limit("what does not vary");
        "results=[3 mg/L: 1]" => "outside: result", Limit("one result has no deviation");
        "results=[3 mg/L: 1; 5 mg/L: 0]" => "outside: result", Limit("a logarithm of less than 5 is not known");
    ]
}

fn squares(results: Series) -> f64 {
    let mean = mean_log(&results);
    results.0.iter().fold(0.0, |sum, (c, _)| sum + (ln(*c) - mean) * (ln(*c) - mean))
}

fn n(results: Series) -> f64 {
    count(&results)
}

//! Formula: standard deviation of results

use super::count;
use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::page::{Series, sum_x};
use crate::sources::DEFINITION;
use stillrise_units::Concentration;
use stillrise_units::math::sqrt;

formula! {
    /// Standard deviation of results that were all detected, about their own mean, with n - 1.
    ///
    /// For the interval of the mean (`mean-half-width`). How far single results scatter is better said by the
    /// deviation of their logarithms: oil contents are log-normal, and one high result sways this number.
    "sample-deviation" "Standard deviation of results"
    fn deviation(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
    ) -> Concentration = "s_C" "standard deviation" [MG_L, MG_L];
    reduced [=> KG_M3] { sqrt(squares(results.clone()) / (n(results) - 1.0)) }
    helpers [
        squares(Series) "S" "sum of the squared distances from the mean, all detected";
        n(Series) "n" "number of results";
    ]
    sources [DEFINITION]
    checks [
        "results=[12 mg/L: 1; 8.4 mg/L: 1; 22 mg/L: 1; 15 mg/L: 1; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 11 mg/L: 1; 7.7 mg/L: 1; 18 mg/L: 1]" => "7.7028133 mg/L", Library("numpy 2.4.6, std with ddof = 1");
        "results=[2 mg/L: 1; 4 mg/L: 1; 6 mg/L: 1]" => "2.00000 mg/L", ByHand("root of (4 + 0 + 4) / 2");
        "results=[3 mg/L: 1; 3 mg/L: 1]" => "0 mg/L", Limit("what does not vary");
        "results=[3 mg/L: 1]" => "outside: result", Limit("one result has no deviation");
        "results=[3 mg/L: 1; 5 mg/L: 0]" => "outside: result", Limit("less than 5 has no distance from a mean");
    ]
}

fn squares(results: Series) -> f64 {
    if results.0.iter().any(|(_, detected)| *detected < 1.0) {
        return f64::NAN;
    }
    let mean = sum_x(&results) / count(&results);
    results.0.iter().fold(0.0, |sum, (c, _)| sum + (c - mean) * (c - mean))
}

fn n(results: Series) -> f64 {
    count(&results)
}

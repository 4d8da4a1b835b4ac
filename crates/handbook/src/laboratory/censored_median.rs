//! Formula: median with non-detects among the results

use super::censored::Logs;
use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::page::Series;
use crate::sources::{COHEN, HELSEL, UNIFIED_GUIDANCE};
use stillrise_units::math::{exp, ln};
use stillrise_units::{Concentration, Ratio};

const SCIPY: &str = "scipy 1.17.1, exponential of the mean from optimize.minimize of the log-likelihood of stats.norm.logpdf and logcdf";

formula! {
    /// Median, which is the geometric mean, of the log-normal law that is likeliest for a deviation, given that some
    /// results are known to lie below their reporting limits only.
    ///
    /// The detected results pull it up, the non-detects down; where the two are in balance the likelihood has its peak.
    /// With the deviation of `censored-deviation` it is the maximum over both.
    "censored-median" "Median with non-detects"
    fn median(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
        s: Ratio = "s" "standard deviation of the logarithms" [ONE, ONE: 0.1 .. 2.0 in 0.001 .. 20.0];
    ) -> Concentration = "C_g" "median" [MG_L, MG_L];
    solves [s ONE => median KG_M3] { above(results.clone(), s, median) => pull(results.clone(), s, median) } by {
        Logs::of(&results).middle(s).map(exp)
    }
    helpers [
        above(Series, f64, f64) "Σ z" "distances of the detected logarithms from that of the median, in deviations";
        pull(Series, f64, f64) "Σ h(z)" "normal density over normal distribution at the same distances of the reporting limits";
    ]
    sources [COHEN, HELSEL, UNIFIED_GUIDANCE]
    checks [
        "results=[5 mg/L: 0; 12.1 mg/L: 1; 16.9 mg/L: 1; 21.6 mg/L: 1; 2 mg/L: 0; 5 mg/L: 0; 7.7 mg/L: 1; 53.6 mg/L: 1; 9.5 mg/L: 1; 45.9 mg/L: 1; 5 mg/L: 0; 5.3 mg/L: 1; 12.6 mg/L: 1; 106.3 mg/L: 1; 34.5 mg/L: 1; 6.3 mg/L: 1; 11.9 mg/L: 1; 10 mg/L: 1; 2 mg/L: 0; 77.2 mg/L: 1; 17.9 mg/L: 1; 22.7 mg/L: 1; 3.3 mg/L: 1; 8.4 mg/L: 1; 2 mg/L: 0], s=1.3562912066266561" => "9.16970 mg/L", Library(SCIPY);
        "results=[12 mg/L: 1; 5 mg/L: 0; 8.4 mg/L: 1; 22 mg/L: 1; 5 mg/L: 0; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 10 mg/L: 0; 7.7 mg/L: 1], s=0.7368719289737115" => "8.38562 mg/L", Library(SCIPY);
        "results=[12 mg/L: 1; 20 mg/L: 1; 5 mg/L: 0], s=0.8199033940653883" => "9.05724 mg/L", Library(SCIPY);
        "results=[5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 6 mg/L: 1; 7.5 mg/L: 1; 9 mg/L: 1; 14 mg/L: 1; 22 mg/L: 1], s=1.1459181143269153" => "2.36046 mg/L", Library(SCIPY);
        "results=[5 mg/L: 0; 5 mg/L: 0], s=1" => "outside: result", Limit("nothing detected: nothing to hold it up");
    ]
}

fn above(results: Series, s: f64, median: f64) -> f64 {
    Logs::of(&results).above(s, ln(median))
}

fn pull(results: Series, s: f64, median: f64) -> f64 {
    Logs::of(&results).pull(s, ln(median))
}

//! Formula: deviation of the logarithms with non-detects among the results

use super::censored::Logs;
use crate::formula;
use crate::page::Evidence::{Library, Limit, Memory};
use crate::page::Series;
use crate::sources::{COHEN, HELSEL, UNIFIED_GUIDANCE};
use stillrise_units::Ratio;
use stillrise_units::math::root;

const SCIPY: &str = "scipy 1.17.1, optimize.minimize of the log-likelihood of stats.norm.logpdf and logcdf; stats.norm.fit of CensoredData and lifelines 0.30.3, LogNormalFitter.fit_left_censoring agree to four digits";

formula! {
    /// Standard deviation of the logarithms of the log-normal law that is likeliest, given that some results are known
    /// to lie below their reporting limits only; limits may differ.
    ///
    /// Maximum likelihood for left-censored results (Cohen; Helsel). It wants some twenty results or more and half of
    /// them detected; of few results it comes out small, by some 5 % of ten, because it divides by n and not n - 1.
    /// Where the law is not log-normal it misleads; where nearly all lie below the limit there is nothing to fit.
    "censored-deviation" "Deviation of the logarithms with non-detects"
    fn deviation(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
    ) -> Ratio = "s" "standard deviation of the logarithms" [ONE, ONE];
    solves [=> s ONE] { squares(results.clone(), s) => detected(results.clone()) + stretch(results.clone(), s) } by {
        let logs = Logs::of(&results);
        root(1e-3, 20.0, |s| match logs.middle(s) {
            Some(middle) => logs.squares(s, middle) - logs.m() - logs.stretch(s, middle),
            None => f64::NAN,
        })
    }
    helpers [
        squares(Series, f64) "Σ z²" "squared distances of the detected logarithms from the likeliest median, in deviations";
        detected(Series) "m" "results that were detected";
        stretch(Series, f64) "Σ z h(z)" "the same distances of the reporting limits, each times the normal density over the normal distribution there";
    ]
    sources [COHEN, HELSEL, UNIFIED_GUIDANCE]
    checks [
        "results=[5 mg/L: 0; 12.1 mg/L: 1; 16.9 mg/L: 1; 21.6 mg/L: 1; 2 mg/L: 0; 5 mg/L: 0; 7.7 mg/L: 1; 53.6 mg/L: 1; 9.5 mg/L: 1; 45.9 mg/L: 1; 5 mg/L: 0; 5.3 mg/L: 1; 12.6 mg/L: 1; 106.3 mg/L: 1; 34.5 mg/L: 1; 6.3 mg/L: 1; 11.9 mg/L: 1; 10 mg/L: 1; 2 mg/L: 0; 77.2 mg/L: 1; 17.9 mg/L: 1; 22.7 mg/L: 1; 3.3 mg/L: 1; 8.4 mg/L: 1; 2 mg/L: 0]" => "1.356291", Memory("the guidance's example 15-1, as a statistics package in R prints it; the next check is independent");
        "results=[5 mg/L: 0; 12.1 mg/L: 1; 16.9 mg/L: 1; 21.6 mg/L: 1; 2 mg/L: 0; 5 mg/L: 0; 7.7 mg/L: 1; 53.6 mg/L: 1; 9.5 mg/L: 1; 45.9 mg/L: 1; 5 mg/L: 0; 5.3 mg/L: 1; 12.6 mg/L: 1; 106.3 mg/L: 1; 34.5 mg/L: 1; 6.3 mg/L: 1; 11.9 mg/L: 1; 10 mg/L: 1; 2 mg/L: 0; 77.2 mg/L: 1; 17.9 mg/L: 1; 22.7 mg/L: 1; 3.3 mg/L: 1; 8.4 mg/L: 1; 2 mg/L: 0]" => "1.3562912", Library(SCIPY);
        "results=[12 mg/L: 1; 5 mg/L: 0; 8.4 mg/L: 1; 22 mg/L: 1; 5 mg/L: 0; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 10 mg/L: 0; 7.7 mg/L: 1]" => "0.736872", Library(SCIPY);
        "results=[12 mg/L: 1; 20 mg/L: 1; 5 mg/L: 0]" => "0.819903", Library(SCIPY);
        "results=[5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 5 mg/L: 0; 6 mg/L: 1; 7.5 mg/L: 1; 9 mg/L: 1; 14 mg/L: 1; 22 mg/L: 1]" => "1.145918", Library(SCIPY);
        "results=[1 mg/L: 1; 4 mg/L: 1]" => "0.693147", Limit("all detected: half of ln 4, the deviation with n");
        "results=[5 mg/L: 0; 5 mg/L: 0]" => "outside: result", Limit("nothing detected: nothing to fit");
        "results=[6 mg/L: 1; 6 mg/L: 1]" => "outside: result", Limit("what does not vary has no likeliest deviation above nought");
    ]
}

fn squares(results: Series, s: f64) -> f64 {
    let logs = Logs::of(&results);
    logs.middle(s).map_or(f64::NAN, |middle| logs.squares(s, middle))
}

fn detected(results: Series) -> f64 {
    Logs::of(&results).m()
}

fn stretch(results: Series, s: f64) -> f64 {
    let logs = Logs::of(&results);
    logs.middle(s).map_or(f64::NAN, |middle| logs.stretch(s, middle))
}

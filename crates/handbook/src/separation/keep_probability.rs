//! Formula: share of samples that keep a limit

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::EPA_TSD;
use stillrise_units::math::{ln, normal_cdf, sqrt};
use stillrise_units::{Concentration, Ratio};

const SCIPY: &str = "scipy 1.17.1, stats.lognorm.cdf with s = sqrt(ln(1 + CV²/n)), scale mean exp(-s²/2)";
const INVERSE: &str = "scipy 1.17.1, stats.lognorm.ppf gives this limit over the mean";

formula! {
    /// Share of samples, or of means of n samples, of a log-normal effluent that keep a limit.
    ///
    /// `permit-multiplier` read backwards: from a mean and a limit to the percentile. Samples count as
    /// independent; those of one storm are not, and their mean is then worth fewer than n. An effluent whose
    /// mean is at the limit keeps it more often than not, and fails it all the same.
    "keep-probability" "Share of samples that keep a limit"
    fn share(
        limit: Concentration = "C_limit" "limit" [MG_L, MG_L: 1.0 .. 1000.0 in 0.0 .. 1e6];
        mean: Concentration = "C_mean" "long-term mean" [MG_L, MG_L: 0.1 .. 1000.0 in 1e-6 .. 1e6];
        cv: Ratio = "CV" "coefficient of variation of single samples" [ONE, ONE: 0.1 .. 2.0 in 0.001 .. 10.0];
        n: Ratio = "n" "samples in the average" [ONE, ONE: 1.0 .. 31.0 in 1.0 .. 10000.0];
    ) -> Ratio = "p" "share that keeps the limit" [PERCENT, PERCENT];
    reduced [limit MG_L, mean MG_L, cv ONE, n ONE => ONE] {
        let s_n = sqrt(ln(1.0 + cv * cv / n));
        normal_cdf(ln(limit / mean) / s_n + s_n / 2.0)
    }
    sources [EPA_TSD]
    checks [
        "limit=15 mg/L, mean=10 mg/L, cv=0.6, n=1" => "0.84338456", Library(SCIPY);
        "limit=15 mg/L, mean=10 mg/L, cv=0.6, n=4" => "0.93674107", Library(SCIPY);
        "limit=12 mg/L, mean=10 mg/L, cv=0.6, n=30" => "0.95764113", Library(SCIPY);
        "limit=20 mg/L, mean=10 mg/L, cv=1, n=1" => "0.89413672", Library(SCIPY);
        "limit=30 mg/L, mean=10 mg/L, cv=2, n=2" => "0.94205030", Library(SCIPY);
        "limit=15 mg/L, mean=4.8 mg/L, cv=0.6, n=1" => "0.99015213", Library(SCIPY);
        "limit=1.358173 mg/L, mean=1 mg/L, cv=0.2, n=1" => "95.0000 %", Library(INVERSE);
        "limit=2.134752 mg/L, mean=1 mg/L, cv=0.6, n=1" => "95.0000 %", Library(INVERSE);
        "limit=1.552358 mg/L, mean=1 mg/L, cv=0.6, n=4" => "95.0000 %", Library(INVERSE);
        "limit=1.338635 mg/L, mean=1 mg/L, cv=0.6, n=10" => "95.0000 %", Library(INVERSE);
        "limit=2.400546 mg/L, mean=1 mg/L, cv=1.5, n=4" => "95.0000 %", Library(INVERSE);
        "limit=2.275097 mg/L, mean=1 mg/L, cv=0.4, n=1" => "99.0000 %", Library(INVERSE);
        "limit=3.115058 mg/L, mean=1 mg/L, cv=0.6, n=1" => "99.0000 %", Library(INVERSE);
        "limit=1.730488 mg/L, mean=1 mg/L, cv=0.8, n=10" => "99.0000 %", Library(INVERSE);
        "limit=4.904916 mg/L, mean=1 mg/L, cv=1, n=1" => "99.0000 %", Library(INVERSE);
        "limit=7.0710678 mg/L, mean=10 mg/L, cv=1, n=1" => "50.00000 %", Limit("the median of a log-normal is its mean over sqrt(1 + CV²)");
        "limit=0 mg/L, mean=10 mg/L, cv=1, n=1" => "0 %", Limit("nothing is below nothing");
        "limit=10.1 mg/L, mean=10 mg/L, cv=0.001, n=1" => "100.000 %", Limit("what hardly varies keeps any limit above its mean");
    ]
}

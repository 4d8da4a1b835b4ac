//! Formula: permit limit over long-term mean

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{EPA_TSD, NR_106};
use stillrise_units::Ratio;
use stillrise_units::math::{exp, ln, normal_quantile, sqrt};

const SCIPY: &str = "scipy 1.17.1, stats.lognorm.ppf with s = sqrt(ln(1 + CV²/n)), scale exp(-s²/2)";

formula! {
    /// How far a log-normal effluent's n-sample mean exceeds its long-term mean, at a percentile.
    ///
    /// A daily maximum counts one sample at the 99th percentile, a monthly average n at the 95th.
    /// Below ten data a coefficient of variation of 0.6 is the usual default. So a plant that must
    /// keep 15 mg/L as a daily maximum has to run at 4.8 mg/L on average.
    "permit-multiplier" "Permit limit over long-term mean"
    fn multiplier(
        cv: Ratio = "CV" "coefficient of variation of single samples" [ONE, ONE: 0.1 .. 2.0 in 0.0 .. 10.0];
        n: Ratio = "n" "samples in the average" [ONE, ONE: 1.0 .. 31.0 in 1.0 .. 10000.0];
        percentile: Ratio = "p" "percentile that the limit stands for" [PERCENT, PERCENT: 50.0 .. 99.9 in 0.01 .. 99.9999];
    ) -> Ratio = "m" "limit over long-term mean" [ONE, ONE];
    reduced [cv ONE, n ONE, percentile ONE => ONE] {
        let s_n = sqrt(ln(1.0 + cv * cv / n));
        exp(normal_quantile(percentile) * s_n - s_n * s_n / 2.0)
    }
    sources [EPA_TSD, NR_106]
    checks [
        "cv=0.2, n=1, percentile=95 %" => "1.358173", Library(SCIPY);
        "cv=0.4, n=1, percentile=99 %" => "2.275097", Library(SCIPY);
        "cv=0.6, n=1, percentile=95 %" => "2.134752", Library(SCIPY);
        "cv=0.6, n=1, percentile=99 %" => "3.115058", Library(SCIPY);
        "cv=0.6, n=2, percentile=99 %" => "2.371877", Library(SCIPY);
        "cv=0.6, n=4, percentile=95 %" => "1.552358", Library(SCIPY);
        "cv=0.6, n=4, percentile=99 %" => "1.896167", Library(SCIPY);
        "cv=0.6, n=10, percentile=95 %" => "1.338635", Library(SCIPY);
        "cv=0.6, n=30, percentile=95 %" => "1.189679", Library(SCIPY);
        "cv=0.8, n=10, percentile=99 %" => "1.730488", Library(SCIPY);
        "cv=1, n=1, percentile=99 %" => "4.904916", Library(SCIPY);
        "cv=1.5, n=4, percentile=95 %" => "2.400546", Library(SCIPY);
        "cv=2, n=30, percentile=99 %" => "2.139224", Library(SCIPY);
        "cv=0.6, n=1, percentile=99 %" => "3.11" within 2e-3 "z rounded to 2.326",
            ByHand("exp(2.326 s - s²/2) with s² = ln 1.36, the manual's rule");
        "cv=0, n=1, percentile=99 %" => "1", Limit("what does not vary is its mean");
        "cv=1, n=1, percentile=50 %" => "0.70711", Limit("the median of a log-normal is its mean over sqrt(1 + CV²)");
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillrise_units::ratio;

    /// Ratios of the one-day to the n-day multiplier at the 99th percentile, CV 0.6:
    /// Wisconsin Administrative Code NR 106.07, Table 1.
    #[test]
    fn ratios_of_the_wisconsin_table() {
        let of = |n: f64| multiplier(ratio(0.6), ratio(n), ratio(0.99)).map_or(f64::NAN, |m| m.value);
        for (n, published) in [(2.0, 1.31), (4.0, 1.64), (8.0, 1.95), (12.0, 2.12), (30.0, 2.43)] {
            assert!((of(1.0) / of(n) - published).abs() < 0.006, "{n}");
        }
    }

    /// The factor for reasonable potential, CV 0.6, 95 % confidence, 95th percentile: the highest of n
    /// samples stands at the percentile 0.05^(1/n). NR 106.08, Table 4.
    #[test]
    fn factors_of_reasonable_potential() {
        let at = |p: f64| multiplier(ratio(0.6), ratio(1.0), ratio(p)).map_or(f64::NAN, |m| m.value);
        for (n, published) in [(1.0, 6.2), (2.0, 3.8), (3.0, 3.0), (4.0, 2.6), (5.0, 2.3), (6.0, 2.1), (7.0, 2.0)] {
            let rank = stillrise_units::math::pow(0.05, 1.0 / n);
            assert!((at(0.95) / at(rank) - published).abs() < 0.051, "{n}");
        }
    }
}

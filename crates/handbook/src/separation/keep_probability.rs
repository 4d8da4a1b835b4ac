//! Formula: share of samples that keep a limit

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::EPA_TSD;
use stillrise_units::math::{ln, normal_cdf, sqrt};
use stillrise_units::{Concentration, Ratio};

formula! {
    /// Share of single samples, or of means of `n`, that lie below a limit, log-normal about a long-term mean.
    ///
    /// It holds the day's scatter, not how sure the mean itself is. Ten samples or fewer: a variation of 0.6 is
    /// usual.
    "keep-probability" "Share of samples that keep a limit"
    fn share(
        mean: Concentration = "m" "long-term mean" [MG_L, MG_L: 0.1 .. 1000.0 in 1e-9 .. 1e9];
        variation: Ratio = "CV" "coefficient of variation" [ONE, ONE: 0.1 .. 2.0 in 1e-6 .. 100.0];
        n: Ratio = "n" "samples in the mean; 1 for single samples" [ONE, ONE: 1.0 .. 30.0 in 1.0 .. 1e6];
        limit: Concentration = "L" "limit" [MG_L, MG_L: 0.1 .. 1000.0 in 1e-9 .. 1e9];
    ) -> Ratio = "p" "share that keeps it" [PERCENT, PERCENT];
    reduced [mean MG_L, variation ONE, n ONE, limit MG_L => ONE] {
        let s = sqrt(ln(1.0 + variation * variation / n));
        normal_cdf((ln(limit / mean) + s * s / 2.0) / s)
    }
    sources [EPA_TSD]
    checks [
        "mean=1 mg/L, variation=0.2, n=1, limit=1.36 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.2, n=1, limit=1.55 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.2, n=4, limit=1.17 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.2, n=4, limit=1.25 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=1, limit=2.13 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=1, limit=3.11 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=4, limit=1.55 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=4, limit=1.90 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=30, limit=1.19 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=0.6, n=30, limit=1.28 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=1.0, n=1, limit=2.78 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=1.0, n=1, limit=4.90 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=1.0, n=10, limit=1.58 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=1.0, n=10, limit=1.96 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=2.0, n=1, limit=3.60 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=2.0, n=1, limit=8.56 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=2.0, n=4, limit=2.78 mg/L" => "95 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=1 mg/L, variation=2.0, n=4, limit=4.90 mg/L" => "99 %" within 4e-3 "the multiple is printed to three digits", ByHand("the multiples of the EPA's method, evaluated independently in Python");
        "mean=6 mg/L, variation=0.6, n=1, limit=15 mg/L" => "97.31768 %", Library("scipy 1.17.1, stats.lognorm.cdf");
        "mean=12 mg/L, variation=0.6, n=1, limit=15 mg/L" => "75.16433 %", Library("scipy 1.17.1, stats.lognorm.cdf");
        "mean=12 mg/L, variation=0.6, n=4, limit=15 mg/L" => "81.77724 %", Library("scipy 1.17.1, stats.lognorm.cdf");
        "mean=20 mg/L, variation=1, n=30, limit=15 mg/L" => "6.70452 %", Library("scipy 1.17.1, stats.lognorm.cdf");
        "mean=1 mg/L, variation=0.001, n=1, limit=2 mg/L" => "100.00 %", Limit("no scatter below the limit");
    ]
}

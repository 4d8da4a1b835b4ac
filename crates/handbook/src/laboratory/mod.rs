//! Laboratory: what a set of results says of the water it was taken from.
//!
//! A set of results is a series of concentrations, each with 1 where it was detected, or 0 where all that is
//! known is that it lies below the reporting limit given in its place.

use crate::evidence::Table;
use crate::page::Series;

crate::list_pages! {
    sample_mean,
    geometric_mean,
    sample_deviation,
    log_deviation,
    censored_deviation,
    censored_median,
    lognormal_mean,
    lognormal_variation,
    student_quantile,
    mean_half_width,
    polar_share,
}

/// Check tables of this area.
pub static TABLES: &[Table] = &[];

mod censored;

/// Results, as a number.
fn count(results: &Series) -> f64 {
    let mut n = 0.0;
    for _ in &results.0 {
        n += 1.0;
    }
    n
}

/// Mean of the logarithms; no number unless all were detected.
fn mean_log(results: &Series) -> f64 {
    if results.0.iter().any(|(_, detected)| *detected < 1.0) {
        return f64::NAN;
    }
    results.0.iter().fold(0.0, |sum, (c, _)| sum + stillrise_units::math::ln(*c)) / count(results)
}

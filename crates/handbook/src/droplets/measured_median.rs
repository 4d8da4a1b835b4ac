//! Formula: median of a measured distribution

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::Series;
use crate::sources::COMMON_PRACTICE;
use stillrise_units::Length;
use stillrise_units::math::{exp, ln};

formula! {
    /// Size that half of the volume is finer than, straight between the rows over the logarithm of size.
    ///
    /// Where half is finer than the finest row already, that row's size is given: the true median is finer.
    "measured-median" "Median of a measured distribution"
    fn diameter(
        table: Series = "d|F" "size, and share of the volume that is finer" {UM, UM; PERCENT, PERCENT};
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [=> M] { at_half(table) }
    helpers [at_half(Series) "d at F = 0.5" "the size where the table passes one half"]
    sources [COMMON_PRACTICE]
    checks [
        "table=[20 um: 0.3; 80 um: 0.7]" => "40.00 um", ByHand("half way between 20 and 80 over the logarithm: their geometric mean");
        "table=[10 um: 0.1; 50 um: 0.5; 200 um: 1]" => "50.00 um", Limit("a row at one half is the median");
        "table=[10 um: 0.6; 50 um: 1]" => "10.00 um", Limit("finer than the finest row");
    ]
}

fn at_half(table: Series) -> f64 {
    let mut below: Option<(f64, f64)> = None;
    for (size, finer) in &table.0 {
        if *finer >= 0.5 {
            return match below {
                Some((before, at)) => exp(ln(before) + ln(size / before) * ((0.5 - at) / (finer - at))),
                None => *size,
            };
        }
        below = Some((*size, *finer));
    }
    below.map_or(f64::NAN, |(size, _)| size)
}

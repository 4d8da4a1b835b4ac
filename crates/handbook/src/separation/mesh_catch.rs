//! Reading a mesh's measured curve.

use crate::page::Series;
use stillrise_units::math::ln;

/// Share that a mesh catches of a size, straight between the rows of its measured curve over the logarithm
/// of size; beyond its ends the nearest row.
#[must_use]
pub fn on_curve(d: f64, curve: &Series) -> f64 {
    let mut below: Option<(f64, f64)> = None;
    for (size, share) in &curve.0 {
        if d < *size {
            return match below {
                None => *share,
                Some((before, at)) => at + (share - at) * (ln(d / before) / ln(size / before)),
            };
        }
        below = Some((*size, *share));
    }
    below.map_or(0.0, |(_, share)| share)
}

//! The circle that several pages cut by a level.

use stillrise_units::math::{acos, max, min, sqrt};

/// Area of a circle below a level above its lowest point; all of it where the level stands above the top.
pub(super) fn area_below(d: f64, level: f64) -> f64 {
    let r = d / 2.0;
    let h = max(0.0, min(d, level));
    // The cosine of a level at the very bottom or top may miss one by a last digit.
    let cosine = max(-1.0, min(1.0, (r - h) / r));
    r * r * acos(cosine) - (r - h) * sqrt(max(0.0, h * (d - h)))
}

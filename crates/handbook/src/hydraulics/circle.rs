//! Section of a circular pipe that is not full: area, perimeter and free surface.
//!
//! Plain numbers in one unit of length; the pages call these functions by name. The open angle is
//! `2 acos(1 - 2 y/d)`; outside `0 <= y <= d` the answer is not a number.

use stillrise_units::math::{acos, sin};

/// Acceleration of free fall, m/s2, as a plain number.
pub(super) const G: f64 = stillrise_units::G.value;

/// Depth over diameter at which a circular pipe carries most: the root of
/// `3 t - 5 t cos t + 2 sin t = 0` for the open angle t, 5.278 rad.
pub(super) const FULLEST: f64 = 0.938_181_2;

/// Angle that the water's surface subtends at the centre, rad.
pub(super) fn open_angle(d: f64, y: f64) -> f64 {
    2.0 * acos(1.0 - 2.0 * y / d)
}

/// Wetted area.
pub(super) fn segment_area(d: f64, y: f64) -> f64 {
    let t = open_angle(d, y);
    d * d / 8.0 * (t - sin(t))
}

/// Width of the free surface.
pub(super) fn segment_top(d: f64, y: f64) -> f64 {
    d * sin(0.5 * open_angle(d, y))
}

/// Hydraulic radius, wetted area over wetted perimeter; 0 in a dry pipe.
pub(super) fn segment_radius(d: f64, y: f64) -> f64 {
    if y > 0.0 { segment_area(d, y) / (0.5 * d * open_angle(d, y)) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillrise_units::math::{cos, pow};

    #[test]
    fn the_fullest_depth_is_where_the_flow_has_its_maximum() {
        let t = open_angle(1.0, FULLEST);
        assert!((3.0 * t - 5.0 * t * cos(t) + 2.0 * sin(t)).abs() < 1e-5);
        let carries = |y: f64| segment_area(1.0, y) * pow(segment_radius(1.0, y), 2.0 / 3.0);
        assert!(carries(FULLEST) > carries(FULLEST - 1e-3) && carries(FULLEST) > carries(FULLEST + 1e-3));
    }

    /// Closed forms of the half-full pipe.
    #[test]
    fn a_half_full_pipe() {
        assert!((segment_area(2.0, 1.0) - core::f64::consts::FRAC_PI_2).abs() < 1e-15);
        assert!((segment_top(2.0, 1.0) - 2.0).abs() < 1e-15);
        assert!((segment_radius(2.0, 1.0) - 0.5).abs() < 1e-15);
    }
}

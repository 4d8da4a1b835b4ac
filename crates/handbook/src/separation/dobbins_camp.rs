//! Formula: removal in a tank with vertical mixing, after Dobbins and Camp

use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::DOBBINS_CAMP;
use core::f64::consts::PI;
use stillrise_units::math::{cos, exp, max, min, normal_cdf, pow, root, sin, sqrt};
use stillrise_units::{Ratio, Velocity};

formula! {
    /// Share of droplets of one rise velocity that a tank catches whose eddies stir it over the depth.
    ///
    /// Droplets rise, eddies of one diffusivity mix them; the far end lets none through, at the surface that
    /// collects them they are caught as they arrive and none comes back. Between an ideal tank (P large) and
    /// a mixed one (P small). The diffusivity is the uncertain part: `camp-eddy` gives one from wall friction
    /// alone, which an inlet jet or a current easily exceeds.
    "dobbins-camp" "Removal in a tank with vertical mixing"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
        v_0: Velocity = "v_0" "overflow rate: flow over plan area" [GPM_FT2, MM_S: 0.001 .. 20.0 in 1e-9 .. 1e12];
        p: Ratio = "P" "rise velocity times depth over eddy diffusivity" [ONE, ONE: 0.01 .. 1000.0 in 0.0 .. 1e12];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, v_0 MM_S, p ONE => ONE] { caught(max(v / v_0, 0.0), p) }
    helpers [caught(f64, f64) "E" "1 - sum of modes, with h = P/2 and b tan(b/2) = h, b cot(b/2) = -h: e^(h - (b^2 + h^2) x/P) sin b 4 h b / ((h^2 + b^2)(h^2 + 2 h + b^2))"]
    sources [DOBBINS_CAMP]
    checks [
        "v=0.5 mm/s, v_0=1 mm/s, p=1e6" => "0.5000", Limit("no mixing: half the depth is swept");
        "v=1 mm/s, v_0=1 mm/s, p=0.0001" => "0.6321", Limit("mixed over the depth: 1 - 1/e");
        "v=0 mm/s, v_0=1 mm/s, p=1" => "0", Limit("what does not rise is not caught");
        "v=1 mm/s, v_0=1 mm/s, p=0" => "0.632121", Limit("mixed over the depth: 1 - 1/e");
        "v=0.05 mm/s, v_0=1 mm/s, p=20" => "0.0500", Limit("mixing has not reached the collecting surface");
    ]
}

/// Modes of each kind.
const MODES: u32 = 14;
/// Above it the sum of modes loses its digits to cancellation; the other form is then good to 1e-5.
const STEEP: f64 = 40.0;

/// Share caught at `x = v/v_0`.
pub(crate) fn caught(x: f64, p: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if p < 1e-9 {
        return 1.0 - exp(-x);
    }
    // Until mixing has carried the lack of droplets from the far end to the collecting surface, droplets
    // arrive there as they started: what is left out is below e^-20.
    if x < 1.0 && p * (1.0 - x) * (1.0 - x) / (4.0 * x) > 20.0 {
        return x;
    }
    let share = if p > STEEP { steep(x, p) } else { 1.0 - modes(x, 0.5 * p) };
    max(0.0, min(1.0, share))
}

/// The sum of modes, h = P/2.
fn modes(x: f64, h: f64) -> f64 {
    let mut sum = 0.0;
    for k in 0..MODES {
        for odd in [false, true] {
            let low = PI * f64::from(2 * k + u32::from(odd));
            let zero = |b: f64| if odd { b * cos(0.5 * b) + h * sin(0.5 * b) } else { b * sin(0.5 * b) - h * cos(0.5 * b) };
            // The mode at the lower end itself is none: there the function is not at its root yet.
            let Some(b) = root(low + 1e-9, low + PI, zero) else { continue };
            let whole = h * h + b * b;
            sum += exp(h - whole * x / (2.0 * h)) * sin(b) * 4.0 * h * b / (whole * (whole + 2.0 * h));
        }
    }
    sum
}

/// Little mixing: the times of arrival spread as those of a drifting random walk, which gives their mean and
/// variance (`dispersion-variance`) and an inverse Gaussian shape.
fn steep(x: f64, p: f64) -> f64 {
    let lambda = 1.0 / (2.0 / p - 2.0 / (p * p) * (1.0 - exp(-p)));
    let s = sqrt(lambda / x);
    let (early, late) = (x - 1.0, x + 1.0);
    // e^(2 lambda) meets its own small factor; beyond what a double holds, by the tail's first terms.
    let z = late * s;
    let tail = if z < 30.0 {
        exp(2.0 * lambda) * normal_cdf(-z)
    } else {
        exp(2.0 * lambda - 0.5 * z * z) / (z * sqrt(2.0 * PI)) * (1.0 - pow(z, -2.0) + 3.0 * pow(z, -4.0))
    };
    x - early * normal_cdf(early * s) - late * tail
}

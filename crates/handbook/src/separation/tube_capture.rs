//! Formula: capture in an inclined round tube

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::YAO;
use core::f64::consts::PI;
use stillrise_units::Ratio;
use stillrise_units::math::{max, min, pow, sin, sqrt};

formula! {
    /// Share of droplets that one laminar round tube catches, weighed with the flow that carries them.
    ///
    /// `X` is the rise across the tube times its length over mean velocity times bore: 4/3 catches all, which
    /// is exact for the chord through the middle.
    "tube-capture" "Capture in an inclined round tube"
    fn removal(
        x: Ratio = "X" "v cos theta L over U d" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 1e9];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [x ONE => ONE] { caught(x) }
    helpers [caught(f64) "E" "flow between the wall and the last path that meets it, over the whole flow"]
    sources [YAO]
    checks [
        "x=0.2" => "0.2319", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=0.4" => "0.4341", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=0.6" => "0.6105", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=0.8" => "0.7609", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=1.0" => "0.8829", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=1.2" => "0.9706", ByHand("chords of the round section, weighed with the flow, in Python");
        "x=1.3333333333333333" => "1.0000", Limit("the middle chord is crossed");
        "x=0" => "0", Limit("nothing rises");
    ]
}

/// Slices over half of the tube's width; the sum is good to 1e-6.
const SLICES: u32 = 400;

/// Over each upright chord of half height `h` the flow profile is 2 (h^2 - y^2) in radii and mean velocities.
fn caught(x: f64) -> f64 {
    let mut sum = 0.0;
    for k in 0..SLICES {
        // Equal steps of the angle, so that the short chords at the side are met as well.
        let angle = (f64::from(k) + 0.5) / f64::from(SLICES) * PI / 2.0;
        let s = sin(angle);
        let h = sqrt(max(0.0, 1.0 - s * s));
        let width = h * PI / 2.0 / f64::from(SLICES);
        // The whole chord carries 8 h^3 / 3; what a droplet can cross in its way is 2 X in radii times
        // mean velocity.
        let whole = 8.0 / 3.0 * pow(h, 3.0);
        sum += 2.0 * width * min(2.0 * x, whole);
    }
    min(1.0, sum / PI)
}

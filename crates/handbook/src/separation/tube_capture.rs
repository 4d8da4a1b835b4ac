//! Formula: capture in an inclined round tube

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{SURFACE_LOADING, YAO};
use core::f64::consts::PI;
use stillrise_units::math::{acos, cos, max, min, pow, sqrt};
use stillrise_units::{Angle, Length, Ratio, Velocity};

const OWN: &str = "closed form and quadrature over the chords in Python, agreeing to 1e-8";

formula! {
    /// Share of droplets of one rise velocity that one round tube in laminar flow catches.
    ///
    /// Every chord of the tube in an upright plane along it is a gap of its own. `X = v cos θ L/(U d)` is the
    /// loading; 4/3 of it clears the longest chord and so the tube. Between plates as far apart 1 is enough,
    /// because the water in the middle of a tube is faster. The flow is taken as fully developed, over the
    /// whole length, and the droplet's own way along the tube, `v sin θ`, as small beside U.
    "tube-capture" "Capture in an inclined round tube"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 10.0 in -1e6 .. 1e6];
        u: Velocity = "U" "mean velocity of the water in the tube" [FT_MIN, MM_S: 0.1 .. 30.0 in 1e-6 .. 1e6];
        length: Length = "L" "length of the tube" [IN, MM: 100.0 .. 3000.0 in 0.0 .. 100000.0];
        d: Length = "d" "inside diameter" [IN, MM: 5.0 .. 100.0 in 0.1 .. 10000.0];
        theta: Angle = "theta" "angle of the tube to the horizontal" [DEG, DEG: 0.0 .. 60.0 in 0.0 .. 90.0];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, u MM_S, length MM, d MM, theta RAD => ONE] {
        let x = max(v, 0.0) * cos(theta) * length / (u * d);
        let k = min(pow(0.75 * x, 1.0 / 3.0), 1.0);
        1.0 - 2.0 / PI * (acos(k) - (2.0 * k * k * k - k) * sqrt(1.0 - k * k))
    }
    sources [YAO, SURFACE_LOADING]
    checks [
        "v=0.02 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.23185357", ByHand(OWN);
        "v=0.04 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.43408898", ByHand(OWN);
        "v=0.06 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.61049887", ByHand(OWN);
        "v=0.08 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.76088888", ByHand(OWN);
        "v=0.1 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.88292853", ByHand(OWN);
        "v=0.12 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.97062736", ByHand(OWN);
        "v=0.13 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "0.99634263", ByHand(OWN);
        "v=0.05 mm/s, u=5 mm/s, length=600 mm, d=25 mm, theta=60 deg" => "0.14322446", ByHand(OWN);
        "v=4 mm/s, u=3 mm/s, length=100 mm, d=100 mm, theta=0 deg" => "1.00000000", Limit("4/3: the longest chord, exactly");
        "v=5 mm/s, u=1 mm/s, length=100 mm, d=10 mm, theta=0 deg" => "1", Limit("no more than all");
        "v=0.001 mm/s, u=1 mm/s, length=0.1 mm, d=100 mm, theta=0 deg" => "0.0001273 %",
            Limit("hardly any: rise velocity times projected area over flow, 4 X/pi");
        "v=-1 mm/s, u=5 mm/s, length=600 mm, d=25 mm, theta=50 deg" => "0", Limit("what sinks is not caught");
        "v=1 mm/s, u=5 mm/s, length=600 mm, d=25 mm, theta=90 deg" => "0.000000", Limit("an upright tube has no wall above");
    ]
}

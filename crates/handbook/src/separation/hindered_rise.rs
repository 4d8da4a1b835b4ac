//! Formula: rise in a crowd

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::RICHARDSON_ZAKI;
use stillrise_units::math::pow;
use stillrise_units::{Ratio, Velocity};

formula! {
    /// Velocity of droplets or grains that fill a share of the water, against the vessel.
    ///
    /// At 1000 mg/L of oil the crowd takes 0.6 % and may be left out; it matters in the layer of oil, in
    /// sludge and in the slug of a spill. Dilute suspensions were seen to lose somewhat more. Beyond some
    /// 40 % the droplets touch and the law ends.
    "hindered-rise" "Rise in a crowd"
    fn rise(
        v: Velocity = "v" "terminal velocity of one alone" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e4 .. 1e4];
        phi: Ratio = "phi" "share of the volume that droplets or grains fill" [PERCENT, PERCENT: 0.0 .. 40.0 in 0.0 .. 100.0];
        n: Ratio = "n" "exponent, `hindered-exponent`" [ONE, ONE: 2.35 .. 5.1 in 1.0 .. 10.0];
    ) -> Velocity = "v_h" "velocity in the crowd" [FT_MIN, MM_S];
    reduced [v MM_S, phi ONE, n ONE => MM_S] { v * pow(1.0 - phi, n) }
    sources [RICHARDSON_ZAKI]
    checks [
        "v=1 mm/s, phi=0 %, n=4.65" => "1.0000000 mm/s", Limit("one alone");
        "v=1 mm/s, phi=100 %, n=4.65" => "0 mm/s", Limit("nothing moves where all is oil");
        "v=-1 mm/s, phi=1 %, n=4.65" => "-0.954341 mm/s", Limit("what sinks is slowed alike");
        "v=1 mm/s, phi=10 %, n=4.65" => "0.612671 mm/s", ByHand("0.9^4.65 by Python");
    ]
}

//! Formula: removal in a tank mixed over its depth with dispersion along it

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::WEHNER_WILHELM;
use stillrise_units::math::{exp, max, sqrt};
use stillrise_units::{Ratio, Velocity};

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Share of droplets of one rise velocity that a tank catches which is mixed over its depth and dispersed
    /// along its length, closed at both ends.
    ///
    /// The dispersion number is dispersion over velocity times length. At 0 it is plug flow, without bound one
    /// mixed tank. Multiplied by `e^-(a - 1)/2d` above and below so that no term grows beyond bounds.
    "dispersed-removal" "Removal in a tank with dispersion along it"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
        v_0: Velocity = "v_0" "overflow rate: flow over plan area" [GPM_FT2, MM_S: 0.001 .. 20.0 in 1e-9 .. 1e12];
        d: Ratio = "d" "dispersion number" [ONE, ONE: 0.01 .. 10.0 in 1e-6 .. 1e9];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, v_0 MM_S, d ONE => ONE] {
        let x = max(v / v_0, 0.0);
        let a = sqrt(1.0 + 4.0 * x * d);
        1.0 - 4.0 * a * exp((1.0 - a) / (2.0 * d)) / ((1.0 + a) * (1.0 + a) - (1.0 - a) * (1.0 - a) * exp(-a / d))
    }
    sources [WEHNER_WILHELM]
    checks [
        "v=1 mm/s, v_0=1 mm/s, d=0.05" => "0.6158", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, d=0.1" => "0.6027", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, d=0.25" => "0.5761", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, d=0.5" => "0.5526", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, d=1" => "0.5323", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, d=0.05" => "0.8411", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, d=0.1" => "0.8227", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, d=0.25" => "0.7853", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, d=0.5" => "0.7514", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, d=1" => "0.7206", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, d=0.00001" => "0.6321", Limit("no dispersion: 1 - 1/e");
        "v=1 mm/s, v_0=1 mm/s, d=1e6" => "0.5000", Limit("one mixed tank: x/(1 + x)");
        "v=0 mm/s, v_0=1 mm/s, d=0.5" => "0", Limit("what does not rise is not caught");
    ]
}

/// The page's number at `x = v/v_0`, without its guards.
pub(crate) fn caught(x: f64, d: f64) -> f64 {
    let a = sqrt(1.0 + 4.0 * x * d);
    1.0 - 4.0 * a * exp((1.0 - a) / (2.0 * d)) / ((1.0 + a) * (1.0 + a) - (1.0 - a) * (1.0 - a) * exp(-a / d))
}

//! Formula: how far a screen levels an uneven flow

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::TAYLOR_BATCHELOR;
use stillrise_units::Ratio;
use stillrise_units::math::sqrt;

/// Deflection of oblique flow by a gauze, as measured: `1.1/sqrt(1 + K)`.
const DEFLECTION: f64 = 1.1;

formula! {
    /// Unevenness of velocity behind a fine screen over that ahead of it, Taylor and Batchelor.
    ///
    /// For small departures from the mean and a gauze finer than they are wide; recalled, and its fit of
    /// deflection holds from about a loss coefficient of one. It is nothing near 2.76, and negative above: the
    /// faster half becomes the slower. A baffle of few large holes makes jets that run on for five to ten hole
    /// spacings, whatever its loss. `baffle-coefficient` gives the loss of a plate.
    "screen-flattening" "How far a screen levels an uneven flow"
    fn share(
        k: Ratio = "K" "loss coefficient on the approach velocity" [ONE, ONE: 1.0 .. 30.0 in 0.0 .. 1e6];
    ) -> Ratio = "r" "unevenness left, behind over ahead" [ONE, ONE];
    reduced [k ONE => ONE] {
        let a = DEFLECTION / sqrt(1.0 + k);
        (1.0 + a - a * k) / (1.0 + a + k)
    }
    constants [DEFLECTION "1.1"]
    sources [TAYLOR_BATCHELOR]
    checks [
        "k=0" => "1.000000", Limit("no screen, no change");
        "k=2.76" => "0.000", Memory("the loss coefficient that levels a flow, as the literature on wind tunnels quotes it");
        "k=2.7636474908" => "0.000000", ByHand("root of the numerator by scipy 1.17.1, brentq");
        "k=1" => "0.359995", ByHand("independent evaluation in Python");
        "k=2" => "0.100387", ByHand("independent evaluation in Python");
        "k=5" => "-0.123474", ByHand("independent evaluation in Python");
        "k=8" => "-0.167260", ByHand("independent evaluation in Python");
        "k=18.5" => "-0.170097", ByHand("independent evaluation in Python");
        "k=1000000" => "-0.0011" within 1e-3 "terms in 1/K are left out", Limit("a dense screen: -1.1/sqrt(K)");
    ]
}

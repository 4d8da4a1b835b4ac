//! Formula: time of concentration by Kirpich

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::KIRPICH;
use stillrise_units::math::pow;
use stillrise_units::{Length, Ratio, Time};

crate::choice! {
    /// Over what the water runs.
    KirpichSurface {
        /// natural or bare ground and its channels: the law as fitted
        Natural "natural",
        /// overland flow on asphalt or concrete: 0.4 of the time
        Paved "paved",
        /// a concrete channel: 0.2 of the time
        Channel "channel",
        /// overland flow on grass: twice the time
        Grass "grass",
    }
}

/// Minutes for length in feet, as printed by the manuals; their metric form prints 0.0195.
const COEFFICIENT: f64 = 0.0078;

formula! {
    /// Time for water to run from the far end of an area to its outlet, fitted to small farm valleys.
    ///
    /// Slopes of the fit were 3 to 10 %; sources contradict each other on its area (to 112 or to 200
    /// acres) and on the multiplier of paved channels (0.2, or one half). The metric coefficient
    /// 0.0195 of the manuals gives times 0.15 % longer than this one.
    "kirpich" "Time of concentration, Kirpich"
    fn time(
        length: Length = "L" "length of the flow path" [FT, M: 30.0 .. 2000.0 in 0.0 .. 50000.0];
        slope: Ratio = "S" "mean slope of the path" [PERCENT, PERCENT: 1.0 .. 12.0 in 0.001 .. 200.0];
        surface: KirpichSurface = "surface" "over what the water runs";
    ) -> Time = "t_c" "time of concentration" [MIN, MIN];
    reduced [length FT, slope ONE => MIN] {
        let k = if surface == KirpichSurface::Natural { 1.0 } else if surface == KirpichSurface::Paved { 0.4 }
            else if surface == KirpichSurface::Channel { 0.2 } else { 2.0 };
        k * COEFFICIENT * pow(length, 0.77) * pow(slope, -0.385)
    }
    constants [COEFFICIENT "k_US"]
    sources [KIRPICH]
    checks [
        "length=1000 ft, slope=0.01, surface=natural" => "9.378 min", ByHand("0.0078 x 1000^0.77 x 0.01^-0.385");
        "length=500 ft, slope=0.015, surface=natural" => "4.704 min", ByHand("0.0078 x 500^0.77 x 0.015^-0.385");
        "length=300 ft, slope=0.02, surface=natural" => "2.842 min", ByHand("0.0078 x 300^0.77 x 0.02^-0.385");
        "length=300 m, slope=0.02, surface=natural" => "7.104 min" within 0.002 "the metric coefficient is rounded to 0.0195",
            ByHand("metric form of the manuals: 0.0195 x 300^0.77 x 0.02^-0.385");
        "length=1000 ft, slope=0.01, surface=paved" => "3.751 min", ByHand("0.4 x 9.3777");
        "length=1000 ft, slope=0.01, surface=channel" => "1.876 min", ByHand("0.2 x 9.3777");
        "length=1000 ft, slope=0.01, surface=grass" => "18.76 min", ByHand("2 x 9.3777");
        "length=1 ft, slope=1, surface=natural" => "0.007800 min", Limit("one foot at a slope of one leaves the coefficient");
    ]
}

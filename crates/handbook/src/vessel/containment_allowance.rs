//! Formula: oil with an allowance

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{ALLOWANCE_110, CFR_112_8};
use stillrise_units::{Ratio, Volume, ratio};

formula! {
    /// The oil of the largest container and a share of it on top.
    ///
    /// 40 CFR 112.8(c)(2) asks for the entire capacity of the largest single container and sufficient
    /// freeboard for precipitation, and names no share. A tenth is a rule of thumb: on a wide, shallow
    /// containment a day's rain is far more. Where the rain is known, it takes the place of the share.
    "containment-allowance" "Oil with an allowance"
    fn volume(
        oil: Volume = "V_o" "oil in the largest container" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        share: Ratio = "f" "allowance, as a share of the oil" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume to hold" [GAL, M3];
    typed { oil * (ratio(1.0) + share) }
    sources [CFR_112_8, ALLOWANCE_110]
    checks [
        "oil=10033 gal, share=10 %" => "1475.3 ft3", ByHand("a tank of 10,033 gal by its chart: 10,033 x 1.1 / 7.48052");
        "oil=60 m3, share=0 %" => "60.000000 m3", Limit("nothing on top");
        "oil=60 m3, share=100 %" => "120.000000 m3", Limit("as much again on top");
    ]
}

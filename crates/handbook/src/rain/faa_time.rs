//! Formula: time of concentration by the airfield method

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::FAA_DRAINAGE;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Ratio, Time};

formula! {
    /// Time for water to run over a surface to its inlet, fitted to airfields: the better it sheds water, the shorter.
    ///
    /// The slope goes in as a percentage, 1 for 1 %. One drainage manual allows 500 ft (152 m). At a runoff coefficient near 1
    /// the law leaves next to no time; drainage manuals take no less than 5 minutes.
    "faa-time" "Time of concentration, airfield method"
    fn time(
        c: Ratio = "C" "runoff coefficient" [ONE, ONE: 0.05 .. 1.0 in 0.0 .. 1.0];
        length: Length = "L" "length of the overland flow" [FT, M: 3.0 .. 152.4 in 0.0 .. 5000.0];
        slope: Ratio = "S" "slope of the surface, in per cent" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.001 .. 200.0];
    ) -> Time = "t_c" "time of concentration" [MIN, MIN];
    reduced [c ONE, length FT, slope PERCENT => MIN] { 1.8 * (1.1 - c) * sqrt(length) / pow(slope, 1.0 / 3.0) }
    sources [FAA_DRAINAGE]
    checks [
        "c=0.95, length=200 ft, slope=1 %" => "3.818 min", ByHand("1.8 x 0.15 x 200^0.5");
        "c=0.30, length=300 ft, slope=2 %" => "19.796 min", ByHand("1.8 x 0.8 x 300^0.5 / 2^(1/3)");
        "c=0.1, length=1 ft, slope=1 %" => "1.800000 min", Limit("one foot at one per cent and a coefficient of 0.1 leave the coefficient of the law");
        "c=0.9, length=0 ft, slope=1 %" => "0 min", Limit("no way, no time");
    ]
}

//! Formula: travel time of sheet flow, TR-55

use crate::formula;
use crate::page::Evidence::{ByHand, Memory, Published};
use crate::sources::{NEH_15, TR_55};
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Ratio, Time};

formula! {
    /// Travel time of a thin sheet of water, with the rain of two years and 24 hours in place of an intensity.
    ///
    /// No repeating, unlike `kinematic-wave`. TR-55 allows 300 ft (91 m), the handbook of 2010 stops at 100 ft;
    /// McCuen and Spiess end it at 100 ft times the root of the slope over n.
    "sheet-flow-time" "Travel time of sheet flow, TR-55"
    fn time(
        n: Ratio = "n" "roughness of the surface to sheet flow" [ONE, ONE: 0.01 .. 0.8 in 0.001 .. 2.0];
        length: Length = "L" "length of the sheet flow" [FT, M: 0.0 .. 30.48 in 0.0 .. 1000.0];
        p_2: Length = "P_2" "rain of two years and 24 hours" [IN, MM: 20.0 .. 250.0 in 1.0 .. 2000.0];
        slope: Ratio = "S" "slope of the surface" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.001 .. 200.0];
    ) -> Time = "T_t" "travel time" [MIN, MIN];
    reduced [n ONE, length FT, p_2 IN, slope ONE => H] {
        0.007 * pow(n * length, 0.8) / (sqrt(p_2) * pow(slope, 0.4))
    }
    sources [TR_55, NEH_15]
    checks [
        "n=0.15, length=100 ft, p_2=3.6 in, slope=0.08" => "0.09 h", Published(&NEH_15, "worked example: sheet flow 0.09 h");
        "n=0.24, length=100 ft, p_2=3.6 in, slope=0.01" => "0.30 h", Memory("TR-55 example 3-1: 0.30 h");
        "n=0.24, length=100 ft, p_2=3.6 in, slope=0.01" => "0.29588 h", ByHand("independent evaluation in Python");
        "n=0.15, length=100 ft, p_2=3.6 in, slope=0.08" => "0.088427 h", ByHand("independent evaluation in Python");
        "n=0.011, length=0 ft, p_2=3.6 in, slope=0.01" => "0 h", crate::page::Evidence::Limit("no way, no time");
    ]
}

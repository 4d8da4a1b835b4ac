//! Formula: time of concentration by the watershed lag

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::NEH_15;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Ratio, Time};

formula! {
    /// Time of concentration of a whole catchment from its longest path, curve number and mean slope, NRCS.
    ///
    /// The slope goes in as a percentage. Fitted to catchments of farm land with curve numbers of 50 to 95; for a paved yard
    /// follow the water instead: `sheet-flow-time` and `travel-time`. The lag itself is six tenths of this time.
    "nrcs-lag-time" "Time of concentration, watershed lag"
    fn time(
        length: Length = "L" "longest path of the water" [FT, M: 60.0 .. 10000.0 in 0.0 .. 100000.0];
        cn: Ratio = "CN" "curve number" [ONE, ONE: 50.0 .. 95.0 in 1.0 .. 100.0];
        slope: Ratio = "Y" "mean slope of the ground, in per cent" [PERCENT, PERCENT: 0.5 .. 64.0 in 0.001 .. 200.0];
    ) -> Time = "T_c" "time of concentration" [MIN, MIN];
    reduced [length FT, cn ONE, slope PERCENT => H] {
        let s = 1000.0 / cn - 10.0;
        pow(length, 0.8) * pow(s + 1.0, 0.7) / (1140.0 * sqrt(slope))
    }
    sources [NEH_15]
    checks [
        "length=3865 ft, cn=63, slope=4.79 %" => "1.14 h", Published(&NEH_15, "worked example of equation 15-4b: S 5.87, T_c 1.14 h");
        "length=3865 ft, cn=63, slope=4.79 %" => "1.1446 h", ByHand("independent evaluation in Python");
        "length=0 ft, cn=63, slope=4.79 %" => "0 h", Limit("no way, no time");
    ]
}

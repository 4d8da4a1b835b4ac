//! Formula: velocity in an open channel, Manning

use crate::formula;
use crate::page::Evidence::{Library, Limit, Memory, Published};
use crate::sources::{MANNING, NEH_15};
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Ratio, Velocity};

formula! {
    /// Mean velocity of uniform flow in a channel or ditch of any section, by its hydraulic radius.
    ///
    /// The radius is the wetted section over the wetted perimeter. In feet the formula carries 1.486, which
    /// manuals print as 1.49: 0.3 % more.
    "manning-velocity" "Velocity in an open channel, Manning"
    fn velocity(
        r: Length = "R" "hydraulic radius" [FT, M: 0.01 .. 5.0 in 0.0 .. 100.0];
        slope: Ratio = "S" "slope" [PERCENT, PERCENT: 0.01 .. 10.0 in 0.0 .. 200.0];
        n: Ratio = "n" "Manning's roughness" [ONE, ONE: 0.009 .. 0.15 in 0.001 .. 1.0];
    ) -> Velocity = "V" "mean velocity" [FT_S, M_S];
    reduced [r M, slope ONE, n ONE => M_S] { pow(r, 2.0 / 3.0) * sqrt(slope) / n }
    sources [MANNING, NEH_15]
    checks [
        "r=2.18 ft, slope=0.01, n=0.04" => "6.3 ft/s" within 0.01 "printed with the factor 1.49", Published(&NEH_15, "table 15-5: 48 ft2 over 22 ft");
        "r=1.571 ft, slope=0.01, n=0.055" => "3.7 ft/s", Published(&NEH_15, "table 15-5: 55 ft2 over 35 ft");
        "r=0.957447 ft, slope=0.005, n=0.05" => "2.05 ft/s" within 0.005 "printed with the factor 1.49",
            Memory("TR-55 example 3-1: 27 ft2 over 28.2 ft");
        "r=0.2859 m, slope=0.005236, n=0.03" => "1.04678 m/s", Library("fluids 1.3.1, open_flow.V_Manning, its example");
        "r=1 m, slope=0.0001, n=0.01" => "1.000000 m/s", Limit("the root of 0.0001 over 0.01");
        "r=0.2859 m, slope=0 %, n=0.03" => "0 m/s", Limit("level water stands");
    ]
}

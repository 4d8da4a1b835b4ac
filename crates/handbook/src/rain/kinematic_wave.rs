//! Formula: travel time of sheet flow, kinematic wave

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::HDS_2;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Length, Ratio, Time, Velocity};

/// Minutes for metres and millimetres an hour; 0.93 for feet and inches an hour (0.3 % longer).
const COEFFICIENT: f64 = 6.9;

formula! {
    /// Travel time of a thin sheet of water over a plane under steady rain.
    ///
    /// The rain depends on the time and the time on the rain: repeat with the intensity of the new
    /// duration until both agree. Sheet flow seldom lasts beyond 25 m (80 ft) and never beyond 90 m
    /// (300 ft); newer guidance stops at 30 m (100 ft). Some texts print 0.938 or 0.94 for 0.93.
    "kinematic-wave" "Travel time of sheet flow, kinematic wave"
    fn time(
        n: Ratio = "n" "roughness of the surface to sheet flow" [ONE, ONE: 0.01 .. 0.8 in 0.001 .. 2.0];
        length: Length = "L" "length of the sheet flow" [FT, M: 0.0 .. 30.48 in 0.0 .. 1000.0];
        slope: Ratio = "S" "slope of the surface" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.001 .. 200.0];
        i: Velocity = "i" "rainfall intensity" [IN_H, MM_H: 5.0 .. 300.0 in 0.01 .. 2000.0];
    ) -> Time = "t_t" "travel time" [MIN, MIN];
    reduced [n ONE, length M, slope ONE, i MM_H => MIN] {
        COEFFICIENT / pow(i, 0.4) * pow(n * length / sqrt(slope), 0.6)
    }
    constants [COEFFICIENT "k"]
    sources [HDS_2]
    checks [
        "n=0.15, length=50 m, slope=0.005, i=116 mm/h" => "17 min", Published(&HDS_2, "example 2.2, first trial");
        "n=0.15, length=50 m, slope=0.005, i=78 mm/h" => "20 min", Published(&HDS_2, "example 2.2, second trial");
        "n=0.15, length=50 m, slope=0.005, i=72 mm/h" => "20 min", Published(&HDS_2, "example 2.2, third trial");
        "n=0.013, length=25 m, slope=0.07, i=80 mm/h" => "1 min", Published(&HDS_2, "example 2.3, first trial");
        "n=0.013, length=25 m, slope=0.07, i=81.88 mm/h" => "1.340 min", ByHand("6.9 x (0.013 x 25 / 0.07^0.5)^0.6 / 81.88^0.4");
        "n=0.15, length=50 m, slope=0.005, i=1 mm/h" => "113.29 min", ByHand("the example's coefficient: 6.9 x (7.5 / 0.005^0.5)^0.6");
        "n=0.011, length=150 ft, slope=0.01, i=5.673 in/h" => "2.497 min" within 0.004 "0.93 and 6.9 are both rounded",
            ByHand("US form: 0.93 x (0.011 x 150 / 0.1)^0.6 / 5.673^0.4");
    ]
}

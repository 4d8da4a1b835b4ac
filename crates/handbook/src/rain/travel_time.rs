//! Formula: travel time along a path of segments

use crate::formula;
use crate::page::Evidence::{Limit, Memory, Published};
use crate::page::Series;
use crate::sources::{HDS_2, NEH_15, TR_55};
use stillrise_units::Time;

/// Sum of length over velocity, s; not a number when a segment has no way on or stands.
fn segments_time(segments: Series) -> f64 {
    let sound = !segments.0.is_empty() && segments.0.iter().all(|(length, v)| *length >= 0.0 && *v > 0.0);
    if sound { segments.0.iter().fold(0.0, |sum, (length, v)| sum + length / v) } else { f64::NAN }
}

formula! {
    /// Time for water to run down a path whose parts have each their velocity: shallow flow, gutters, ditches, pipes.
    ///
    /// Add the time of sheet flow (`sheet-flow-time` or `kinematic-wave`) at the top: the sum is the time of
    /// concentration. Drainage manuals take no less than 5 to 6 minutes.
    "travel-time" "Travel time along a path of segments"
    fn time(
        segments: Series = "L_i|V_i" "lengths of the segments and their velocities" {FT, M; FT_S, M_S};
    ) -> Time = "T_t" "travel time" [MIN, MIN];
    reduced [=> S] { segments_time(segments.clone()) }
    helpers [segments_time(Series) "Σ L/V" "sum of each length over its velocity"]
    sources [TR_55, NEH_15, HDS_2]
    checks [
        "segments=[90 m: 0.30 m/s; 300 m: 0.64 m/s; 650 m: 0.46 m/s]" => "36 min", Published(&HDS_2, "example 5.5: 2180 s, 36 min");
        "segments=[90 m: 0.30 m/s; 300 m: 0.64 m/s; 650 m: 0.46 m/s]" => "2180 s" within 1e-3 "printed to ten seconds", Published(&HDS_2, "example 5.5: 2180 s");
        "segments=[800 ft: 2 ft/s]" => "0.11 h", Published(&NEH_15, "worked example, second segment");
        "segments=[2100 ft: 1.5 ft/s]" => "0.39 h", Published(&NEH_15, "worked example, third segment");
        "segments=[2400 ft: 3.4 ft/s]" => "0.20 h", Published(&NEH_15, "worked example, fourth segment");
        "segments=[2700 ft: 3.5 ft/s]" => "0.21 h", Published(&NEH_15, "worked example, fifth segment");
        "segments=[800 ft: 2 ft/s; 2100 ft: 1.5 ft/s; 2400 ft: 3.4 ft/s; 2700 ft: 3.5 ft/s]" => "0.91 h",
            Published(&NEH_15, "worked example: 1.00 h with 0.09 h of sheet flow");
        "segments=[1400 ft: 1.6 ft/s]" => "0.24 h", Memory("TR-55 example 3-1: shallow flow");
        "segments=[7300 ft: 2.05 ft/s]" => "0.99 h", Memory("TR-55 example 3-1: channel");
        "segments=[60 m: 1 m/s; 60 m: 2 m/s]" => "1.500000 min", Limit("a minute and half a minute");
        "segments=[60 m: 0 m/s]" => "outside: result", Limit("what stands never arrives");
        "segments=[]" => "outside: result", Limit("no path");
    ]
}

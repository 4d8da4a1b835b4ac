//! Formula: storage by the modified rational method, one duration

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::MODIFIED_RATIONAL;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// What a rain of one duration leaves to be held back, if the outflow rises to its limit while
    /// the runoff rises and falls over the time of concentration. The storage is the largest over
    /// all durations; the rational flow is that of each duration's own intensity.
    "modified-rational" "Storage by the modified rational method, one duration"
    fn volume(
        q: Flow = "Q" "rational flow at the intensity of the duration" [GPM, M3_H: 0.0 .. 10000.0 in 0.0 .. 1e7];
        d: Time = "D" "duration of the rain" [MIN, MIN: 5.0 .. 1440.0 in 0.0 .. 1e6];
        q_out: Flow = "Q_out" "flow that may leave" [GPM, M3_H: 0.0 .. 10000.0 in 0.0 .. 1e7];
        t_c: Time = "t_c" "time of concentration" [MIN, MIN: 5.0 .. 120.0 in 0.0 .. 1e5];
    ) -> Volume = "V" "storage" [GAL, M3];
    typed { q * d - q_out * (d + t_c) / 2.0 }
    sources [MODIFIED_RATIONAL]
    checks [
        "q=4.270 cfs, d=38 min, q_out=3 cfs, t_c=10 min" => "5414.5 ft3" within 4e-4 "the flow is rounded to 0.001 cfs",
            ByHand("C 0.9, 2.5 acre, i = 45/(t + 10)^0.82 in/h: 38 min is the worst duration");
        "q=1 m3/s, d=10 min, q_out=0 m3/s, t_c=10 min" => "600 m3", Limit("nothing leaves: all of the runoff, C i A D");
        "q=1 m3/s, d=10 min, q_out=1 m3/s, t_c=10 min" => "0 m3", Limit("the peak may leave: nothing is held at D = t_c");
    ]
}

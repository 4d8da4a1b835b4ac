//! Formula: storage behind a constant outflow, one duration

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::MODIFIED_RATIONAL;
use stillrise_units::{Flow, Time, Volume};

/// What comes beyond what leaves; not a number when more leaves.
fn beyond(q: f64, q_out: f64) -> f64 {
    if q_out <= q { q - q_out } else { f64::NAN }
}

/// A duration; not a number when it ends before the inflow is at its highest.
fn whole(d: f64, t_c: f64) -> f64 {
    if t_c <= d { d } else { f64::NAN }
}

formula! {
    /// What an inflow that rises over the time of concentration, stays for a while and falls again leaves to be held
    /// back, if a pump or a throttle passes its full flow from the first moment on: the part of the trapezoid above the
    /// outflow. Without a time of concentration it is a block, as of washing that is turned on and off. Wants an
    /// outflow no larger than the inflow and a duration no shorter than the time of concentration.
    "constant-outflow-storage" "Storage behind a constant outflow, one duration"
    fn volume(
        q: Flow = "Q" "inflow at its highest" [GPM, M3_H: 0.0 .. 10000.0 in 1e-9 .. 1e7];
        d: Time = "D" "duration of rain or washing" [MIN, MIN: 5.0 .. 1440.0 in 0.0 .. 1e6];
        q_out: Flow = "Q_out" "flow that leaves" [GPM, M3_H: 0.0 .. 10000.0 in 0.0 .. 1e7];
        t_c: Time = "t_c" "time over which the inflow rises and falls" [MIN, MIN: 0.0 .. 120.0 in 0.0 .. 1e5];
    ) -> Volume = "V" "storage" [GAL, M3];
    reduced [q M3_S, d S, q_out M3_S, t_c S => M3] { beyond(q, q_out) * (whole(d, t_c) - t_c * (q_out / q)) }
    helpers [
        beyond(f64, f64) "Q - Q_out" "what comes beyond what leaves";
        whole(f64, f64) "D" "the duration, no shorter than the time of concentration";
    ]
    sources [MODIFIED_RATIONAL]
    checks [
        "q=1 m3/s, d=30 min, q_out=0.5 m3/s, t_c=10 min" => "750 m3", ByHand("two triangles of 300 s by 0.5 m3/s, 75 m3 each, and 1200 s at 0.5 m3/s, 600 m3");
        "q=1 m3/s, d=10 min, q_out=0 m3/s, t_c=10 min" => "600 m3", Limit("nothing leaves: all of the runoff, Q D");
        "q=10 m3/h, d=60 min, q_out=20 m3/h, t_c=10 min" => "outside: result", Limit("more leaves than comes: nothing to hold, and no trapezoid");
        "q=10 m3/h, d=5 min, q_out=9 m3/h, t_c=60 min" => "outside: result", Limit("ends before the inflow is at its highest");
        "q=10 m3/h, d=240 min, q_out=4 m3/h, t_c=0 min" => "24 m3", ByHand("a block: 6 m3/h over 4 h");
    ]
}

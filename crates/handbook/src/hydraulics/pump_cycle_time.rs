//! Formula: time from one start of a pump to the next

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Time, Volume};

/// What the pumps lift beyond what arrives; not a number when they lift no more.
fn spare(q_pump: f64, q_in: f64) -> f64 {
    if q_in < q_pump { q_pump - q_in } else { f64::NAN }
}

formula! {
    /// Time to fill a sump from stop to start level, and to draw it down again.
    ///
    /// It is shortest, four times volume over pump flow, where half of what the pump lifts arrives.
    "pump-cycle-time" "Time from one start of a pump to the next"
    fn time(
        volume: Volume = "V" "water between start and stop level" [GAL, M3: 0.02 .. 100.0 in 0.0 .. 1e6];
        q_in: Flow = "Q_in" "flow that arrives" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
        q_pump: Flow = "Q_p" "flow of the pumps that run" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
    ) -> Time = "t_c" "time from start to start" [MIN, MIN];
    reduced [volume M3, q_in M3_S, q_pump M3_S => S] { volume / q_in + volume / spare(q_pump, q_in) }
    helpers [spare(f64, f64) "Q_p - Q_in" "what the pumps lift beyond what arrives"]
    sources [DEFINITION]
    checks [
        "volume=3 m3, q_in=5 L/s, q_pump=10 L/s" => "20.0000 min", Limit("half the pump's flow: 4 x 3 m3 over 10 L/s");
        "volume=100 gal, q_in=30 gpm, q_pump=50 gpm" => "8.3333 min", ByHand("100/30 + 100/20 min");
        "volume=250 gal, q_in=50 gpm, q_pump=100 gpm" => "10.000 min", Memory("wet wells: volume is a quarter of least cycle time and pump flow, 10 min x 100 gpm / 4");
        "volume=100 gal, q_in=0 gpm, q_pump=50 gpm" => "outside: result", Limit("it never starts");
        "volume=100 gal, q_in=60 gpm, q_pump=50 gpm" => "outside: result", Limit("it never stops");
    ]
}

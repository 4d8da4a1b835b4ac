//! Formula: time a pump runs between its levels

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Time, Volume};

/// What the pumps lift beyond what arrives; not a number when they lift no more.
fn spare(q_pump: f64, q_in: f64) -> f64 {
    if q_in < q_pump { q_pump - q_in } else { f64::NAN }
}

formula! {
    /// Time that a pump needs to draw a sump down from its start to its stop level while water goes on arriving; it has
    /// none where as much arrives as it lifts.
    "pump-run-time" "Time a pump runs between its levels"
    fn time(
        volume: Volume = "V" "water between start and stop level" [GAL, M3: 0.02 .. 100.0 in 0.0 .. 1e6];
        q_in: Flow = "Q_in" "flow that arrives" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        q_pump: Flow = "Q_p" "flow of the pumps that run" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
    ) -> Time = "t_r" "time it runs" [MIN, MIN];
    reduced [volume M3, q_in M3_S, q_pump M3_S => S] { volume / spare(q_pump, q_in) }
    helpers [spare(f64, f64) "Q_p - Q_in" "what the pumps lift beyond what arrives"]
    sources [DEFINITION]
    checks [
        "volume=6 m3, q_in=0 L/s, q_pump=10 L/s" => "10.0000 min", Limit("nothing arrives: volume over flow");
        "volume=100 gal, q_in=30 gpm, q_pump=50 gpm" => "5.00000 min", ByHand("100 over 20 gpm");
        "volume=100 gal, q_in=50 gpm, q_pump=50 gpm" => "outside: result", Limit("it never stops");
        "volume=100 gal, q_in=60 gpm, q_pump=50 gpm" => "outside: result", Limit("more arrives than it lifts");
    ]
}

//! Formula: outflow of a linear reservoir after a step

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::LINEAR_RESERVOIR;
use stillrise_units::{Flow, Time};

/// Twice the storage over outflow, less the step; not a number when the step is longer than that.
fn carried(k: f64, dt: f64) -> f64 {
    if dt <= 2.0 * k { 2.0 * k - dt } else { f64::NAN }
}

formula! {
    /// Flow out of an area or store whose storage is in proportion to its outflow, `S = K O`, after a step of time.
    ///
    /// It turns bursts of rain into a flow that rises and falls; K is near the time of concentration. A
    /// step longer than twice K makes the outflow swing below nothing and has no answer: take shorter ones. A store with a weir
    /// or a capped outlet is not linear: `level-pool`.
    "linear-reservoir" "Outflow of a linear reservoir after a step"
    fn outflow(
        i_1: Flow = "I_1" "inflow at the start of the step" [GPM, L_S: 0.0 .. 1000.0 in 0.0 .. 1e6];
        i_2: Flow = "I_2" "inflow at its end" [GPM, L_S: 0.0 .. 1000.0 in 0.0 .. 1e6];
        o_1: Flow = "O_1" "outflow at its start" [GPM, L_S: 0.0 .. 1000.0 in 0.0 .. 1e6];
        dt: Time = "dt" "step" [MIN, MIN: 0.1 .. 60.0 in 1e-6 .. 1e5];
        k: Time = "K" "storage over outflow" [MIN, MIN: 1.0 .. 600.0 in 1e-6 .. 1e6];
    ) -> Flow = "O_2" "outflow at its end" [GPM, L_S];
    reduced [i_1 L_S, i_2 L_S, o_1 L_S, dt S, k S => L_S] { (dt * (i_1 + i_2) + carried(k, dt) * o_1) / (2.0 * k + dt) }
    helpers [carried(f64, f64) "2 K - dt" "twice the storage over outflow, less the step"]
    sources [LINEAR_RESERVOIR]
    checks [
        "i_1=5 L/s, i_2=5 L/s, o_1=5 L/s, dt=5 min, k=10 min" => "5.000000 L/s", Limit("what enters leaves");
        "i_1=0 L/s, i_2=0 L/s, o_1=5 L/s, dt=20 min, k=10 min" => "0 L/s", Limit("a step of twice K empties it");
        "i_1=0 L/s, i_2=0 L/s, o_1=5 L/s, dt=60 min, k=10 min" => "outside: result", Limit("a longer step would draw it below nothing");
        "i_1=0 L/s, i_2=0 L/s, o_1=1000 L/s, dt=0.01 min, k=100 min" => "999.9000 L/s", Limit("a short step decays by exp(-dt/K)");
        "i_1=0 cfs, i_2=0.847 cfs, o_1=0 cfs, dt=5 min, k=10 min" => "0.1694 cfs", ByHand("0.2 x 0.847: 0.07 in of excess in 5 min on an acre");
        "i_1=10 L/s, i_2=10 L/s, o_1=0 L/s, dt=6 min, k=60 min" => "0.95163 L/s" within 1e-3 "the exact rise is 10 (1 - exp(-0.1)); the step is its second-order form",
            Limit("a steady inflow fills it exponentially");
    ]
}

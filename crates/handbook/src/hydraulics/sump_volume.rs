//! Formula: least volume between start and stop of a pump

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{MIL_1005_9A, UFC_3_240_04A};
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Water between start and stop level that keeps the time from start to start at its least value, when half of what the
    /// pump lifts arrives: the worst inflow.
    ///
    /// Two equal pumps that take turns start half as often each: half the volume will do. The time at any other inflow
    /// is `pump-cycle-time`; least times are listed beside it.
    "sump-volume" "Least volume between start and stop of a pump"
    fn volume(
        time: Time = "t_c" "least time from start to start" [MIN, MIN: 2.0 .. 60.0 in 0.0 .. 1e6];
        q_pump: Flow = "Q_p" "flow of the pump" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
    ) -> Volume = "V" "water between start and stop level" [GAL, M3];
    typed { time * q_pump / 4.0 }
    sources [MIL_1005_9A, UFC_3_240_04A]
    checks [
        "time=6 min, q_pump=100 gpm" => "150 gal", ByHand("6 x 100 / 4: the handbook's equation 2 at its least time for pumps below 50 hp");
        "time=10 min, q_pump=100 gpm" => "250 gal", ByHand("10 x 100 / 4; filling takes 250/50 and emptying 250/50 min");
        "time=20 min, q_pump=10 L/s" => "3.000000 m3", Limit("3 m3 fill at 5 L/s in 10 min and empty at 5 L/s in 10 min");
    ]
}

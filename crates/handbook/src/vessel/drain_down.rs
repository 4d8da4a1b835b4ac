//! Formula: time to drain at a metered rate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Time in which a metered drain, one whose rate does not depend on the head, empties a volume.
    ///
    /// A plain orifice slows down as the water falls and takes longer: up to twice as long from a basin with
    /// upright walls.
    "drain-down" "Time to drain at a metered rate"
    fn time(
        volume: Volume = "V" "volume to drain" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        rate: Flow = "Q" "rate of the drain" [GPM, M3_H: 0.0 .. 1000.0 in 0.0 .. 1e7];
    ) -> Time = "t" "time to drain" [D, D];
    typed { volume / rate }
    sources [DEFINITION]
    checks [
        "volume=19.81 m3, rate=1 m3/h" => "0.8254 d", ByHand("4 in of rain on 195 m2 at 1 m3/h: 19.81 h");
        "volume=7480.5 gal, rate=5 gpm" => "1.0390 d", ByHand("5 in of rain on 2,400 ft2: 1,496.1 min");
        "volume=24 m3, rate=1 m3/h" => "1.0000000 d", Limit("a day has 24 hours");
        "volume=24 m3, rate=0 m3/h" => "outside: result", Limit("it never empties");
    ]
}

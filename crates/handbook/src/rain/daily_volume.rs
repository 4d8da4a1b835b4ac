//! Formula: volume of a stream in a day

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Volume that a stream brings in a day: its flow over the hours it runs.
    "daily-volume" "Volume of a stream in a day"
    fn volume(
        q: Flow = "Q" "flow while it runs" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        hours: Time = "t_d" "running time in a day" [H, H: 0.0 .. 24.0 in 0.0 .. 24.0];
    ) -> Volume = "V_d" "volume in a day" [GAL, M3];
    typed { q * hours }
    sources [DEFINITION]
    checks [
        "q=1 L/s, hours=24 h" => "86.4000 m3", Limit("a litre a second is 86.4 cubic metres a day");
        "q=45 gpm, hours=3 h" => "8100 gal", ByHand("45 x 180 min");
        "q=760 gpm, hours=10 min" => "7600 gal", ByHand("ten minutes of a deluge of 760 gpm");
        "q=760 gpm, hours=60 min" => "45600 gal", ByHand("an hour of a deluge of 760 gpm");
    ]
}

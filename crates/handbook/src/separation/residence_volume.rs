//! Formula: volume for a residence time

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{DEFINITION, DIESEL_EXAMPLE};
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Volume of the water that a flow fills in a given time; stored oil and sludge come on top.
    "residence-volume" "Volume for a residence time"
    fn volume(
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        t: Time = "t" "residence time" [MIN, MIN: 0.5 .. 240.0 in 0.0 .. 1e6];
    ) -> Volume = "V" "volume of the water" [GAL, L];
    typed { q * t }
    sources [DEFINITION]
    checks [
        "q=90 m3/h, t=26.9 min" => "40.35 m3", Published(&DIESEL_EXAMPLE, "1.5 m3/min for 26.9 min: 40.35 m3");
        "q=90 m3/h, t=26.915 min" => "40.373 m3", ByHand("1.5 x 26.915 = 40.3725");
        "q=100 gpm, t=10 min" => "1000 gal", Limit("a hundred gallons a minute for ten minutes");
    ]
}

//! Formula: mean residence time

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, UFGS_PLATES};
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Volume over flow: the mean time, whatever the paths; some water always leaves sooner.
    ///
    /// A guide specification takes the volume less 20 %, for stored oil and sludge. Detention says
    /// little of separation by itself: overflow rate governs.
    "residence-time" "Mean residence time"
    fn time(
        volume: Volume = "V" "volume of the water" [GAL, L: 100.0 .. 1e6 in 0.0 .. 1e9];
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 1e-6 .. 1e6];
    ) -> Time = "t" "mean residence time" [MIN, MIN];
    typed { volume / q }
    sources [DEFINITION, UFGS_PLATES]
    checks [
        "volume=1000 gal, q=100 gpm" => "10 min", Limit("a thousand gallons at a hundred a minute");
        "volume=40.373 m3, q=90 m3/h" => "26.915 min", ByHand("40.373 / 1.5");
        "volume=1 m3, q=1 L/s" => "1000 s", Limit("a thousand litres at one a second");
    ]
}

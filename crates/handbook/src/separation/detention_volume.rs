//! Formula: volume for a detention, with a reserve for what is stored

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::UFGS_PLATES;
use stillrise_units::{Flow, Ratio, Time, Volume, ratio};

formula! {
    /// Volume of the separation zone in which a flow stays for a time, when part of it is taken off for stored solids and oil.
    ///
    /// A guide specification takes off 20 %. Without that, it is `residence-volume`.
    "detention-volume" "Volume for a detention with a reserve"
    fn volume(
        q: Flow = "Q" "design flow" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        t: Time = "t" "detention" [MIN, MIN: 0.5 .. 240.0 in 0.0 .. 1e6];
        r: Ratio = "r" "share taken off for stored solids and oil" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 95.0];
    ) -> Volume = "V" "volume of the separation zone" [GAL, L];
    typed { q * t / (ratio(1.0) - r) }
    sources [UFGS_PLATES]
    checks [
        "q=100 gpm, t=20 min, r=20 %" => "2500 gal", ByHand("2000 / 0.8");
        "q=100 gpm, t=10 min, r=0 %" => "1000.000 gal", Limit("nothing taken off");
    ]
}

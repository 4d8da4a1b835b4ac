//! Formula: time to fill a store

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Volume of a store over the rate at which it fills.
    ///
    /// Sludge usually fills its store long before the oil does: in the example below 12 days against 105.
    /// A rate fitted to measured depths beats any estimate.
    "days-to-fill" "Time to fill a store"
    fn time(
        volume: Volume = "V" "volume of the store to its trigger" [GAL, L: 0.0 .. 100000.0 in 0.0 .. 1e9];
        rate: Flow = "Q" "rate at which it fills" [GPD, L_D: 0.0 .. 10000.0 in 0.0 .. 1e9];
    ) -> Time = "t" "time to the trigger" [D, D];
    typed { volume / rate }
    sources [DEFINITION]
    checks [
        "volume=125 gal, rate=10.7 gpd" => "11.7 d", ByHand("half of a 250 gal hopper");
        "volume=281 gal, rate=2.68 gpd" => "105 d", ByHand("oil store to 60 %");
        "volume=10 L, rate=10 L/d" => "1.00000000 d", Limit("a store of one day");
        "volume=10 L, rate=0 L/d" => "outside: result", Limit("it never fills");
    ]
}

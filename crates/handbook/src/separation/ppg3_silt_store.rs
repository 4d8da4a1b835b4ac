//! Formula: silt store by PPG3

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::PPG3;
use stillrise_units::{Flow, Volume};

formula! {
    /// Silt store by the withdrawn British guideline; a comparison only.
    ///
    /// A hundred litres for each unit of nominal size, of full retention and of a bypass separator alike; of the latter ahead of
    /// it or in the chamber of its weir, never where the oil is held.
    "ppg3-silt-store" "Silt store by PPG3, for comparison"
    fn volume(
        ns: Flow = "NS" "nominal size, as a flow" [L_S, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
    ) -> Volume = "V_s" "silt store" [L, L];
    reduced [ns L_S => L] { 100.0 * ns }
    sources [PPG3]
    checks [
        "ns=1 L/s" => "100 L", Published(&PPG3, "silt storage 100 NS, as a trade text quotes it");
        "ns=18 L/s" => "1800 L", ByHand("100 x 18, of 1000 m2 fully retained");
        "ns=1.8 L/s" => "180 L", ByHand("100 x 1.8, of 1000 m2 behind a bypass");
        "ns=0 L/s" => "0 L", Limit("no size, no store");
    ]
}

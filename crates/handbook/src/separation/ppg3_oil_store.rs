//! Formula: oil store by PPG3, for comparison

use super::ppg3_size::Ppg3Kind;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::PPG3;
use stillrise_units::{Flow, Volume};

formula! {
    /// Oil store by the withdrawn British guideline; a comparison only.
    ///
    /// Ten litres for each unit of nominal size, of a bypass separator fifteen. That EN 858 itself asks for the same, with
    /// and without an automatic closure, is remembered and was not confirmed: the rule is printed as the British one.
    "ppg3-oil-store" "Oil store by PPG3, for comparison"
    fn volume(
        ns: Flow = "NS" "nominal size, as a flow" [L_S, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        kind: Ppg3Kind = "kind" "full retention or bypass";
    ) -> Volume = "V_o" "oil store" [L, L];
    reduced [ns L_S => L] { if kind == Ppg3Kind::Full { 10.0 * ns } else { 15.0 * ns } }
    sources [PPG3]
    checks [
        "ns=1 L/s, kind=full" => "10 L", Published(&PPG3, "oil storage 10 NS, as a trade text quotes it");
        "ns=1 L/s, kind=bypass" => "15 L", Published(&PPG3, "oil storage 15 NSB, as a trade text quotes it");
        "ns=18 L/s, kind=full" => "180 L", ByHand("10 x 18, of 1000 m2 fully retained");
        "ns=1.8 L/s, kind=bypass" => "27 L", ByHand("15 x 1.8, of 1000 m2 behind a bypass");
        "ns=0 L/s, kind=full" => "0 L", Limit("no size, no store");
    ]
}

//! Formula: droplets left by coalescence at a constant rate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SMOLUCHOWSKI;
use stillrise_units::Ratio;

formula! {
    /// Number of droplets left of those there were, if any two join at one rate whatever their sizes.
    ///
    /// Time is counted in rate times number at the start. An exact solution of Smoluchowski's equation.
    "smoluchowski-number" "Droplets left by coalescence at a constant rate"
    fn number(
        tau: Ratio = "tau" "rate times number at the start times time" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e9];
    ) -> Ratio = "N" "number left over number at the start" [ONE, ONE];
    reduced [tau ONE => ONE] { 2.0 / (2.0 + tau) }
    sources [SMOLUCHOWSKI]
    checks [
        "tau=1" => "0.66667", ByHand("2/3");
        "tau=2" => "0.5", ByHand("2/4");
        "tau=10" => "0.16667", ByHand("2/12");
        "tau=100" => "0.0196078", ByHand("2/102");
        "tau=0" => "1", Limit("no time, nothing joined");
    ]
}

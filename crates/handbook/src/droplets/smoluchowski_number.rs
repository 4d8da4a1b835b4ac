//! Formula: droplets left when all meet equally often

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SMOLUCHOWSKI;
use stillrise_units::Ratio;

formula! {
    /// Share of the first number of droplets that is left, when any two meet equally often.
    ///
    /// Holds for whatever sizes they start with. Time counts as `τ = K N_0 t`, with the rate K at which one
    /// droplet sweeps the water clear of others and the number N_0 per volume at the start. A yardstick for
    /// calculations of coalescence and a fair one for small droplets; in shear, large ones meet far more often.
    "smoluchowski-number" "Droplets left when all meet equally often"
    fn left(
        tau: Ratio = "tau" "time times rate times first number" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e12];
    ) -> Ratio = "N" "share of the first number" [ONE, ONE];
    reduced [tau ONE => ONE] { 2.0 / (2.0 + tau) }
    sources [SMOLUCHOWSKI]
    checks [
        "tau=1" => "0.66667", ByHand("2/3");
        "tau=10" => "0.16667", ByHand("1/6");
        "tau=100" => "0.0196078", ByHand("1/51");
        "tau=0" => "1", Limit("none has met yet");
        "tau=2" => "0.5", Limit("half after a time of 2, by the definition of that time");
    ]
}

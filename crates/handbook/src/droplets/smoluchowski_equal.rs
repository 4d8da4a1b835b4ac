//! Formula: clusters of equal droplets after coalescence at a constant rate

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SMOLUCHOWSKI;
use stillrise_units::Ratio;
use stillrise_units::math::pow;

formula! {
    /// Number of droplets made of `k` equal ones, over the number at the start, when any two join at one rate.
    "smoluchowski-equal" "Clusters of equal droplets after coalescence"
    fn number(
        k: Ratio = "k" "droplets joined in one" [ONE, ONE: 1.0 .. 100.0 in 1.0 .. 1e4];
        tau: Ratio = "tau" "rate times number at the start times time" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e9];
    ) -> Ratio = "N_k" "number over number at the start" [ONE, ONE];
    reduced [k ONE, tau ONE => ONE] { pow(tau / 2.0, k - 1.0) / pow(1.0 + tau / 2.0, k + 1.0) }
    sources [SMOLUCHOWSKI]
    checks [
        "k=1, tau=2" => "0.25", ByHand("1/4");
        "k=2, tau=2" => "0.125", ByHand("1/8");
        "k=3, tau=2" => "0.0625", ByHand("1/16");
        "k=4, tau=2" => "0.03125", ByHand("1/32");
        "k=5, tau=2" => "0.015625", ByHand("1/64");
        "k=1, tau=0" => "1", Limit("no time, nothing joined");
    ]
}

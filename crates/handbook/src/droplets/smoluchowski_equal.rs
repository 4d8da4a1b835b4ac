//! Formula: multiples of equal droplets when all meet equally often

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SMOLUCHOWSKI;
use stillrise_units::Ratio;
use stillrise_units::math::pow;

formula! {
    /// Number of droplets made of k first ones, over the first number, when any two meet equally often.
    ///
    /// Of droplets that are all equal at the start; k is a whole number. Time counts as in
    /// `smoluchowski-number`, whose number is the sum over all k. The larger are always the fewer. An exact
    /// case to hold a calculation of coalescence against, not a forecast.
    "smoluchowski-equal" "Multiples of equal droplets when all meet equally often"
    fn number(
        tau: Ratio = "tau" "time times rate times first number" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e12];
        k: Ratio = "k" "first droplets in one" [ONE, ONE: 1.0 .. 1000.0 in 1.0 .. 1e9];
    ) -> Ratio = "N_k" "number over the first number" [ONE, ONE];
    reduced [tau ONE, k ONE => ONE] { pow(tau / (2.0 + tau), k - 1.0) * (2.0 / (2.0 + tau)) * (2.0 / (2.0 + tau)) }
    sources [SMOLUCHOWSKI]
    checks [
        "tau=2, k=1" => "0.25", ByHand("(1/2)^2");
        "tau=2, k=2" => "0.125", ByHand("(1/2)^3");
        "tau=2, k=3" => "0.0625", ByHand("(1/2)^4");
        "tau=2, k=4" => "0.03125", ByHand("(1/2)^5");
        "tau=2, k=5" => "0.015625", ByHand("(1/2)^6");
        "tau=0.5, k=3" => "0.02560000", ByHand("0.25^2/1.25^4");
        "tau=10, k=6" => "0.01116327", ByHand("5^5/6^7");
        "tau=0, k=1" => "1", Limit("all single at the start");
        "tau=0, k=2" => "0", Limit("none double at the start");
    ]
}

//! Formula: upper-limit distribution of droplets

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::MUGELE_EVANS;
use stillrise_units::math::{ln, normal_cdf, sqrt};
use stillrise_units::{Length, Ratio};

formula! {
    /// Share of the oil's volume in droplets finer than a size, log-normal up to a largest droplet (Mugele and
    /// Evans).
    ///
    /// Schwarz and Bezemer took the median for a fifth of the largest and delta for 0.72 (from memory).
    "upper-limit-finer" "Upper-limit distribution of droplets"
    fn finer(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 1000.0 in 0.0 .. 1e6];
        d50: Length = "d_50" "volume median" [UM, UM: 5.0 .. 500.0 in 0.001 .. 1e6];
        largest: Length = "d_max" "largest droplet" [UM, UM: 10.0 .. 5000.0 in 0.001 .. 1e6];
        delta: Ratio = "delta" "narrowness" [ONE, ONE: 0.4 .. 2.0 in 0.05 .. 20.0];
    ) -> Ratio = "F" "share that is finer" [PERCENT, PERCENT];
    reduced [d UM, d50 UM, largest UM, delta ONE => ONE] {
        if d >= largest { 1.0 }
        else if d <= 0.0 { 0.0 }
        else { normal_cdf(sqrt(2.0) * delta * ln((largest / d50 - 1.0) * d / (largest - d))) }
    }
    sources [MUGELE_EVANS]
    checks [
        "d=47.3 um, d50=200 um, largest=1000 um, delta=0.72" => "0.05" within 2e-2 "sizes are printed to four places of the largest", ByHand("quantiles evaluated independently in Python at a = 4");
        "d=66.3 um, d50=200 um, largest=1000 um, delta=0.72" => "0.1" within 2e-2 "sizes are printed to four places of the largest", ByHand("quantiles evaluated independently in Python at a = 4");
        "d=200 um, d50=200 um, largest=1000 um, delta=0.72" => "0.5" within 2e-2 "sizes are printed to four places of the largest", ByHand("quantiles evaluated independently in Python at a = 4");
        "d=468.1 um, d50=200 um, largest=1000 um, delta=0.72" => "0.9" within 2e-2 "sizes are printed to four places of the largest", ByHand("quantiles evaluated independently in Python at a = 4");
        "d=557 um, d50=200 um, largest=1000 um, delta=0.72" => "0.95" within 2e-2 "sizes are printed to four places of the largest", ByHand("quantiles evaluated independently in Python at a = 4");
        "d=200 um, d50=200 um, largest=1000 um, delta=0.72" => "0.5000", Limit("half is finer than the median");
        "d=1 mm, d50=200 um, largest=1000 um, delta=0.72" => "1", Limit("nothing is larger than the largest");
        "d=0 um, d50=200 um, largest=1000 um, delta=0.72" => "0", Limit("nothing is finer than nothing");
    ]
}

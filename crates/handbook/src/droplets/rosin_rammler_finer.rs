//! Formula: share of the oil in droplets finer than a size, Rosin-Rammler

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::ROSIN_RAMMLER;
use stillrise_units::math::{exp, pow};
use stillrise_units::{Length, Ratio};

formula! {
    /// Rosin and Rammler's distribution of the oil's volume over droplet diameters: Weibull's by another name.
    ///
    /// The characteristic size is not the median: 63.2 % of the volume is finer than it, and the median is
    /// `δ (ln 2)^(1/n)`. A large exponent is a narrow distribution. Of the same median and 95 %
    /// size it holds more fine oil than the log-normal: which of the two is fitted decides what a good
    /// separator leaves.
    "rosin-rammler-finer" "Share of the oil in droplets finer than a size, Rosin-Rammler"
    fn share(
        d: Length = "d" "droplet diameter" [UM, UM: 0.0 .. 3000.0 in 0.0 .. 1000000.0];
        delta: Length = "delta" "characteristic size: 63.2 % of the volume is finer" [UM, UM: 5.0 .. 1000.0 in 0.01 .. 100000.0];
        n: Ratio = "n" "exponent" [ONE, ONE: 1.0 .. 4.0 in 0.1 .. 50.0];
    ) -> Ratio = "F" "share of the volume that is finer" [PERCENT, PERCENT];
    reduced [d UM, delta UM, n ONE => ONE] { 1.0 - exp(-pow(d / delta, n)) }
    sources [ROSIN_RAMMLER]
    checks [
        "d=100 um, delta=100 um, n=2.6" => "63.2121 %", Limit("1 - 1/e at the characteristic size, whatever the exponent");
        "d=0 um, delta=100 um, n=2" => "0 %", Limit("nothing is smaller than nothing");
        "d=83.2555 um, delta=100 um, n=2" => "50.0000 %", ByHand("the median: 100 sqrt(ln 2)");
    ]
}

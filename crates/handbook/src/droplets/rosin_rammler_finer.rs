//! Formula: Rosin-Rammler distribution of droplets

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::ROSIN_RAMMLER;
use stillrise_units::math::{exp, pow};
use stillrise_units::{Length, Ratio};

/// Natural logarithm of 2.
const LN_2: f64 = core::f64::consts::LN_2;

formula! {
    /// Share of the oil's volume in droplets finer than a size, after Rosin and Rammler (Weibull).
    ///
    /// An exponent of 2.1 to 2.8 is said to fit oil sheared in pipes (from memory). Its fine tail is thicker than a
    /// log-normal one of the same middle.
    "rosin-rammler-finer" "Rosin-Rammler distribution of droplets"
    fn finer(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 1000.0 in 0.0 .. 1e6];
        d50: Length = "d_50" "volume median" [UM, UM: 5.0 .. 500.0 in 0.001 .. 1e6];
        n: Ratio = "n" "exponent" [ONE, ONE: 1.0 .. 4.0 in 0.05 .. 20.0];
    ) -> Ratio = "F" "share that is finer" [PERCENT, PERCENT];
    reduced [d UM, d50 UM, n ONE => ONE] { 1.0 - exp(-LN_2 * pow(d / d50, n)) }
    constants [LN_2 "ln 2"]
    sources [ROSIN_RAMMLER]
    checks [
        "d=70 um, d50=70 um, n=2.6" => "0.5000000", Limit("half is finer than the median");
        "d=0 um, d50=70 um, n=2.6" => "0", Limit("nothing is finer than nothing");
        "d=20 um, d50=70 um, n=2.6" => "0.0263310", Library("scipy 1.17.1, stats.weibull_min.cdf");
        "d=60 um, d50=70 um, n=2.6" => "0.3714016", Library("scipy 1.17.1, stats.weibull_min.cdf");
        "d=150 um, d50=70 um, n=2.6" => "0.9934491", Library("scipy 1.17.1, stats.weibull_min.cdf");
        "d=20 um, d50=70 um, n=1.2" => "0.1428566", Library("scipy 1.17.1, stats.weibull_min.cdf");
        "d=200 um, d50=70 um, n=1.2" => "0.9131102", Library("scipy 1.17.1, stats.weibull_min.cdf");
    ]
}

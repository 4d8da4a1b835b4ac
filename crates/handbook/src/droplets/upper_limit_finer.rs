//! Formula: share of the oil in droplets finer than a size, with a largest droplet

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::MUGELE_EVANS;
use stillrise_units::math::{ln, normal_cdf, sqrt};
use stillrise_units::{Length, Ratio};

const SCIPY: &str = "scipy 1.17.1, special.erf";
const QUANTILE: &str = "quantiles by the inverse error function in Python, scipy 1.17.1, printed to four digits";

formula! {
    /// Mugele and Evans' distribution of the oil's volume: log-normal in d/(d_max - d), so that no droplet
    /// is larger than the largest.
    ///
    /// The standard deviation of that logarithm is `1/(δ sqrt 2)`. For droplets that turbulence has just made.
    /// Quoted from memory for oil in pipes and mixers: shape 0.72 and a median of one fifth of the largest.
    /// Beware of which largest a source means: this one holds all of the volume, that of `hinze-droplet`
    /// 95 % of it.
    "upper-limit-finer" "Share of the oil in droplets finer than a size, with a largest droplet"
    fn share(
        d: Length = "d" "droplet diameter" [UM, UM: 0.0 .. 3000.0 in 0.0 .. 1000000.0];
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 100000.0];
        shape: Ratio = "delta" "shape: larger is narrower" [ONE, ONE: 0.4 .. 2.0 in 0.01 .. 100.0];
        largest: Length = "d_max" "largest droplet" [UM, UM: 10.0 .. 5000.0 in 0.01 .. 1000000.0];
    ) -> Ratio = "F" "share of the volume that is finer" [PERCENT, PERCENT];
    reduced [d UM, d50 UM, shape ONE, largest UM => ONE] {
        if d < largest { normal_cdf(sqrt(2.0) * shape * ln((largest / d50 - 1.0) * d / (largest - d))) } else { 1.0 }
    }
    sources [MUGELE_EVANS]
    checks [
        "d=47.3 um, d50=200 um, shape=0.72, largest=1000 um" => "0.050", ByHand(QUANTILE);
        "d=66.3 um, d50=200 um, shape=0.72, largest=1000 um" => "0.1000", ByHand(QUANTILE);
        "d=468.1 um, d50=200 um, shape=0.72, largest=1000 um" => "0.9000", ByHand(QUANTILE);
        "d=557.0 um, d50=200 um, shape=0.72, largest=1000 um" => "0.9500", ByHand(QUANTILE);
        "d=100 um, d50=200 um, shape=0.72, largest=1000 um" => "0.20448246", Library(SCIPY);
        "d=300 um, d50=200 um, shape=0.72, largest=1000 um" => "0.70843703", Library(SCIPY);
        "d=700 um, d50=200 um, shape=0.72, largest=1000 um" => "0.98852659", Library(SCIPY);
        "d=50 um, d50=50 um, shape=0.5, largest=500 um" => "0.5", Limit("the median halves the volume");
        "d=250 um, d50=50 um, shape=0.5, largest=500 um" => "0.93986871", Library(SCIPY);
        "d=0 um, d50=200 um, shape=0.72, largest=1000 um" => "0", Limit("nothing is smaller than nothing");
        "d=1000 um, d50=200 um, shape=0.72, largest=1000 um" => "1", Limit("nothing is larger than the largest");
        "d=100 um, d50=200 um, shape=0.72, largest=150 um" => "outside: result", Limit("no median above the largest");
    ]
}

//! Formula: share of the oil volume in droplets finer than a size

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::{ln, normal_cdf};
use stillrise_units::{Length, Ratio};

formula! {
    /// Log-normal distribution of the oil's volume over droplet diameters.
    ///
    /// `d50` is the *volume* median: half of the oil is in smaller droplets. The median by number
    /// of the same droplets is finer by exp(3 ln² sg): by 4.2 at a spread of 2, by 37 at 3. Never
    /// mix the two. The spread is d84 over d50.
    "lognormal-finer" "Share of the oil in droplets finer than a size"
    fn share(
        d: Length = "d" "droplet diameter" [UM, UM: 0.0 .. 3000.0 in 0.0 .. 1000000.0];
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 100000.0];
        sg: Ratio = "s_g" "geometric spread" [ONE, ONE: 1.2 .. 4.0 in 1.001 .. 20.0];
    ) -> Ratio = "F" "share of the volume that is finer" [PERCENT, PERCENT];
    reduced [d UM, d50 UM, sg ONE => ONE] { normal_cdf(ln(d / d50) / ln(sg)) }
    sources [DEFINITION]
    checks [
        "d=60 um, d50=60 um, sg=2.5" => "50 %", Limit("the median halves the volume");
        "d=0 um, d50=60 um, sg=2" => "0 %", Limit("nothing is smaller than nothing");
        "d=120 um, d50=60 um, sg=2" => "84.134475 %", Limit("one spread above the median: the normal distribution at 1");
        "d=90 um, d50=123.3 um, sg=1.4535" => "20.0 %", ByHand("80 % above 90 µm: the fit from which the median and spread were drawn");
        "d=150 um, d50=123.3 um, sg=1.4535" => "70.0 %", ByHand("30 % above 150 µm: the same fit");
    ]
}

//! Formula: median of sheared droplets

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::HINZE_95;
use stillrise_units::math::{Z_95, pow};
use stillrise_units::{Length, Ratio};

formula! {
    /// Volume median of log-normal droplets of which 95 % of the volume is smaller than the largest
    /// stable droplet, as that size is defined.
    "sheared-median" "Median of sheared droplets"
    fn diameter(
        d_95: Length = "d_95" "largest stable droplet" [UM, UM: 1.0 .. 5000.0 in 0.0 .. 1e6];
        sg: Ratio = "sigma_g" "geometric standard deviation" [ONE, ONE: 1.2 .. 4.0 in 1.0 .. 20.0];
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [d_95 UM, sg ONE => UM] { d_95 * pow(sg, -Z_95) }
    constants [Z_95 "z_95"]
    sources [HINZE_95]
    checks [
        "d_95=100 um, sg=1" => "100 um", Limit("all droplets of one size");
        "d_95=100 um, sg=2" => "31.977884 um", Library("scipy 1.17.1, 100/stats.lognorm(s=ln 2).ppf(0.95)");
    ]
}

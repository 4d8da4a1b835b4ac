//! Formula: median of Rosin-Rammler droplets

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{HINZE_95, KARABELAS};
use stillrise_units::math::{ln, pow};
use stillrise_units::{Length, Ratio};

const SCIPY: &str = "scipy 1.17.1, stats.weibull_min.ppf at 0.5 over the same at 0.95";

formula! {
    /// Volume median of Rosin-Rammler droplets whose 95 % size is known: `(ln 2 / ln 20)^(1/n)` times it.
    ///
    /// The 95 % size is the largest stable droplet as Hinze defines it. After Karabelas, for oil in turbulent
    /// pipe flow, the exponent is 2.1 to 2.8 and mostly 2.5 (from memory): a median of 0.50 to 0.59 of that
    /// size. Log-normal droplets of the same 95 % size and a spread of 2 have a median of 0.32 of it
    /// (`sheared-median`), which is said to fit better behind pumps that shear hard.
    "rosin-rammler-median" "Median of Rosin-Rammler droplets"
    fn diameter(
        d_95: Length = "d_95" "size that 95 % of the volume is finer than" [UM, UM: 1.0 .. 5000.0 in 0.0 .. 1e6];
        n: Ratio = "n" "exponent" [ONE, ONE: 2.1 .. 2.8 in 0.1 .. 50.0];
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [d_95 UM, n ONE => UM] { d_95 * pow(ln(2.0) / ln(20.0), 1.0 / n) }
    sources [KARABELAS, HINZE_95]
    checks [
        "d_95=1 um, n=2.5" => "0.557 um", ByHand("(0.693147/2.995732)^0.4 = 0.231378^0.4");
        "d_95=100 um, n=2.1" => "49.807691 um", Library(SCIPY);
        "d_95=100 um, n=2.5" => "55.683815 um", Library(SCIPY);
        "d_95=100 um, n=2.8" => "59.288752 um", Library(SCIPY);
        "d_95=100 um, n=1" => "23.1378 um", Limit("exponential: ln 2 over ln 20");
        "d_95=0 um, n=2.5" => "0 um", Limit("no size");
    ]
}

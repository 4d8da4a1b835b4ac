//! Formula: volume median of a Sauter mean

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::HATCH_CHOATE;
use stillrise_units::math::{exp, ln};
use stillrise_units::{Length, Ratio};

const SCIPY: &str = "scipy 1.17.1, stats.lognorm.moment: third over second moment of the number distribution";

formula! {
    /// Volume median of log-normal droplets whose Sauter mean, volume over surface, is known.
    ///
    /// Work on dispersions commonly states the Sauter mean alone. The median is always above it, and by how much
    /// hangs on the spread, which is then an assumption: at 2 a quarter more, at 3 eight tenths.
    "sauter-median" "Volume median of a Sauter mean"
    fn diameter(
        sauter: Length = "d_32" "Sauter mean diameter" [UM, UM: 1.0 .. 2000.0 in 0.001 .. 1e6];
        sg: Ratio = "s_g" "geometric standard deviation" [ONE, ONE: 1.0 .. 3.0 in 1.0 .. 20.0];
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [sauter UM, sg ONE => UM] { sauter * exp(0.5 * ln(sg) * ln(sg)) }
    sources [HATCH_CHOATE]
    checks [
        "sauter=180 um, sg=1" => "180.0 um", Limit("all droplets of one size");
        "sauter=100 um, sg=2" => "127.2 um", ByHand("e^(0.5 x 0.693147^2) = e^0.240227 = 1.27154");
        "sauter=96.6168 um, sg=1.3" => "100.000 um", Library(SCIPY);
        "sauter=78.64497 um, sg=2" => "100.000 um", Library(SCIPY);
        "sauter=54.69081 um, sg=3" => "100.000 um", Library(SCIPY);
    ]
}

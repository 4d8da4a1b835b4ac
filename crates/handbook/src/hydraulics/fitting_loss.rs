//! Formula: loss of a fitting

use crate::formula;
use crate::page::Evidence::ByHand;
use crate::sources::DARCY;
use stillrise_units::{G, Length, Ratio, Velocity};

formula! {
    /// Head lost in an entry, a bend, a tee or an exit: so many velocity heads.
    ///
    /// With K = 1 it is the velocity head itself. Coefficients differ between authors by a quarter;
    /// see the list of fittings.
    "fitting-loss" "Loss of a fitting"
    fn loss(
        k: Ratio = "K" "loss coefficient" [ONE, ONE: 0.0 .. 5000.0 in 0.0 .. 1e6];
        v: Velocity = "V" "mean velocity" [FT_S, M_S: 0.0 .. 5.0 in 0.0 .. 100.0];
    ) -> Length = "h_K" "head lost" [IN, MM];
    typed { k * (v * v / (2.0 * G)) }
    sources [DARCY]
    checks [
        "k=2.1, v=3.332 ft/s" => "0.362 ft", ByHand("300 gpm in 6 in schedule 40: 2.1 x 0.1724");
        "k=1.5, v=0.083333 m/s" => "0.53 mm", ByHand("slot of 0.3 by 1.2 m at 0.03 m3/s");
    ]
}

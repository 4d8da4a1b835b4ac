//! Formula: overflow rate that hindered droplets meet

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::RICHARDSON_ZAKI;
use stillrise_units::math::pow;
use stillrise_units::{Ratio, Velocity};

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Overflow rate at which a tank would catch as much of droplets that rise alone.
    ///
    /// Removal hangs on rise over overflow rate, so a swarm that rises more slowly by `(1 - phi)^n` is the same as a
    /// tank loaded more heavily by it. Richardson and Zaki give 4.65 for rigid spheres of one size in creeping flow,
    /// from memory. Oily water of less than some grams per litre is not hindered. Where droplets are of many sizes, or
    /// come together on the way, the true hindrance is less, and a dense layer under the surface is none of this.
    "hindered-overflow-rate" "Overflow rate that hindered droplets meet"
    fn rate(
        v_0: Velocity = "v_0" "overflow rate: flow over plan area" [GPM_FT2, MM_S: 0.001 .. 20.0 in 1e-9 .. 1e12];
        share: Ratio = "phi" "share of the volume that is oil" [PERCENT, PERCENT: 0.0 .. 30.0 in 0.0 .. 90.0];
        n: Ratio = "n" "exponent of the hindrance" [ONE, ONE: 2.3 .. 5.0 in 0.0 .. 10.0];
    ) -> Velocity = "v_h" "overflow rate for droplets that rise alone" [GPM_FT2, MM_S];
    reduced [v_0 MM_S, share ONE, n ONE => MM_S] { v_0 / pow(1.0 - share, n) }
    sources [RICHARDSON_ZAKI]
    checks [
        "v_0=1 mm/s, share=5 %, n=4.65" => "1.269361 mm/s", ByHand(OWN);
        "v_0=1 mm/s, share=10 %, n=4.65" => "1.632196 mm/s", ByHand(OWN);
        "v_0=1 mm/s, share=20 %, n=4.65" => "2.822484 mm/s", ByHand(OWN);
        "v_0=1 mm/s, share=50 %, n=3" => "8.000000 mm/s", Limit("two to the third");
        "v_0=1 mm/s, share=0 %, n=4.65" => "1.000000 mm/s", Limit("droplets alone");
        "v_0=1 mm/s, share=30 %, n=0" => "1.000000 mm/s", Limit("no hindrance");
    ]
}

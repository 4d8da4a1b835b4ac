//! Formula: depth of a torispherical head

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::TANK_VOLUMES;
use stillrise_units::math::sqrt;
use stillrise_units::{Length, Ratio};

formula! {
    /// How far a head reaches beyond the end of the shell, whose crown is as round as the shell's diameter and joined by a
    /// knuckle: both arcs have one slope where they meet. Inside dimensions, without a straight flange.
    ///
    /// A knuckle of a tenth of the diameter is that of DIN 28011, 6 % the least of the ASME code for pressure vessels (both
    /// from memory). A 2:1 ellipsoidal head is a quarter of the diameter deep.
    "torispherical-depth" "Depth of a torispherical head"
    fn depth(
        d: Length = "D" "inside diameter, and radius of the crown" [FT, M: 0.3 .. 5.0 in 0.0 .. 1000.0];
        knuckle: Ratio = "k" "radius of the knuckle over the diameter" [PERCENT, PERCENT: 6.0 .. 20.0 in 0.1 .. 50.0];
    ) -> Length = "a" "depth of the head" [FT, M];
    reduced [d M, knuckle ONE => M] {
        d * (1.0 - sqrt((1.0 - knuckle) * (1.0 - knuckle) - (0.5 - knuckle) * (0.5 - knuckle)))
    }
    sources [TANK_VOLUMES]
    checks [
        "d=2.4384 m, knuckle=10 %" => "0.47249907 m", Library("fluids 1.3.1, geometry.TANK, depth of the head");
        "d=1.8288 m, knuckle=6 %" => "0.30968463 m", Library("fluids 1.3.1, geometry.TANK, depth of the head");
        "d=2 m, knuckle=50 %" => "1.00000 m", Limit("the knuckle is all: a hemisphere");
        "d=1 m, knuckle=0.1 %" => "0.134552 m", ByHand("1 - sqrt(0.999^2 - 0.499^2): nearly the cap of a sphere, 1 - sqrt(0.75) = 0.133975");
    ]
}

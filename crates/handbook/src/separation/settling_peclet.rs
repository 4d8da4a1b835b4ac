//! Formula: rise against vertical mixing

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{KinematicViscosity, Length, Ratio, Velocity};

formula! {
    /// Rise velocity times depth over eddy diffusivity: how far rise beats mixing.
    ///
    /// Large: the droplets part in layers. Small: they are spread over the depth.
    "settling-peclet" "Rise against vertical mixing"
    fn peclet(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.001 .. 100.0 in 0.0 .. 1e12];
        depth: Length = "H" "depth of water" [FT, M: 0.3 .. 5.0 in 0.0 .. 1000.0];
        eddy: KinematicViscosity = "epsilon_y" "eddy diffusivity" [MM2_S, MM2_S: 0.1 .. 10000.0 in 1e-9 .. 1e12];
    ) -> Ratio = "P" "rise over mixing" [ONE, ONE];
    reduced [v M_S, depth M, eddy M2_S => ONE] { v * depth / eddy }
    sources [DEFINITION]
    checks [
        "v=1 mm/s, depth=1.5 m, eddy=61.62 mm2/s" => "24.34", ByHand("1500 / 61.62; that is 243.4 v/V_H at 10 mm/s");
        "v=0 mm/s, depth=1 m, eddy=1 mm2/s" => "0", Limit("no rise");
    ]
}

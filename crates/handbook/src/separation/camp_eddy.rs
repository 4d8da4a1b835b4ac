//! Formula: eddy diffusivity of a tank, after Camp

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CAMP_EDDY;
use stillrise_units::math::sqrt;
use stillrise_units::{KinematicViscosity, Length, Ratio, Velocity};

/// Camp's constant. The depth mean of a log-law profile gives a sixth of Karman's 0.4, 0.067: 11 % less.
const CAMP: f64 = 0.075;

formula! {
    /// Eddy diffusivity over the depth of a tank from the friction of its walls alone.
    ///
    /// The constant is from memory; twenty per cent on it move the removal at the API factor by one point. An
    /// inlet jet, wind or a density current stirs more than the walls do, and none of them is in it.
    "camp-eddy" "Eddy diffusivity of a tank"
    fn diffusivity(
        u: Velocity = "V_H" "mean velocity along the tank" [FT_MIN, MM_S: 0.5 .. 50.0 in 0.0 .. 1e6];
        depth: Length = "H" "depth of water" [FT, M: 0.3 .. 5.0 in 0.0 .. 1000.0];
        f: Ratio = "f" "Darcy friction factor" [ONE, ONE: 0.015 .. 0.04 in 0.0 .. 10.0];
    ) -> KinematicViscosity = "epsilon_y" "eddy diffusivity" [MM2_S, MM2_S];
    reduced [u M_S, depth M, f ONE => M2_S] { CAMP * depth * u * sqrt(f / 8.0) }
    constants [CAMP "0.075"]
    sources [CAMP_EDDY]
    checks [
        "u=1 m/s, depth=1 m, f=0.024" => "4108 mm2/s", ByHand("0.075 x sqrt(0.003) = 0.075 x 0.0547723");
        "u=10 mm/s, depth=1.5 m, f=0.024" => "61.62 mm2/s", ByHand("0.0041079 x 0.015");
        "u=0 mm/s, depth=1 m, f=0.024" => "0 mm2/s", Limit("still water");
    ]
}

//! Formula: soil straight above a box and its base slab

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::max;
use stillrise_units::{Length, Volume};

formula! {
    /// The soil that stands on the roof of a box, and on the base slab where that reaches out beyond the walls, up to a
    /// level, between upright planes.
    ///
    /// Worked to grade it is all the soil; worked to the groundwater it is the part that weighs as submerged. The slab
    /// counts only where the box is tied to it. An open box has no roof: take its height up to grade.
    "soil-over-box" "Soil straight above a box and its base slab"
    fn volume(
        length: Length = "L" "outside length" [FT, M: 0.3 .. 30.0 in 0.0 .. 1000.0];
        width: Length = "W" "outside width" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        height: Length = "H" "outside height" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        reach: Length = "e" "how far the slab reaches beyond each wall" [FT, M: 0.0 .. 2.0 in 0.0 .. 100.0];
        level: Length = "z" "level up to which soil counts, above the top of the slab" [FT, M: -20.0 .. 20.0 in -10000.0 .. 10000.0];
    ) -> Volume = "V_soil" "volume of the soil" [FT3, M3];
    reduced [length M, width M, height M, reach M, level M => M3] {
        let on_roof = length * width * max(0.0, level - height);
        let ring = (length + 2.0 * reach) * (width + 2.0 * reach) - length * width;
        on_roof + ring * max(0.0, level)
    }
    sources [DEFINITION]
    checks [
        "length=10 ft, width=5 ft, height=6 ft, reach=1 ft, level=8 ft" => "372.0 ft3", ByHand("50 x 2 + (12 x 7 - 50) x 8");
        "length=10 ft, width=5 ft, height=6 ft, reach=1 ft, level=3 ft" => "102.0 ft3", ByHand("below the roof the ring alone: 34 x 3");
        "length=10 ft, width=5 ft, height=6 ft, reach=0 ft, level=8 ft" => "100.0000 ft3", Limit("no slab beyond the walls: the roof alone");
        "length=10 ft, width=5 ft, height=6 ft, reach=1 ft, level=-2 ft" => "0 ft3", Limit("a level below the slab");
    ]
}

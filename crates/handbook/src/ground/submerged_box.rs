//! Formula: volume of a box below a water level

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::math::{max, min};
use stillrise_units::{Length, Volume};

formula! {
    /// The volume that a buried or flooded box takes from the water around it.
    ///
    /// Outside dimensions, a base slab left out: its weight counts apart, submerged. Where the water stands above the rim
    /// of an open box, the box has filled and no longer floats as an empty one; for a closed box all of it counts.
    "submerged-box" "Volume of a box below a water level"
    fn volume(
        length: Length = "L" "outside length" [FT, M: 0.3 .. 30.0 in 0.0 .. 1000.0];
        width: Length = "W" "outside width" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        height: Length = "H" "outside height" [FT, M: 0.3 .. 10.0 in 0.0 .. 1000.0];
        level: Length = "z_w" "water level above the underside of the box" [FT, M: -20.0 .. 20.0 in -10000.0 .. 10000.0];
    ) -> Volume = "V_s" "submerged volume" [FT3, M3];
    reduced [length M, width M, height M, level M => M3] { length * width * max(0.0, min(height, level)) }
    sources [HYDROSTATICS]
    checks [
        "length=10 ft, width=5 ft, height=6 ft, level=2.5 ft" => "125.0 ft3", ByHand("10 x 5 x 2.5");
        "length=10 ft, width=5 ft, height=6 ft, level=9 ft" => "300.0000 ft3", Limit("water above the roof takes no more than 10 x 5 x 6");
        "length=10 ft, width=5 ft, height=6 ft, level=-3 ft" => "0 ft3", Limit("groundwater below the box does not reach it");
    ]
}

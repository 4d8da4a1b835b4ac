//! Formula: soil straight above a horizontal cylinder

use super::circle::area_below;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use core::f64::consts::PI;
use stillrise_units::math::max;
use stillrise_units::{Length, Volume};

formula! {
    /// The soil that stands on the upper half of a cylinder between upright planes at its widest line, up to a level.
    ///
    /// The straight prism: it leaves out what friction and leaning planes would add, so it is the smallest of the
    /// methods and the one to begin with. Worked to grade it is all the soil; worked to the groundwater it is the part
    /// that weighs as submerged. Deduct risers: 3.14 ft3 for each foot of a 24 in riser, 7.07 ft3 of a 36 in one.
    "soil-over-cylinder" "Soil straight above a horizontal cylinder"
    fn volume(
        d: Length = "D" "outside diameter" [FT, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
        length: Length = "L" "outside length of the shell" [FT, M: 0.3 .. 30.0 in 0.0 .. 1000.0];
        level: Length = "z" "level up to which soil counts, above the lowest line of the shell" [FT, M: -20.0 .. 20.0 in -10000.0 .. 10000.0];
    ) -> Volume = "V_soil" "volume of the soil" [FT3, M3];
    reduced [d M, length M, level M => M3] {
        let above = max(0.0, level - d / 2.0);
        let taken = area_below(d, max(level, d / 2.0)) - PI * d * d / 8.0;
        max(0.0, d * above - taken) * length
    }
    helpers [area_below(f64, f64) "A_s" "area of the circle below the level"]
    sources [DEFINITION]
    checks [
        "d=8 ft, length=13.33 ft, level=11 ft" => "411.46 ft3", ByHand("3 ft of cover: (8 x 7 - 8 pi) x 13.33");
        "d=8 ft, length=13.33 ft, level=8 ft" => "91.54 ft3", ByHand("to the top line: (8 x 4 - 8 pi) x 13.33");
        "d=8 ft, length=13.33 ft, level=6 ft" => "9.2539 ft3", ByHand("16 - (8 pi - 9.82696) = 0.69422 ft2, x 13.33");
        "d=2 m, length=3 m, level=1 m" => "0 m3", Limit("no soil above the widest line");
        "d=2 m, length=3 m, level=-4 m" => "0 m3", Limit("a level below the cylinder");
        "d=2 m, length=1 m, level=2 m" => "0.42920367 m3", Limit("rectangle less half a circle: 2 - pi/2");
    ]
}

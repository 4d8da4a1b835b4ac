//! Formula: volume in a horizontal cylinder with flat heads

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::TANK_VOLUMES;
use stillrise_units::math::{acos, sqrt};
use stillrise_units::{Length, Volume};

formula! {
    /// Circular segment times length.
    ///
    /// Needs a depth of at most the diameter; beyond that there is no answer. Each free surface of two
    /// liquids has its own depth, so a layer of oil is the difference of two volumes.
    "horizontal-cylinder-volume" "Volume in a horizontal cylinder with flat heads"
    fn volume(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        length: Length = "L" "inside length of the shell" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        h: Length = "h" "depth of the liquid" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume of the liquid" [GAL, M3];
    reduced [d M, length M, h M => M3] {
        let r = d / 2.0;
        (r * r * acos((r - h) / r) - (r - h) * sqrt(2.0 * r * h - h * h)) * length
    }
    sources [TANK_VOLUMES]
    checks [
        "d=96 in, length=231 in, h=22 in" => "1251.2018 gal",
            Published(&TANK_VOLUMES, "segment of 1251.2018 in2 at 22 in of 96 in; 231 in3 are a gallon");
        "d=96 in, length=240 in, h=12 in" => "542.56 gal", ByHand("independent script");
        "d=96 in, length=240 in, h=24 in" => "1470.21 gal", ByHand("independent script");
        "d=96 in, length=240 in, h=48 in" => "3760.12 gal", ByHand("independent script");
        "d=96 in, length=240 in, h=72 in" => "6050.02 gal", ByHand("independent script");
        "d=96 in, length=240 in, h=84 in" => "6977.68 gal", ByHand("independent script");
        "d=96 in, length=240 in, h=96 in" => "7520.24 gal", ByHand("independent script");
        "d=2 m, length=1 m, h=0 m" => "0.0000000 m3", Limit("empty");
        "d=2 m, length=1 m, h=2 m" => "3.14159265 m3", Limit("full: a cylinder");
        "d=2 m, length=1 m, h=2.1 m" => "outside: result", Limit("no level above the top");
    ]
}

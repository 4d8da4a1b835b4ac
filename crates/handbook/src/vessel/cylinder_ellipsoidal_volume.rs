//! Formula: volume in a horizontal cylinder with ellipsoidal heads

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::TANK_VOLUMES;
use core::f64::consts::PI;
use stillrise_units::math::{acos, sqrt};
use stillrise_units::{Length, Volume};

formula! {
    /// Circular segment times length, and both heads as one ellipsoid cut at the level.
    ///
    /// A head of a quarter of the diameter is the usual 2:1 head; half the diameter makes hemispheres.
    /// Needs a depth of at most the diameter.
    "cylinder-ellipsoidal-volume" "Volume in a horizontal cylinder with ellipsoidal heads"
    fn volume(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        length: Length = "L" "inside length of the shell" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        head: Length = "a" "depth of each head" [FT, M: 0.0 .. 2.0 in 0.0 .. 1000.0];
        h: Length = "h" "depth of the liquid" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume of the liquid" [GAL, M3];
    reduced [d M, length M, head M, h M => M3] {
        let r = d / 2.0;
        (r * r * acos((r - h) / r) - (r - h) * sqrt(2.0 * r * h - h * h)) * length + PI * head * h * h * (1.0 - h / (3.0 * r))
    }
    sources [TANK_VOLUMES]
    checks [
        "d=108 in, length=156 in, head=42 in, h=36 in" => "2380.9565 gal",
            Published(&TANK_VOLUMES, "horizontal, ellipsoidal heads: 2380.9565 gal");
        "d=96 in, length=240 in, head=24 in, h=24 in" => "1626.9 gal", ByHand("independent script; 2:1 heads");
        "d=96 in, length=240 in, head=24 in, h=48 in" => "4261.5 gal", ByHand("independent script; 2:1 heads");
        "d=96 in, length=240 in, head=24 in, h=72 in" => "6896.1 gal", ByHand("independent script; 2:1 heads");
        "d=96 in, length=240 in, head=24 in, h=96 in" => "8522.9 gal", ByHand("independent script; 2:1 heads");
        "d=2 m, length=0 m, head=1 m, h=2 m" => "4.18879020 m3", Limit("full, no shell: a sphere");
        "d=2 m, length=1 m, head=0 m, h=2 m" => "3.14159265 m3", Limit("flat heads, full: a cylinder");
    ]
}

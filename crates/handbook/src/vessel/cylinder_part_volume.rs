//! Formula: volume in a part of a horizontal cylinder, heads included

use super::shapes::HeadForm;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::TANK_VOLUMES;
use stillrise_units::math::{acos, sqrt};
use stillrise_units::{Length, Ratio, Volume};

formula! {
    /// Circular segment times the length of the shell that belongs to the part, and as many heads as close it: none for a
    /// compartment in the middle, one for the first and the last, two for the whole vessel.
    ///
    /// Needs a depth of at most the diameter. Each free surface of two liquids has its own depth, so that a layer of oil is
    /// the difference of two volumes.
    "cylinder-part-volume" "Volume in a part of a horizontal cylinder"
    fn volume(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        length: Length = "L" "length of the shell in the part" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        form: HeadForm = "head" "form of the heads";
        heads: Ratio = "n" "heads in the part" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 2.0];
        h: Length = "h" "depth of the liquid" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume of the liquid" [GAL, M3];
    reduced [d M, length M, heads ONE, h M => M3] {
        let r = d / 2.0;
        (r * r * acos((r - h) / r) - (r - h) * sqrt(2.0 * r * h - h * h)) * length + heads * head_volume(d, form, h)
    }
    helpers [head_volume(f64, HeadForm, f64) "V_h" "volume in one head below the level: segments of its circles, summed over its depth; none in a flat one, pi a h^2 (1 - h/(3 r)) / 2 in an ellipsoidal one of depth a"]
    sources [TANK_VOLUMES]
    checks [
        "d=96 in, length=240 in, form=flat, heads=2, h=24 in" => "1470.21 gal", ByHand("independent script; flat heads");
        "d=96 in, length=240 in, form=ellipsoidal, heads=2, h=24 in" => "1626.9 gal", ByHand("independent script; 2:1 heads");
        "d=96 in, length=240 in, form=ellipsoidal, heads=2, h=72 in" => "6896.1 gal", ByHand("independent script; 2:1 heads");
        "d=2 m, length=0 m, form=ellipsoidal, heads=1, h=2 m" => "1.04719755 m3", Limit("half an ellipsoid, full: pi D^3 / 24");
        "d=2 m, length=0 m, form=hemispherical, heads=1, h=2 m" => "2.09439510 m3", Limit("half a sphere, full: pi D^3 / 12");
        "d=2 m, length=0 m, form=hemispherical, heads=1, h=1 m" => "1.04719755 m3", Limit("half full");
        "d=2 m, length=1 m, form=torispherical, heads=0, h=2 m" => "3.14159265 m3", Limit("no head: a cylinder");
        "d=2 m, length=1 m, form=flat, heads=2, h=2.1 m" => "outside: result", Limit("no level above the top");
    ]
}

fn head_volume(d: f64, form: HeadForm, h: f64) -> f64 {
    let head = form.head();
    head.volume(d, (0.0, head.depth(d)), h - 0.5 * d)
}

//! Formula: surface of a liquid in a part of a horizontal cylinder, heads included

use super::shapes::HeadForm;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::sqrt;
use stillrise_units::{Area, Length, Ratio};

formula! {
    /// Chord at the level of the liquid times the length of the shell that belongs to the part, and as many heads as close
    /// it: the plan area that catches what rises.
    ///
    /// It is largest at half depth, and the same as far above as below it.
    "cylinder-part-surface" "Surface of a liquid in a part of a horizontal cylinder"
    fn area(
        d: Length = "D" "inside diameter" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
        length: Length = "L" "length of the shell in the part" [FT, M: 0.0 .. 30.0 in 0.0 .. 1000.0];
        form: HeadForm = "head" "form of the heads";
        heads: Ratio = "n" "heads in the part" [ONE, ONE: 0.0 .. 2.0 in 0.0 .. 2.0];
        h: Length = "h" "depth of the liquid" [FT, M: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Area = "A_s" "surface of the liquid" [FT2, M2];
    reduced [d M, length M, heads ONE, h M => M2] {
        2.0 * sqrt(h * (d - h)) * length + heads * head_surface(d, form, h)
    }
    helpers [head_surface(f64, HeadForm, f64) "A_h" "surface in one head at the level: chords of its circles, summed over its depth; none in a flat one, pi a h (D - h) / D in an ellipsoidal one of depth a"]
    sources [DEFINITION]
    checks [
        "d=10 ft, length=20 ft, form=flat, heads=2, h=1 ft" => "120.0000 ft2", ByHand("triangle of 3, 4 and 5 ft: a chord of 6 ft");
        "d=10 ft, length=20 ft, form=flat, heads=2, h=8 ft" => "160.0000 ft2", ByHand("triangle of 3, 4 and 5 ft: a chord of 8 ft");
        "d=2 m, length=3 m, form=hemispherical, heads=2, h=1 m" => "9.1415927 m2", Limit("half full: a rectangle and a circle");
        "d=2 m, length=0 m, form=ellipsoidal, heads=1, h=1 m" => "0.7853982 m2", Limit("half full: half an ellipse of axes 2 and 1 m");
        "d=2 m, length=3 m, form=torispherical, heads=0, h=1 m" => "6.0000 m2", Limit("half full, no head: the diameter");
        "d=2 m, length=3 m, form=flat, heads=1, h=2.1 m" => "outside: result", Limit("no level above the top");
    ]
}

fn head_surface(d: f64, form: HeadForm, h: f64) -> f64 {
    let head = form.head();
    head.surface(d, (0.0, head.depth(d)), h - 0.5 * d)
}

//! Formula: surface of an ellipsoidal head

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SPHEROID;
use core::f64::consts::PI;
use stillrise_units::math::{ln, sqrt};
use stillrise_units::{Area, Length};

/// Surface of half a spheroid over that of its round opening: 1 for a flat plate, 2 for half a sphere.
fn bulge(depth: f64, r: f64) -> f64 {
    let flatness = depth / r;
    let e = sqrt(1.0 - flatness * flatness);
    if flatness <= 0.0 {
        1.0
    } else if e <= 1e-4 {
        // Close to half a sphere the quotient below loses its digits; the series says 2 less a third of e squared.
        2.0 - 2.0 * e * e / 3.0
    } else {
        1.0 + flatness * flatness / (2.0 * e) * ln((1.0 + e) / (1.0 - e))
    }
}

formula! {
    /// Surface of a head that is half a flattened spheroid; flat where its depth is nothing. For its mass, and for what
    /// is painted, insulated or protected.
    ///
    /// A 2:1 head is a quarter of the diameter deep and has 1.38 times the surface of a flat one. Add the straight
    /// flange apart. A dished (torispherical) head of the same depth differs by a few per cent.
    "head-area" "Surface of an ellipsoidal head"
    fn area(
        d: Length = "D" "diameter of the shell" [FT, M: 0.3 .. 5.0 in 0.001 .. 1000.0];
        depth: Length = "a" "depth of the head, at most half the diameter" [FT, M: 0.0 .. 2.5 in 0.0 .. 500.0];
    ) -> Area = "A_h" "surface of one head" [FT2, M2];
    reduced [d M, depth M => M2] {
        let over_flat = bulge(depth, d / 2.0);
        over_flat * PI * d * d / 4.0
    }
    helpers [bulge(f64, f64) "B" "surface of half a spheroid over that of its opening, 1 + (1 - e2)/(2e) ln((1 + e)/(1 - e))"]
    sources [SPHEROID]
    checks [
        "d=2 m, depth=0.5 m" => "4.33594 m2", ByHand("e = 0.866025: 1 + 0.25 / 1.732051 x 2.633916 = 1.380173, x pi");
        "d=2 m, depth=0 m" => "3.14159265 m2", Limit("a flat plate");
        "d=2 m, depth=1 m" => "6.28318531 m2", Limit("half a sphere");
        "d=2 m, depth=0.99999999 m" => "6.283185 m2", Limit("very nearly half a sphere");
        "d=2 m, depth=1.1 m" => "outside: result", Limit("deeper than half a sphere is no flattened head");
    ]
}

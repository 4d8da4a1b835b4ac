//! Formula: volume that an impeller sweeps

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use core::f64::consts::PI;
use stillrise_units::{Length, Ratio, Volume};

formula! {
    /// Disc of the impeller's diameter and width.
    "impeller-volume" "Volume that an impeller sweeps"
    fn volume(
        d: Length = "D" "diameter of the impeller" [IN, MM: 50.0 .. 600.0 in 1.0 .. 10000.0];
        width: Ratio = "b" "width of the impeller over its diameter" [ONE, ONE: 0.05 .. 0.3 in 0.001 .. 2.0];
    ) -> Volume = "V" "volume swept" [GAL, L];
    typed { PI * d * d / 4.0 * (width * d) }
    sources [DEFINITION]
    checks [
        "d=200 mm, width=0.1" => "0.628319 L", ByHand("pi/4 x 4 dm2 x 0.2 dm");
        "d=1 m, width=1" => "785.398 L", Limit("a cylinder as wide as high");
    ]
}

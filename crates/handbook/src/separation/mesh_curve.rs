//! Formula: catch of a mesh by its measured curve

use super::catch::{Bends, Lane, Met};
use super::feed::Sizes;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::Series;
use crate::sources::COMMON_PRACTICE;
use core::borrow::Borrow;
use stillrise_units::math::ln;
use stillrise_units::{Length, Ratio};

formula! {
    /// Share of droplets of one size that a mesh catches, by the curve that was measured on it.
    ///
    /// Straight between the rows over the logarithm of size, the nearest row beyond its ends. It holds for
    /// the face velocity, the oil and the state of the mesh at which it was measured, and for no other.
    "mesh-curve" "Catch of a mesh by its measured curve"
    fn caught(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 500.0 in 0.0 .. 1e9];
    ) with MeshCurve "mesh-curve" (
        curve: Series = "d|E_m" "measured: size, and share that the mesh catches" {UM, UM; PERCENT, PERCENT};
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [d M => ONE] { on_curve(d, &curve) }
    helpers [on_curve(f64, Series) "E_m" "the curve at d, straight over ln d"]
    sources [COMMON_PRACTICE]
    checks [
        "d=20 um, curve=[10 um: 20 %; 40 um: 60 %]" => "40.00 %", ByHand("half way between 10 and 40 over the logarithm");
        "d=5 um, curve=[10 um: 20 %; 40 um: 60 %]" => "20.00 %", Limit("finer than the finest row");
        "d=100 um, curve=[10 um: 20 %; 40 um: 60 %]" => "60.00 %", Limit("coarser than the coarsest row");
    ]
}

/// The page's number, without its guards; nothing for an empty curve.
#[must_use]
pub fn on_curve(d: f64, curve: impl Borrow<Series>) -> f64 {
    let mut below: Option<(f64, f64)> = None;
    for (size, share) in &curve.borrow().0 {
        if d < *size {
            return match below {
                None => *share,
                Some((before, at)) => at + (share - at) * (ln(d / before) / ln(size / before)),
            };
        }
        below = Some((*size, *share));
    }
    below.map_or(0.0, |(_, share)| share)
}

impl Lane for MeshCurve {
    fn pass(&self, at: &Sizes, met: &mut Met) {
        for (factor, d) in met.factor.iter_mut().zip(at.d) {
            *factor *= 1.0 - on_curve(d, &self.curve);
        }
    }
    fn bends(&self) -> Bends {
        Bends { all: None, kink: None }
    }
}

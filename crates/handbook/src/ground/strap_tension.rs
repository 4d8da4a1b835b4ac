//! Formula: tension in a hold-down strap

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::math::cos;
use stillrise_units::{Angle, Force, Ratio};

formula! {
    /// Tension in one leg of a strap that runs over the unit to an anchor on either side.
    ///
    /// All straps are taken to carry alike; the factor is for those that do not (1.2 is recalled from installers'
    /// practice). Each strap has an anchor of its own on either side, lies on the place that the unit's drawing marks, and
    /// is drawn snug without denting the shell; on steel it needs an insulating pad. Turnbuckles carry one leg.
    "strap-tension" "Tension in a hold-down strap"
    fn tension(
        force: Force = "F_a" "force that anchors must add" [LBF, KN: 0.0 .. 1000.0 in 0.0 .. 1e9];
        straps: Ratio = "n" "number of straps" [ONE, ONE: 2.0 .. 12.0 in 1.0 .. 1000.0];
        lean: Angle = "theta" "lean of the legs from upright" [DEG, DEG: 0.0 .. 45.0 in 0.0 .. 89.0];
        factor: Ratio = "k" "factor for straps that carry more than their share" [ONE, ONE: 1.0 .. 1.5 in 1.0 .. 10.0];
    ) -> Force = "T" "tension in one leg" [LBF, KN];
    reduced [force NEWTON, straps ONE, lean RAD, factor ONE => NEWTON] { factor * force / (2.0 * straps * cos(lean)) }
    sources [STRENGTH]
    checks [
        "force=20000 lbf, straps=4, lean=0 deg, factor=1.2" => "3000 lbf", ByHand("1.2 x 20,000 / 8 legs");
        "force=20000 lbf, straps=2, lean=60 deg, factor=1" => "10000.00 lbf", Limit("a leg at 60 degrees carries twice its upright share of 5,000 lbf");
        "force=10 kN, straps=1, lean=0 deg, factor=1" => "5.000000 kN", Limit("one upright strap: half in each leg");
    ]
}

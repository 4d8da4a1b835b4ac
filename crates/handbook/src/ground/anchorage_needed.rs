//! Formula: anchorage needed against flotation

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::FEMA_259;
use stillrise_units::math::max;
use stillrise_units::{Force, Ratio};

formula! {
    /// The force that anchors must add so that the wanted factor is reached; none where it is reached already.
    ///
    /// The factor multiplies the uplift and all that already holds the unit down is taken off. Anchors count with what
    /// they weigh under water, or with what their maker or the geotechnical engineer vouches for.
    "anchorage-needed" "Anchorage needed against flotation"
    fn force(
        uplift: Force = "F_b" "what lifts the unit" [LBF, KN: 0.0 .. 10000.0 in 0.0 .. 1e9];
        resisting: Force = "R" "what holds it down without anchors" [LBF, KN: 0.0 .. 10000.0 in 0.0 .. 1e9];
        factor: Ratio = "F" "factor wanted" [ONE, ONE: 1.0 .. 2.0 in 0.0 .. 100.0];
    ) -> Force = "F_a" "force that anchors must add" [LBF, KN];
    reduced [uplift NEWTON, resisting NEWTON, factor ONE => NEWTON] { max(0.0, factor * uplift - resisting) }
    sources [FEMA_259]
    checks [
        "uplift=2090.4 lbf, resisting=670 lbf, factor=1.3" => "2048 lbf", Published(&FEMA_259, "tank of 250 gal and 670 lb, factor 1.3: 2,048 lb");
        "uplift=10 kN, resisting=12 kN, factor=1.2" => "0.000000 kN", Limit("the factor is just reached");
        "uplift=10 kN, resisting=20 kN, factor=1.2" => "0 kN", Limit("heavy enough without anchors");
    ]
}

//! Formula: safety against flotation

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::BUOYANCY_PERMIT;
use stillrise_units::{Force, Ratio};

formula! {
    /// What holds a unit down over what lifts it.
    ///
    /// Weights of what lies below the water count submerged, and then only the unit's own volume lifts. Mixing submerged
    /// and dry weights gives other factors for the same unit: a public discussion reaches 1.52, 1.86 and 3.0 for one
    /// tank. The factor wanted depends on who asks: see the table beside this page.
    "flotation-factor" "Safety against flotation"
    fn factor(
        resisting: Force = "R" "what holds it down: unit, soil, slab, anchors" [LBF, KN: 0.0 .. 10000.0 in 0.0 .. 1e9];
        uplift: Force = "F_b" "what lifts it" [LBF, KN: 0.1 .. 10000.0 in 0.0 .. 1e9];
    ) -> Ratio = "F" "factor against flotation" [ONE, ONE];
    typed { resisting / uplift }
    sources [BUOYANCY_PERMIT]
    checks [
        "resisting=30560 lbf, uplift=20596 lbf" => "1.48", Published(&BUOYANCY_PERMIT, "31 kips over 21 before they are rounded: 1.48 with deadmen");
        "resisting=29465 lbf, uplift=20596 lbf" => "1.431", ByHand("the same without deadmen of 1,095 lbf");
        "resisting=10 kN, uplift=10 kN" => "1.000000", Limit("it hovers");
        "resisting=10 kN, uplift=0 kN" => "outside: result", Limit("nothing lifts it");
    ]
}

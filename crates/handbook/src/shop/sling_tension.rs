//! Formula: tension in a leg of a lifting sling

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::SLING_GUIDE;
use stillrise_units::math::sin;
use stillrise_units::{Angle, Force, G, Mass, Ratio};

const GRAVITY: f64 = G.value;

formula! {
    /// Load of a lug and of the leg of the sling on it, from the mass lifted, the legs that carry and their angle.
    ///
    /// Count two legs of a sling of four: a rigid unit hangs on two (common practice). Lugs are designed for at least twice
    /// the empty mass (from memory, ASME BTH-1): put it in as the factor. Below 45° from the level use a spreader; the
    /// level part of the pull also squeezes the walls together. Lift empty, dry, without sludge.
    "sling-tension" "Tension in a leg of a lifting sling"
    fn tension(
        mass: Mass = "m" "mass lifted" [LB, KG: 0.0 .. 50000.0 in 0.0 .. 1e8];
        legs: Ratio = "n" "legs that carry" [ONE, ONE: 1.0 .. 4.0 in 1.0 .. 100.0];
        angle: Angle = "theta" "angle of the legs from the level" [DEG, DEG: 45.0 .. 90.0 in 5.0 .. 90.0];
        factor: Ratio = "k" "factor on the mass" [ONE, ONE: 1.0 .. 3.0 in 1.0 .. 20.0];
    ) -> Force = "T" "tension in one leg" [LBF, KN];
    reduced [mass KG, legs ONE, angle RAD, factor ONE => NEWTON] { factor * mass * GRAVITY / (legs * sin(angle)) }
    constants [GRAVITY "g"]
    sources [SLING_GUIDE]
    checks [
        "mass=1000 lb, legs=2, angle=60 deg, factor=1" => "577 lbf", Published(&SLING_GUIDE, "1,000 lb on two legs at 60°: 577 lbs");
        "mass=1000 lb, legs=2, angle=45 deg, factor=1" => "707 lbf", Published(&SLING_GUIDE, "1,000 lb on two legs at 45°: 707 lbs");
        "mass=1000 lb, legs=2, angle=30 deg, factor=1" => "1000.00 lbf", Limit("at 30° each leg carries all of it");
        "mass=1000 lb, legs=2, angle=90 deg, factor=2" => "1000.00 lbf", Limit("upright legs, twice the mass");
    ]
}

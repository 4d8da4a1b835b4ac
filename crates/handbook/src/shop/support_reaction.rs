//! Formula: load on one of two supports

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::{Force, G, Length, Mass};

formula! {
    /// What one of two supports carries: the weight times the distance of its centre from the other support over the
    /// distance of the two.
    ///
    /// For saddles, feet, and pairs of lifting lugs. Where the centre lies outside the two, one of them would lift off:
    /// the load is then negative, or more than the weight.
    "support-reaction" "Load on one of two supports"
    fn force(
        mass: Mass = "m" "mass carried by both" [LB, KG: 0.0 .. 500000.0 in 0.0 .. 1e9];
        arm: Length = "x" "distance of the centre of gravity from the other support" [FT, M: 0.0 .. 20.0 in -1000.0 .. 1000.0];
        span: Length = "l" "distance of the two supports" [FT, M: 0.3 .. 20.0 in 0.001 .. 1000.0];
    ) -> Force = "Q" "load on this support" [LBF, KN];
    typed { mass * G * arm / span }
    sources [STRENGTH]
    checks [
        "mass=20000 lb, arm=6 ft, span=10 ft" => "12000 lbf", ByHand("20,000 x 0.6");
        "mass=20000 lb, arm=5 ft, span=10 ft" => "10000.00 lbf", Limit("midway: half of it");
        "mass=20000 lb, arm=0 ft, span=10 ft" => "0 lbf", Limit("all of it stands on the other");
    ]
}

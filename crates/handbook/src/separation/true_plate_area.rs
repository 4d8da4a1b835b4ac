//! Formula: plate area from its projection

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::cos;
use stillrise_units::{Angle, Area};

formula! {
    /// Area of flat plates, clear at both ends, whose projection on the level is given.
    ///
    /// Corrugated plates have more skin and no more projection: count the projection.
    "true-plate-area" "Plate area from its projection"
    fn area(
        projected: Area = "A_p" "projected plate area" [FT2, M2: 0.1 .. 10000.0 in 0.0 .. 1e6];
        theta: Angle = "theta" "angle of the plates to the horizontal" [DEG, DEG: 0.0 .. 60.0 in 0.0 .. 85.0];
    ) -> Area = "A" "plate area" [FT2, M2];
    reduced [projected M2, theta RAD => M2] { projected / cos(theta) }
    sources [DEFINITION]
    checks [
        "projected=454.00576 ft2, theta=45 deg" => "642.06 ft2", ByHand("454.00576 x sqrt 2");
        "projected=454.00576 ft2, theta=55 deg" => "791.53 ft2", ByHand("454.00576 / 0.573576");
        "projected=454.00576 ft2, theta=60 deg" => "908.01 ft2", ByHand("454.00576 x 2");
        "projected=10 m2, theta=0 deg" => "10 m2", Limit("level plates are their own projection");
        "projected=10 m2, theta=60 deg" => "20 m2", Limit("the cosine of 60 degrees is one half");
    ]
}

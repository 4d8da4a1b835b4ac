//! Formula: whole plates in a pack

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::{cos, floor};
use stillrise_units::{Angle, Length, Ratio};

/// Part of a pitch that rounding may take away.
const FORGIVEN: f64 = 1e-9;

formula! {
    /// Plates inclined by theta and stacked at the pitch of gap and plate, measured square to the plates;
    /// as many as fit whole into the height of the pack.
    ///
    /// Plates cut short by the corners of the pack are not counted. A billionth of a pitch is forgiven so
    /// that a pack of exactly 24 pitches has 24 plates whatever the unit it was written in.
    "plate-count" "Whole plates in a pack"
    fn count(
        height: Length = "H" "height of the pack" [IN, MM: 100.0 .. 3000.0 in 0.0 .. 50000.0];
        gap: Length = "b" "clear gap between plates" [IN, MM: 6.0 .. 60.0 in 0.0 .. 1000.0];
        plate: Length = "t" "thickness of a plate" [IN, MM: 0.3 .. 10.0 in 0.0 .. 100.0];
        theta: Angle = "theta" "inclination of the plates to the horizontal" [DEG, DEG: 0.0 .. 60.0 in 0.0 .. 90.0];
    ) -> Ratio = "N" "number of plates" [ONE, ONE];
    reduced [height M, gap M, plate M, theta RAD => ONE] { floor(height * cos(theta) / (gap + plate) + FORGIVEN) }
    constants [FORGIVEN "delta"]
    sources [DEFINITION]
    checks [
        "height=24 in, gap=0.75 in, plate=0.25 in, theta=0 deg" => "24", Limit("level plates: height over pitch");
        "height=24 in, gap=0.75 in, plate=0.25 in, theta=60 deg" => "12",
            Limit("at 60 degrees each takes twice its pitch of height");
        "height=24 in, gap=0.75 in, plate=0.06 in, theta=45 deg" => "20", ByHand("24 x 0.7071 / 0.81 = 20.95");
        "height=600 mm, gap=19 mm, plate=1 mm, theta=90 deg" => "0", Limit("upright plates do not stack");
        "height=24 in, gap=0 in, plate=0 in, theta=45 deg" => "outside: result",
            Limit("plates without thickness or gap cannot be counted");
    ]
}

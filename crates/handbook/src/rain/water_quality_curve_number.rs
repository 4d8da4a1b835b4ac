//! Formula: curve number of the water-quality rain

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SCHUELER;
use stillrise_units::math::sqrt;
use stillrise_units::{Length, Ratio};

formula! {
    /// The curve number that gives a small rain the runoff its volumetric coefficient says.
    ///
    /// The ordinary number understates the runoff of rains below 2 in; this one turns `curve-number-runoff` round.
    "water-quality-curve-number" "Curve number of the water-quality rain"
    fn number(
        p: Length = "P" "depth of the water-quality rain" [IN, MM: 5.0 .. 60.0 in 0.1 .. 5000.0];
        q_a: Length = "Q_a" "depth of its runoff" [IN, MM: 0.0 .. 60.0 in 0.0 .. 5000.0];
    ) -> Ratio = "CN" "curve number" [ONE, ONE];
    reduced [p IN, q_a IN => ONE] {
        1000.0 / (10.0 + 5.0 * p + 10.0 * q_a - 10.0 * sqrt(q_a * q_a + 1.25 * q_a * p))
    }
    sources [SCHUELER]
    checks [
        "p=1.0 in, q_a=0.95 in" => "99.57", ByHand("1000 / (10 + 5 + 9.5 - 10 (0.9025 + 1.1875)^0.5)");
        "p=1.0 in, q_a=0.86 in" => "98.72", ByHand("1000 / (10 + 5 + 8.6 - 10 (0.7396 + 1.075)^0.5)");
        "p=1.2 in, q_a=1.14 in" => "99.48", ByHand("1000 / (10 + 6 + 11.4 - 10 (1.2996 + 1.71)^0.5)");
        "p=1 in, q_a=1 in" => "100.0000", Limit("all of it runs off: ground that holds nothing");
    ]
}

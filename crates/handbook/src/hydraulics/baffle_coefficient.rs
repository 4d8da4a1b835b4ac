//! Formula: loss coefficient of a perforated baffle

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::IDELCHIK_PLATE;
use stillrise_units::Ratio;
use stillrise_units::math::sqrt;

/// Contraction behind a sharp edge, one over root two as the source rounds it.
const CONTRACTION: f64 = 0.707;

formula! {
    /// Loss of a thin sharp-edged perforated plate across the whole section, in velocity heads of
    /// the flow *approaching* it: `fitting-loss` with the velocity of the open tank.
    ///
    /// The form is recalled. Blevins' measured plates, as a library carries them, lie within 9 % for
    /// open shares of 30 to 60 %, but 27 % above it at 80 %. A coefficient near 2.8 is
    /// said to level a flow best (Taylor and Batchelor, recalled); far more makes jets that join again.
    "baffle-coefficient" "Loss coefficient of a perforated baffle"
    fn coefficient(
        open: Ratio = "f" "open share of the plate" [PERCENT, PERCENT: 3.0 .. 60.0 in 0.1 .. 100.0];
    ) -> Ratio = "zeta" "loss coefficient on the approach velocity" [ONE, ONE];
    reduced [open ONE => ONE] {
        let s = (CONTRACTION * sqrt(1.0 - open) + 1.0 - open) / open;
        s * s
    }
    constants [CONTRACTION "c"]
    sources [IDELCHIK_PLATE]
    checks [
        "open=0.1" => "247", ByHand("(0.707 x 0.94868 + 0.9)^2 / 0.01");
        "open=0.2" => "51", ByHand("(0.707 x 0.89443 + 0.8)^2 / 0.04");
        "open=0.3" => "18.5", ByHand("(0.707 x 0.83666 + 0.7)^2 / 0.09");
        "open=0.4" => "8.2", ByHand("(0.707 x 0.77460 + 0.6)^2 / 0.16");
        "open=1" => "0.000000", Limit("no plate, no loss");
    ]
}

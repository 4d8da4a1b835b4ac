//! Formula: current that a magnesium anode gives

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::UFC_3_570_02A;
use stillrise_units::Ratio;

/// Milliamperes times ohm centimetres of a standard 17 lb anode on well-coated steel.
const WELL_COATED: f64 = 120_000.0;

formula! {
    /// Current of one packaged magnesium anode on well-coated steel held at -0.85 V, by the resistivity of the soil.
    ///
    /// The factor of the size is 1.00 for 17 lb, 0.53 for 3 lb, 0.71 for 9 lb, 1.06 for 32 lb: a large anode lasts longer,
    /// it hardly gives more. In dry or sandy soil one anode may not be enough for a current that its mass would last for.
    "anode-current" "Current that a magnesium anode gives"
    fn current(
        soil: Ratio = "rho" "resistivity of the soil in ohm centimetres" [ONE, ONE: 500.0 .. 20000.0 in 1.0 .. 1e7];
        size: Ratio = "f" "factor of the anode's size" [ONE, ONE: 0.5 .. 1.1 in 0.1 .. 10.0];
    ) -> Ratio = "I" "current in amperes" [ONE, ONE];
    reduced [soil ONE, size ONE => ONE] { WELL_COATED * size / soil / 1000.0 }
    constants [WELL_COATED "C"]
    sources [UFC_3_570_02A]
    checks [
        "soil=6900, size=1" => "0.01739", ByHand("120,000 / 6,900 = 17.39 mA");
        "soil=4500, size=1" => "0.02667", ByHand("120,000 / 4,500 = 26.67 mA");
        "soil=120000, size=1" => "0.001000000", Limit("one milliampere by definition of the constant");
    ]
}

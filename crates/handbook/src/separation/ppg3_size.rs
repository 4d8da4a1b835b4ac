//! Formula: nominal size by PPG3, for comparison

use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::PPG3;
use crate::{choice, formula};
use stillrise_units::{Area, Flow};

choice! {
    /// How much of the rain a PPG3 separator treats.
    Ppg3Kind {
        /// all of a rain of 65 mm/h
        Full "full",
        /// a tenth of it; the rest goes round
        Bypass "bypass",
    }
}

formula! {
    /// Nominal size from paved area by the withdrawn British guideline; a comparison only.
    ///
    /// Silt store 100 litres per unit of size, oil store 10 (full retention) or 15 (bypass).
    "ppg3-size" "Nominal size by PPG3, for comparison"
    fn flow(
        a: Area = "A" "paved area" [ACRES, M2: 10.0 .. 100000.0 in 0.0 .. 1e8];
        kind: Ppg3Kind = "kind" "full retention or bypass";
    ) -> Flow = "NS" "nominal size, as a flow" [GPM, L_S];
    reduced [a M2 => L_S] { if kind == Ppg3Kind::Full { 0.018 * a } else { 0.0018 * a } }
    sources [PPG3]
    checks [
        "a=1000 m2, kind=full" => "18 L/s", ByHand("0.018 x 1000");
        "a=1000 m2, kind=bypass" => "1.8 L/s", ByHand("0.0018 x 1000");
        "a=3600 m2, kind=full" => "65 L/s" within 4e-3 "65 mm/h is 64.8 rounded",
            Published(&PPG3, "full retention treats 65 mm/h, as a trade text quotes it");
        "a=3600 m2, kind=bypass" => "6.5 L/s", Published(&PPG3, "a bypass unit treats 6.5 mm/h, as a trade text quotes it");
        "a=0 m2, kind=full" => "0 L/s", Limit("no area, no rain");
    ]
}

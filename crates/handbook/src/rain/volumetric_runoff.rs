//! Formula: volumetric runoff coefficient

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{NH_1504, SCHUELER};
use stillrise_units::Ratio;

formula! {
    /// Share of a small rain that runs off, from the share of the area that is sealed.
    ///
    /// A regional choice: one county prints 0.015 + 0.0092 I instead.
    "volumetric-runoff" "Volumetric runoff coefficient"
    fn coefficient(
        i: Ratio = "I" "share of the area that is sealed, in per cent" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Ratio = "R_v" "volumetric runoff coefficient" [ONE, ONE];
    reduced [i PERCENT => ONE] { 0.05 + 0.009 * i }
    sources [NH_1504, SCHUELER]
    checks [
        "i=0 %" => "0.05", Published(&NH_1504, "the constant 0.05 of the rule");
        "i=90 %" => "0.86", ByHand("0.05 + 0.81");
        "i=100 %" => "0.95", Limit("all of it sealed: the two constants together");
    ]
}

//! Formula: open share of a pack

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Length, Ratio};

formula! {
    /// The part of a pack's room that is liquid: gap over pitch.
    ///
    /// Times the volume of the pack it gives the water in it.
    "pack-void" "Open share of a pack"
    fn share(
        gap: Length = "b" "clear gap between plates" [IN, MM: 6.0 .. 60.0 in 0.0 .. 1000.0];
        plate: Length = "t" "thickness of a plate" [IN, MM: 0.3 .. 10.0 in 0.0 .. 100.0];
    ) -> Ratio = "epsilon" "open share" [ONE, ONE];
    typed { gap / (gap + plate) }
    sources [DEFINITION]
    checks [
        "gap=0.75 in, plate=0.25 in" => "0.7500", ByHand("0.75 / 1.00");
        "gap=20 mm, plate=0 mm" => "1.00000000", Limit("plates without thickness take nothing");
    ]
}

//! Formula: open cross-section of a pack

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length};

formula! {
    /// What the plates leave of the width and height of a pack for the flow.
    ///
    /// Edge frames, spacers and sealed strips take more and are not counted.
    "pack-open-area" "Open cross-section of a pack"
    fn area(
        width: Length = "W" "width of the pack" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        height: Length = "H" "height of the pack" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
        gap: Length = "b" "clear gap between plates" [IN, MM: 6.0 .. 60.0 in 0.0 .. 1000.0];
        plate: Length = "t" "thickness of a plate" [IN, MM: 0.3 .. 10.0 in 0.0 .. 100.0];
    ) -> Area = "A_f" "open cross-section" [FT2, M2];
    typed { width * height * gap / (gap + plate) }
    sources [DEFINITION]
    checks [
        "width=4 ft, height=2 ft, gap=0.75 in, plate=0.25 in" => "6.0000 ft2", ByHand("8 x 0.75");
        "width=2 m, height=1 m, gap=20 mm, plate=0 mm" => "2.00000000 m2", Limit("plates without thickness take nothing");
    ]
}

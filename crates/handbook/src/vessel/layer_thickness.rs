//! Formula: thickness of a layer

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length, Volume};

formula! {
    /// Volume over area, for a layer between upright walls.
    ///
    /// The reverse of `layer-volume`, with the same limits.
    "layer-thickness" "Thickness of a layer"
    fn thickness(
        volume: Volume = "V" "volume of the layer" [GAL, M3: 0.0 .. 2000.0 in 0.0 .. 1e6];
        area: Area = "A" "area that holds the layer" [FT2, M2: 0.0 .. 2000.0 in 0.0 .. 1e6];
    ) -> Length = "h" "thickness of the layer" [IN, MM];
    typed { volume / area }
    sources [DEFINITION]
    checks [
        "volume=281 gal, area=40 ft2" => "11.27 in", ByHand("281 / 24.94");
        "volume=1 ft3, area=1 ft2" => "1.0000000 ft", Limit("definition of the cubic foot");
        "volume=1 ft3, area=0 ft2" => "outside: result", Limit("nothing holds the layer");
    ]
}

//! Formula: volume of a layer

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length, Volume};

formula! {
    /// Area times thickness, for a layer between upright walls.
    ///
    /// The area is where the layer is truly held: without manway tubes and baffle boxes. In a horizontal
    /// cylinder take the difference of two levels of `horizontal-cylinder-volume`.
    "layer-volume" "Volume of a layer"
    fn volume(
        area: Area = "A" "area that holds the layer" [FT2, M2: 0.0 .. 2000.0 in 0.0 .. 1e6];
        h: Length = "h" "thickness of the layer" [IN, MM: 0.0 .. 3000.0 in 0.0 .. 50000.0];
    ) -> Volume = "V" "volume of the layer" [GAL, M3];
    typed { area * h }
    sources [DEFINITION]
    checks [
        "area=40 ft2, h=4.70 in" => "117 gal", ByHand("24.94 gal for each inch of 40 ft2");
        "area=40 ft2, h=11.27 in" => "281 gal", ByHand("24.94 gal for each inch of 40 ft2");
        "area=40 ft2, h=16.91 in" => "422 gal", ByHand("24.94 gal for each inch of 40 ft2");
        "area=1 ft2, h=1 ft" => "1.0000000 ft3", Limit("definition of the cubic foot");
    ]
}

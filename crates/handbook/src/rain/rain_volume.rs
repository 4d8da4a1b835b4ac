//! Formula: volume of rain on an area

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, IEEE_980};
use stillrise_units::{Area, Length, Ratio, Volume};

formula! {
    /// Volume of water that a depth of rain leaves on or sends off an area.
    ///
    /// In an open containment all of it stays: the coefficient is 1.
    "rain-volume" "Volume of rain on an area"
    fn volume(
        c: Ratio = "C" "share of the rain that runs off or is kept" [ONE, ONE: 0.0 .. 1.0 in 0.0 .. 1.0];
        depth: Length = "D" "depth of rain" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 5000.0];
        a: Area = "A" "area" [FT2, M2: 0.0 .. 1e6 in 0.0 .. 1e9];
    ) -> Volume = "V" "volume of water" [GAL, M3];
    typed { c * depth * a }
    sources [DEFINITION, IEEE_980]
    checks [
        "c=1, depth=1 in, a=1000 ft2" => "623.4 gal", Limit("an inch on a thousand square feet, by definition of the units");
        "c=1, depth=1 mm, a=1 m2" => "1.0000 L", Limit("a millimetre on a square metre is a litre");
        "c=1, depth=5.0 in, a=2400 ft2" => "7480.5 gal", ByHand("dike of 60 by 40 ft: 1000 ft3 x 7.48052");
        "c=1, depth=4 in, a=195 m2" => "19.81 m3", ByHand("pit of 13 by 15 m: 0.1016 x 195");
        "c=0.95, depth=1.0 in, a=2 acre" => "6897 ft3", ByHand("0.95 x 2 x 43560 / 12");
        "c=0.95, depth=1.0 in, a=2 acre" => "51593 gal", ByHand("6897 ft3 x 7.48052");
    ]
}

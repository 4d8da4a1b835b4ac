//! Formula: depth of a containment for a volume

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, IEEE_980};
use stillrise_units::{Area, Length, Ratio, Volume};

formula! {
    /// Depth at which a containment of given clear area takes a volume, filled with stone as it is now.
    ///
    /// The share that is open is the mean over the depth: 100 % without stone, the voids of the stone where
    /// it reaches to the overflow. Upright walls.
    "containment-depth" "Depth of a containment for a volume"
    fn depth(
        volume: Volume = "V" "volume to hold" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        clear: Area = "A_c" "area less foundations" [FT2, M2: 0.0 .. 1e5 in 0.0 .. 1e9];
        share: Ratio = "e_m" "share of its depth that is open, on average" [PERCENT, PERCENT: 25.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Length = "d" "usable depth" [IN, MM];
    typed { volume / (clear * share) }
    sources [DEFINITION, IEEE_980]
    checks [
        "volume=60 m3, clear=177 m2, share=35 %" => "0.9685 m",
            ByHand("IEEE 980, Annex B: 60 m3 in 195 - 18 m2 at 35 %: 60 / 61.95");
        "volume=79.81 m3, clear=177 m2, share=35 %" => "1.288 m", ByHand("the same with 4 in of rain on 195 m2: 79.81 / 61.95");
        "volume=3100 gal, clear=600 ft2, share=100 %" => "8.29 in", ByHand("a tanker's compartment on a pad of 40 by 15 ft");
        "volume=1 m3, clear=1 m2, share=100 %" => "1.0000000 m", Limit("definition of the cubic metre");
        "volume=60 m3, clear=0 m2, share=35 %" => "outside: result", Limit("nothing holds it");
    ]
}

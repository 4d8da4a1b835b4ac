//! Formula: what a containment holds

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, IEEE_980};
use crate::units::math::{max, min};
use stillrise_units::{Area, Length, Ratio, Volume};

formula! {
    /// Volume that a pit, bund or basin takes up to its overflow: clear area times depth, only the voids of
    /// a stone fill counted, less what else stands in it.
    ///
    /// Clear area is the area in plan less foundations. Upright walls; the depth is usable depth, to the
    /// lowest point of the rim or to the overflow. Voids of stone lie between 25 and 50 %; 100 % where there is none. Water that stands in it already takes its part.
    "containment-void" "What a containment holds"
    fn volume(
        a: Area = "A" "area in plan" [FT2, M2: 0.0 .. 1e5 in 0.0 .. 1e9];
        a_taken: Area = "A_f" "area taken by foundations and equipment" [FT2, M2: 0.0 .. 1e5 in 0.0 .. 1e9];
        depth: Length = "d" "usable depth" [IN, MM: 0.0 .. 5000.0 in 0.0 .. 1e5];
        stone: Length = "d_s" "depth of the stone fill, from the floor" [IN, MM: 0.0 .. 5000.0 in 0.0 .. 1e5];
        voids: Ratio = "e" "voids of the stone fill" [PERCENT, PERCENT: 25.0 .. 100.0 in 0.0 .. 100.0];
        taken: Volume = "V_f" "volume of what else stands in it" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
    ) -> Volume = "V" "volume that it takes" [GAL, M3];
    reduced [a M2, a_taken M2, depth M, stone M, voids ONE, taken M3 => M3] {
        let clear = max(a - a_taken, 0.0);
        let fill = min(stone, depth);
        max(clear * (depth - fill + voids * fill) - taken, 0.0)
    }
    sources [DEFINITION, IEEE_980]
    checks [
        "a=195 m2, a_taken=18 m2, depth=0.9685 m, stone=0.9685 m, voids=35 %, taken=0 m3" => "60.0 m3",
            ByHand("IEEE 980, Annex B: 60 m3 of oil, pit of 13 by 15 m less 18 m2, voids 35 %; the depth for it by hand");
        "a=2400 ft2, a_taken=0 ft2, depth=3 ft, stone=0 ft, voids=35 %, taken=0 gal" => "53860 gal", ByHand("dike of 60 by 40 by 3 ft: 7200 ft3 x 7.48052");
        "a=2400 ft2, a_taken=0 ft2, depth=3 ft, stone=0 ft, voids=35 %, taken=1427.7 gal" => "52432 gal",
            ByHand("the same less another tank of 9 ft across up to the rim: 53,859.7 - 1,427.7");
        "a=10 m2, a_taken=0 m2, depth=1 m, stone=0.4 m, voids=100 %, taken=0 m3" => "10.000000 m3", Limit("a fill of nothing but voids is no fill");
        "a=10 m2, a_taken=0 m2, depth=1 m, stone=2 m, voids=40 %, taken=0 m3" => "4.000000 m3", Limit("stone above the overflow holds nothing");
        "a=10 m2, a_taken=0 m2, depth=1 m, stone=0 m, voids=40 %, taken=11 m3" => "0 m3", Limit("full of equipment");
    ]
}

//! Formula: water-quality volume

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{NH_1504, SCHUELER};
use stillrise_units::{Area, Length, Ratio, Volume};

formula! {
    /// Volume of runoff of the small rain that a manual wants treated.
    ///
    /// Its depth is a regional choice, mostly 0.8 to 1.2 in, the rain that nine events in ten do not exceed.
    "water-quality-volume" "Water-quality volume"
    fn volume(
        p: Length = "P" "depth of the water-quality rain" [IN, MM: 5.0 .. 60.0 in 0.0 .. 5000.0];
        r_v: Ratio = "R_v" "volumetric runoff coefficient" [ONE, ONE: 0.05 .. 0.95 in 0.0 .. 1.0];
        a: Area = "A" "area drained" [ACRES, M2: 0.0 .. 809371.0 in 0.0 .. 1e9];
    ) -> Volume = "WQ_v" "water-quality volume" [FT3, M3];
    typed { p * r_v * a }
    sources [NH_1504, SCHUELER]
    checks [
        "p=1.0 in, r_v=0.95, a=2 acre" => "6897 ft3", ByHand("0.95 x 2 x 43560 / 12");
        "p=1.0 in, r_v=0.95, a=2 acre" => "51593 gal", ByHand("6897 ft3 x 7.48052");
        "p=1 mm, r_v=1, a=1 m2" => "1.0000 L", Limit("a millimetre on a square metre is a litre");
    ]
}

//! Formula: volume of a frustum

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Area, Length, Volume};

formula! {
    /// Pyramid or cone with its tip cut off: both ends parallel and of the same shape.
    ///
    /// A hopper whose ends are not of the same proportions needs `hopper-volume`.
    "frustum-volume" "Volume of a frustum"
    fn volume(
        top: Area = "A_1" "area of the upper end" [FT2, M2: 0.0 .. 500.0 in 0.0 .. 1e6];
        bottom: Area = "A_2" "area of the lower end" [FT2, M2: 0.0 .. 500.0 in 0.0 .. 1e6];
        depth: Length = "h" "depth between the ends" [FT, M: 0.0 .. 10.0 in 0.0 .. 1000.0];
    ) -> Volume = "V" "volume" [GAL, M3];
    typed { depth / 3.0 * (top + bottom + (top * bottom).sqrt()) }
    sources [DEFINITION]
    checks [
        "top=25 ft2, bottom=1 ft2, depth=2 ft" => "20.67 ft3", ByHand("2/3 x (25 + 1 + 5)");
        "top=2.207218 m2, bottom=0 m2, depth=0.8382 m" => "0.616697 m3",
            Library("fluids 1.3.1: conical bottom filled to 0.8382 m, surface 2.207218 m2");
        "top=4 m2, bottom=4 m2, depth=2 m" => "8.0000000 m3", Limit("equal ends: a prism");
        "top=3 m2, bottom=0 m2, depth=2 m" => "2.0000000 m3", Limit("a tip: a third of the prism");
    ]
}

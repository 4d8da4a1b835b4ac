//! Formula: area of a circle

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::DEFINITION;
use core::f64::consts::PI;
use stillrise_units::{Area, Length};

formula! {
    /// Cross-section of a full round pipe from its inside diameter.
    "circle-area" "Area of a circle"
    fn area(
        d: Length = "D" "diameter" [IN, MM: 5.0 .. 4000.0 in 0.0 .. 50000.0];
    ) -> Area = "A" "area" [FT2, M2];
    typed { PI * d * d / 4.0 }
    sources [DEFINITION]
    checks [
        "d=1 m" => "0.78539816 m2", Library("fluids 1.3.1, geometry.A_partial_circle of a full circle");
        "d=2 m" => "3.141592654 m2", Limit("radius one");
        "d=6.065 in" => "28.890 in2", ByHand("pi/4 x 36.784, 6 in schedule 40");
    ]
}

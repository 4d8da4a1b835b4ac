//! Formula: wetted area of a round section

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::{acos, sqrt};
use stillrise_units::{Area, Length};

formula! {
    /// Area of the segment that water of a given depth fills in a circle lying on its side.
    "wetted-segment" "Wetted area of a round section"
    fn area(
        d: Length = "D" "inside diameter" [IN, MM: 5.0 .. 4000.0 in 1e-3 .. 50000.0];
        y: Length = "y" "depth of water" [IN, MM: 0.0 .. 4000.0 in 0.0 .. 50000.0];
    ) -> Area = "A" "wetted area" [FT2, M2];
    reduced [d M, y M => M2] {
        let r = d / 2.0;
        r * r * acos((r - y) / r) - (r - y) * sqrt(2.0 * r * y - y * y)
    }
    sources [DEFINITION]
    checks [
        "d=96 in, y=22 in" => "1251.2018 in2", Library("fluids 1.3.1, geometry docstring after D. Jones, Computing fluid tank volumes");
        "d=2 m, y=1 m" => "1.570796327 m2", Limit("half of the circle of radius one");
        "d=2 m, y=2 m" => "3.141592654 m2", Limit("the whole circle");
        "d=2 m, y=0 m" => "0.000000 m2", Limit("a dry pipe");
        "d=2 m, y=2.1 m" => "outside: result", Limit("no deeper than full");
    ]
}

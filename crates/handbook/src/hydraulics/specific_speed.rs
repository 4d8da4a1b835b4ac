//! Formula: specific speed of a pump

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Flow, Length, Ratio, ShearRate};

formula! {
    /// What tells the form of an impeller: turns a minute, times the root of the flow in m3/s, over head in m to the power 3/4.
    /// Radial impellers lie below about 60, mixed-flow ones above; from memory of textbooks on pumps.
    "specific-speed" "Specific speed of a pump"
    fn speed(
        n: ShearRate = "n" "speed of rotation, revolutions per time" [RPM, RPM: 300.0 .. 4000.0 in 1.0 .. 100000.0];
        q: Flow = "Q" "flow at the best point" [GPM, M3_H: 0.1 .. 5000.0 in 1e-6 .. 1e6];
        h: Length = "H" "head" [FT, M: 0.5 .. 100.0 in 1e-3 .. 10000.0];
    ) -> Ratio = "n_q" "specific speed, of rpm, m3/s and m" [ONE, ONE];
    reduced [n RPM, q M3_S, h M => ONE] { n * sqrt(q) / pow(h, 0.75) }
    sources [DEFINITION]
    checks [
        "n=1450 rpm, q=3600 m3/h, h=1 m" => "1450", Limit("a cubic metre a second over a metre");
        "n=3450 rpm, q=150 gpm, h=20 ft" => "86.5", ByHand("3450 x sqrt(0.0094635) / 6.096^0.75 = 3450 x 0.097281 / 3.8797");
        "n=1450 rpm, q=360 m3/h, h=16 m" => "57.32", ByHand("1450 x sqrt(0.1) / 8");
    ]
}

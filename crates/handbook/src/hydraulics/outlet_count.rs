//! Formula: number of outlets that keep a velocity

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::MIL_1005_9A;
use core::f64::consts::PI;
use stillrise_units::{Flow, Length, Ratio, Velocity};

formula! {
    /// How many round mouths share a flow so that none exceeds a velocity; take the next whole number.
    ///
    /// With flared ends the diameter is that of the flare. 0.5 ft/s (0.15 m/s) is the limit of a
    /// military handbook for the outlets of a separator.
    "outlet-count" "Number of outlets that keep a velocity"
    fn count(
        q: Flow = "Q" "flow" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        v: Velocity = "v" "highest velocity in a mouth" [FT_S, M_S: 0.03 .. 1.0 in 1e-4 .. 100.0];
        d: Length = "d" "diameter of a mouth" [IN, MM: 25.0 .. 1000.0 in 1.0 .. 20000.0];
    ) -> Ratio = "N" "number of outlets, before rounding up" [ONE, ONE];
    typed { q / (v * (PI * d * d / 4.0)) }
    sources [MIL_1005_9A]
    checks [
        "q=146 gpm, v=0.5 ft/s, d=8 in" => "1.86", Published(&MIL_1005_9A, "0.4085 Q/(v d2), flared outlets");
        "q=552 L/min, v=0.1524 m/s, d=203.2 mm" => "1.86", Published(&MIL_1005_9A, "21.2 Q/(v d2), SI");
        "q=0 L/s, v=0.15 m/s, d=200 mm" => "0.000000", Limit("no flow needs no outlet");
    ]
}

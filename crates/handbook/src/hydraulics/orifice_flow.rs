//! Formula: flow of a round orifice

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::{HDS_2_OUTLETS, HEC_22_ORIFICE};
use core::f64::consts::PI;
use stillrise_units::{Flow, G, Length, Ratio};

formula! {
    /// Flow through a round hole under a head: above its centre when it runs free, the difference of
    /// levels when it is drowned.
    ///
    /// Coefficient 0.60 to 0.62 for a sharp edge, 0.82 for a tube of two to three diameters, 0.40 for a
    /// ragged edge, such as a torch leaves in a corrugated pipe. A free orifice needs a head of more
    /// than one diameter above its crown.
    "orifice-flow" "Flow of a round orifice"
    fn flow(
        d: Length = "d" "diameter" [IN, MM: 10.0 .. 1000.0 in 0.1 .. 20000.0];
        h: Length = "h" "head" [FT, M: 0.02 .. 10.0 in 0.0 .. 1000.0];
        c: Ratio = "C_d" "discharge coefficient" [ONE, ONE: 0.4 .. 0.82 in 0.1 .. 1.0];
    ) -> Flow = "Q" "flow" [GPM, L_S];
    typed { c * (PI * d * d / 4.0) * (2.0 * G * h).sqrt() }
    sources [HDS_2_OUTLETS, HEC_22_ORIFICE]
    checks [
        "d=0.5608 m, h=0.7 m, c=0.6" => "0.55 m3/s", Published(&HDS_2_OUTLETS, "example 8.4: 0.247 m2, as a circle");
        "d=1.8403 ft, h=2.3 ft, c=0.6" => "19.4 cfs", Published(&HDS_2_OUTLETS, "example 8.4, US units: 2.66 ft2, as a circle");
        "d=0.1 m, h=1 m, c=0.6" => "0.0209 m3/s", Published(&HEC_22_ORIFICE, "Q = 2.09 D2 H^0.5 in metres at a coefficient of 0.60");
        "d=0.1 ft, h=1 ft, c=0.6" => "0.0378 cfs", Published(&HEC_22_ORIFICE, "Q = 3.78 D2 H^0.5 in feet at a coefficient of 0.60");
        "d=0.1 m, h=4 m, c=0.4" => "0.02783 m3/s", ByHand("a ragged edge: 0.4 x 0.00785398 x 8.85739");
    ]
}

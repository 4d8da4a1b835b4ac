//! Formula: time in which droplets of one size meet in sheared water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SAFFMAN_TURNER;
use core::f64::consts::PI;
use stillrise_units::{Ratio, ShearRate, Time};

/// Six times the 1.3 of Saffman and Turner over two, for droplets of one size.
const RATE: f64 = 3.9;

formula! {
    /// Time in which the number of droplets of one size would fall to one part in e, if every two that meet join.
    ///
    /// It does not depend on their size. At 100 mg/L it takes minutes in strongly stirred water and hours in a
    /// separator, and of ten that meet hardly one joins: this is why coalescence in the bulk gets no credit here.
    /// On plates and fibres, where oil lies already, it is another matter.
    "shear-collision-time" "Time in which droplets meet in sheared water"
    fn time(
        g: ShearRate = "G" "mean shear rate" [PER_S, PER_S: 0.1 .. 1000.0 in 1e-9 .. 1e9];
        phi: Ratio = "phi" "oil by volume" [PERCENT, PERCENT: 0.0001 .. 1.0 in 1e-9 .. 50.0];
        efficiency: Ratio = "alpha" "share of those that meet and join" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0001 .. 100.0];
    ) -> Time = "t" "time" [MIN, MIN];
    typed { PI / (RATE * efficiency * g * phi) }
    constants [RATE "3.9"]
    sources [SAFFMAN_TURNER]
    checks [
        "g=1 1/s, phi=0.0118 %, efficiency=100 %" => "6800 s" within 5e-3 "printed to two digits", ByHand("pi / (3.9 x 1.18e-4) = 6827");
        "g=10 1/s, phi=0.0118 %, efficiency=100 %" => "680 s" within 5e-3 "printed to two digits", ByHand("a tenth of that");
        "g=50 1/s, phi=0.0118 %, efficiency=100 %" => "137 s", ByHand("6827 / 50 = 136.5");
        "g=10 1/s, phi=0.0118 %, efficiency=10 %" => "6827 s", Limit("one in ten joins: ten times as long");
    ]
}

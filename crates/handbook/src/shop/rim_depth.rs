//! Formula: depth of a flat-bar rim beam

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::{Force, Length, Pressure};

formula! {
    /// Depth of a level flat bar that carries the rim's push between two supports.
    ///
    /// A beam free to turn at its supports under an even load, F L/8; the wall's plate is left out. A cross tie at half
    /// the span quarters the moment and halves the depth.
    "rim-depth" "Depth of a flat-bar rim beam"
    fn depth(
        force: Force = "F_r" "push on the rim between supports" [LBF, KN: 0.1 .. 100.0 in 0.0 .. 1e6];
        span: Length = "L" "length of rim between supports" [IN, M: 0.2 .. 10.0 in 0.0 .. 1000.0];
        bar: Length = "t_b" "thickness of the bar" [IN, MM: 3.0 .. 25.0 in 0.01 .. 1000.0];
        sigma: Pressure = "sigma" "allowable bending stress" [PSI, KPA: 1e4 .. 3e5 in 1.0 .. 1e7];
    ) -> Length = "b" "depth of the bar" [IN, MM];
    typed { (6.0 * (force * span / 8.0) / (sigma * bar)).sqrt() }
    sources [STRENGTH]
    checks [
        "force=2600 lbf, span=120 in, bar=0.5 in, sigma=21600 psi" => "4.655 in", ByHand("39,000 lbf in; (6 x 39,000 / 10,800)^0.5");
        "force=1300 lbf, span=60 in, bar=0.5 in, sigma=21600 psi" => "2.327 in", ByHand("9,750 lbf in; (6 x 9,750 / 10,800)^0.5");
        "force=8 kN, span=1 m, bar=6 mm, sigma=1000 kPa" => "1000.000 mm", Limit("1 kN m over 6 mm x 1 m2/6 is 1 MPa");
    ]
}

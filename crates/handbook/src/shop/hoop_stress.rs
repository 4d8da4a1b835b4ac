//! Formula: hoop stress in a thin cylinder

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::{Length, Pressure};

formula! {
    /// Tension around a shell under pressure from inside.
    ///
    /// Water alone asks next to nothing of a shell of the sizes of this trade; pressure from outside governs, see
    /// `cylinder-collapse`. Divide by the efficiency of the seam, and take off the allowance for corrosion first.
    "hoop-stress" "Hoop stress in a thin cylinder"
    fn stress(
        p: Pressure = "p" "pressure inside less pressure outside" [PSI, KPA: 0.0 .. 200.0 in 0.0 .. 1e6];
        r: Length = "R" "radius of the shell" [IN, M: 0.3 .. 2.5 in 0.001 .. 100.0];
        t: Length = "t" "thickness of the shell" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
    ) -> Pressure = "sigma" "hoop stress" [PSI, KPA];
    typed { p * r / t }
    sources [STRENGTH]
    checks [
        "p=3 psi, r=48 in, t=0.25 in" => "576.0 psi", ByHand("3 x 48 / 0.25");
        "p=0 psi, r=48 in, t=0.25 in" => "0 psi", Limit("no pressure");
    ]
}

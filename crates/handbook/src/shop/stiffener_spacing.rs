//! Formula: spacing of stiffeners

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STRENGTH;
use stillrise_units::{Length, Pressure};

formula! {
    /// Greatest spacing of stiffeners at which a plate that runs through over them keeps its allowable stress.
    ///
    /// A strip of plate fixed over its stiffeners under even pressure: take the pressure at the bottom of the wall. Its
    /// deflection is small at such spacings, but see that none is forgotten at the rim.
    "stiffener-spacing" "Spacing of stiffeners"
    fn spacing(
        t: Length = "t" "thickness of the plate" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        sigma: Pressure = "sigma" "allowable bending stress" [PSI, KPA: 1e4 .. 3e5 in 1.0 .. 1e7];
        p: Pressure = "p" "pressure on the plate" [PSI, KPA: 1.0 .. 100.0 in 0.0 .. 1e6];
    ) -> Length = "s" "spacing of stiffeners" [IN, MM];
    typed { t * (2.0 * sigma / p).sqrt() }
    sources [STRENGTH]
    checks [
        "t=0.1875 in, sigma=21600 psi, p=1 psi" => "39 in", ByHand("0.1875 x 43,200^0.5 = 38.97");
        "t=0.25 in, sigma=21600 psi, p=2 psi" => "36.74 in", ByHand("0.25 x 21,600^0.5");
        "t=0.3125 in, sigma=21600 psi, p=3 psi" => "37.5000 in", Limit("p s2/12 over t2/6 is the stress: 3 x 37.5^2 / (2 x 0.3125^2) = 21,600 psi");
        "t=0.25 in, sigma=21600 psi, p=0 psi" => "outside: result", Limit("no pressure asks for none");
    ]
}

//! Formula: time for droplets to grow by meeting in turbulence

use super::turbulent_collision_rate::C_TURBULENT;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DEFINITION, SAFFMAN_TURNER};
use core::f64::consts::PI;
use stillrise_units::{Ratio, ShearRate, Time};

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Time in which droplets that stay equal fall to 37 % of their number, and grow by 40 % in diameter.
    ///
    /// Their size drops out: larger ones meet more often, but are fewer. The reason why coalescence in the
    /// bulk gets no credit unless asked for: at 100 mg/L and a shear rate of 10 1/s it takes eleven minutes
    /// if every meeting joins two droplets. Of real meetings perhaps one in ten to twenty does (from memory),
    /// which makes hours, against a stay of some tens of minutes. Stronger shear would hasten it, but lasts
    /// only near the inlet and breaks what it joins (`hinze-droplet`). Plates and mesh bring droplets together;
    /// open water hardly does. Droplets of unlike size meet somewhat faster than equal ones.
    "shear-collision-time" "Time for droplets to grow by meeting in turbulence"
    fn time(
        shear: ShearRate = "G" "mean shear rate" [PER_S, PER_S: 0.1 .. 1000.0 in 0.0 .. 1e9];
        phi: Ratio = "phi" "share of the volume that is oil" [UL_L, UL_L: 10.0 .. 10000.0 in 0.0 .. 1e6];
        efficiency: Ratio = "alpha" "share of meetings that join" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Time = "t" "number over its rate of loss" [MIN, MIN];
    reduced [shear PER_S, phi ONE, efficiency ONE => S] { PI / (3.0 * C_TURBULENT * efficiency * shear * phi) }
    constants [C_TURBULENT "C"]
    sources [SAFFMAN_TURNER, DEFINITION]
    checks [
        "shear=1 1/s, phi=118 uL/L, efficiency=100 %" => "6827 s" within 5e-3 "evaluated with 3.9 in place of 3 x 1.294 = 3.882", ByHand(OWN);
        "shear=1 1/s, phi=118 uL/L, efficiency=100 %" => "6858.23 s", ByHand(OWN);
        "shear=10 1/s, phi=118 uL/L, efficiency=100 %" => "685.823 s", ByHand(OWN);
        "shear=50 1/s, phi=118 uL/L, efficiency=100 %" => "137.165 s", ByHand(OWN);
        "shear=10 1/s, phi=118 uL/L, efficiency=5 %" => "13716.5 s", ByHand("the same over 0.05: 3.8 hours");
        "shear=0 1/s, phi=118 uL/L, efficiency=100 %" => "outside: result", Limit("in still water equal droplets never meet");
        "shear=10 1/s, phi=0 uL/L, efficiency=100 %" => "outside: result", Limit("a lone droplet meets none");
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::droplets::turbulent_collision_rate::rate;
    use stillrise_units::catalog::{ONE, PER_S, UM};
    use stillrise_units::{Length, Typed};

    /// N equal droplets per volume lose K N^2/2 per time: two go and one comes in each of K N^2/2 meetings.
    #[test]
    fn it_is_that_of_the_collision_rate_whatever_the_size() {
        let (shear, phi, sticks) = (ShearRate::of(10.0, &PER_S), Ratio::of(118e-6, &ONE), Ratio::of(0.3, &ONE));
        let own = time(shear, phi, sticks).map_or(f64::NAN, Typed::si);
        for size in [5.0, 60.0, 150.0] {
            let d = Length::of(size, &UM);
            let k = rate(d, d, shear, sticks).map_or(f64::NAN, Typed::si);
            let number = 6.0 * phi.si() / (PI * d.si() * d.si() * d.si());
            assert!((own * k * number / 2.0 - 1.0).abs() < 1e-12, "{size}");
        }
    }
}

//! Formula: sizes of droplets when meetings grow with volume

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::{GOLOVIN, SCOTT};
use stillrise_units::Ratio;
use stillrise_units::math::{bessel_i1_scaled, exp, sqrt};

const SCIPY: &str = "scipy 1.17.1, special.i1e in the same law";

formula! {
    /// Number of droplets per step of volume, over N_0/v_0, when meetings go with the sum of two volumes.
    ///
    /// Nearest to shear, whose rate goes with the cube of the sum of two diameters, of the cases with a closed
    /// form. Volumes are spread exponentially about their mean v_0 at the start. Time counts as
    /// `τ = b N_0 v_0 t` with the rate `b (v + v')`. The number left is e^-τ, the volume stays, the sum of the
    /// squares of volume grows as 2 e^2τ: a few droplets soon hold most of it. An exact case to hold a
    /// calculation of coalescence against, not a forecast.
    "smoluchowski-sum" "Sizes of droplets when meetings grow with volume"
    fn density(
        tau: Ratio = "tau" "time times rate times first volume" [ONE, ONE: 0.0 .. 10.0 in 0.0 .. 500.0];
        x: Ratio = "x" "volume of a droplet over the first mean" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e12];
    ) -> Ratio = "f" "droplets per step of volume" [ONE, ONE];
    reduced [tau ONE, x ONE => ONE] {
        let s = sqrt(1.0 - exp(-tau));
        exp(-tau) * exp(-(1.0 - s) * (1.0 - s) * x) * bessel_part(2.0 * x * s)
    }
    helpers [bessel_part(f64) "B" "2 e^-z I_1(z)/z of its argument z, with the modified Bessel function of order one; 1 at 0"]
    sources [GOLOVIN, SCOTT]
    checks [
        "tau=1, x=0.1" => "0.313470", Library(SCIPY);
        "tau=1, x=1" => "0.0971839", Library(SCIPY);
        "tau=1, x=5" => "0.0100902", Library(SCIPY);
        "tau=1, x=20" => "6.98138e-4", Library(SCIPY);
        "tau=2, x=0.1" => "0.112799", Library(SCIPY);
        "tau=2, x=1" => "0.0314408", Library(SCIPY);
        "tau=2, x=5" => "3.56022e-3", Library(SCIPY);
        "tau=2, x=20" => "4.27043e-4", Library(SCIPY);
        "tau=3, x=0.1" => "0.0411606", Library(SCIPY);
        "tau=3, x=1" => "0.0110237", Library(SCIPY);
        "tau=3, x=5" => "1.24927e-3", Library(SCIPY);
        "tau=3, x=20" => "1.59532e-4", Library(SCIPY);
        "tau=0, x=1" => "0.367879", Limit("the exponential at the start: 1/e");
        "tau=1, x=0" => "0.367879", Limit("the smallest go as the number does: e^-1");
    ]
}

fn bessel_part(z: f64) -> f64 {
    if z > 0.0 { 2.0 * bessel_i1_scaled(z) / z } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::droplets::moments;
    use stillrise_units::ratio;

    #[test]
    fn the_volume_stays_and_its_squares_grow_as_2_e_to_2_tau() {
        for tau in [0.0, 0.1, 1.0, 2.0, 3.0] {
            let found = moments(|x| density(ratio(tau), x));
            for (got, exact) in found.into_iter().zip([exp(-tau), 1.0, 2.0 * exp(2.0 * tau)]) {
                assert!((got / exact - 1.0).abs() < 1e-6, "{tau}: {got} {exact}");
            }
        }
    }
}

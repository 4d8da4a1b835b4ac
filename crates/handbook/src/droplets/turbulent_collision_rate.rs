//! Formula: rate at which two droplets meet in turbulence

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SAFFMAN_TURNER;
use stillrise_units::{Flow, Length, Ratio, ShearRate};

/// Saffman and Turner's coefficient: the root of 8 pi/15.
pub(super) const C_TURBULENT: f64 = 1.294;

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Volume of water that one droplet sweeps clear of others per time, in eddies larger than both.
    ///
    /// Times the number of the others per volume it is the collisions of one droplet per time. For droplets
    /// smaller than the smallest eddies (`kolmogorov-length`), that follow the water exactly, of paths that
    /// the water between them does not bend; laminar shear of the same rate has 4/3 in place of 1.294.
    /// To meet is not to join: the efficiency takes both the bending and the drainage of the film between
    /// them, commonly 0.01 to 0.5, from memory. Droplets of unlike size also meet by rising unlike fast.
    "turbulent-collision-rate" "Rate at which two droplets meet in turbulence"
    fn rate(
        d_1: Length = "d_1" "diameter of the one" [UM, UM: 1.0 .. 200.0 in 0.0 .. 1e5];
        d_2: Length = "d_2" "diameter of the other" [UM, UM: 1.0 .. 200.0 in 0.0 .. 1e5];
        shear: ShearRate = "G" "mean shear rate" [PER_S, PER_S: 0.1 .. 1000.0 in 0.0 .. 1e9];
        efficiency: Ratio = "alpha" "share of meetings that join" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Flow = "K" "volume swept per time" [M3_S, M3_S];
    reduced [d_1 M, d_2 M, shear PER_S, efficiency ONE => M3_S] {
        let r = (d_1 + d_2) / 2.0;
        efficiency * C_TURBULENT * shear * r * r * r
    }
    constants [C_TURBULENT "C"]
    sources [SAFFMAN_TURNER]
    checks [
        "d_1=1000 um, d_2=1000 um, shear=1 1/s, efficiency=100 %" => "1.294e-9 m3/s", Limit("radii that add up to 1 mm: the coefficient alone");
        "d_1=20 um, d_2=20 um, shear=10 1/s, efficiency=100 %" => "1.0352e-13 m3/s", ByHand(OWN);
        "d_1=20 um, d_2=60 um, shear=10 1/s, efficiency=100 %" => "8.2816e-13 m3/s", ByHand(OWN);
        "d_1=60 um, d_2=20 um, shear=10 1/s, efficiency=100 %" => "8.2816e-13 m3/s", ByHand(OWN);
        "d_1=60 um, d_2=150 um, shear=10 1/s, efficiency=100 %" => "1.497967e-11 m3/s", ByHand(OWN);
        "d_1=50 um, d_2=50 um, shear=100 1/s, efficiency=10 %" => "1.6175e-12 m3/s", ByHand(OWN);
        "d_1=20 um, d_2=60 um, shear=0 1/s, efficiency=100 %" => "0 m3/s", Limit("still water");
    ]
}

#[cfg(test)]
mod tests {
    /// The isotropic turbulence behind it: the mean gradient along a line is the root of epsilon/15 nu.
    #[test]
    fn the_coefficient_is_the_root_of_8_pi_over_15() {
        let exact = stillrise_units::math::sqrt(8.0 * core::f64::consts::PI / 15.0);
        assert!((super::C_TURBULENT - exact).abs() < 5e-4);
    }
}

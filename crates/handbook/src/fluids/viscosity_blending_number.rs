//! Formula: viscosity blending number

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::REFUTAS;
use stillrise_units::math::ln;
use stillrise_units::{KinematicViscosity, Ratio};

/// Slope, intercept and offset of Refutas' number.
pub(super) const VBN_SLOPE: f64 = 14.534;
pub(super) const VBN_BASE: f64 = 10.975;
pub(super) const VBN_OFFSET: f64 = 0.8;

formula! {
    /// Number of an oil's viscosity that blends in proportion to mass, after Refutas.
    ///
    /// Both viscosities of a blend belong to one temperature. Natural logarithms and shares of mass: two
    /// pages of calculators print shares of volume, one the decimal logarithm; both are rejected.
    "viscosity-blending-number" "Viscosity blending number"
    fn number(
        v: KinematicViscosity = "nu" "viscosity of the oil" [CST, MM2_S: 0.5 .. 1e5 in 0.21 .. 2e7];
    ) -> Ratio = "VBN" "blending number" [ONE, ONE];
    reduced [v MM2_S => ONE] { VBN_SLOPE * ln(ln(v + VBN_OFFSET)) + VBN_BASE }
    constants [VBN_SLOPE "14.534", VBN_BASE "10.975", VBN_OFFSET "0.8"]
    sources [REFUTAS]
    checks [
        "v=2.234 mm2/s" => "12.492" within 2e-4 "the example rounds on the way: unrounded 12.4902",
            Published(&REFUTAS, "example: 2.234 mm2/s has 12.492");
        "v=1.918281828459045 mm2/s" => "10.975000", Limit("ln ln e vanishes: e - 0.8 mm2/s has the intercept");
    ]
}

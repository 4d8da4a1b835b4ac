//! Formula: viscosity of an oil at another temperature

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{ASTM_D341, NOAA_OIL_DATA};
use stillrise_units::math::{exp, exp10, log10, pow};
use stillrise_units::{KinematicViscosity, Temperature};

formula! {
    /// Kinematic viscosity of an oil from two measured points, by the double logarithm of
    /// Walther in the full form of ASTM D341.
    ///
    /// Holds between the cloud point and the start of boiling; do not reach far beyond the two
    /// points, and never below the pour point. Against one insulating oil measured at six
    /// temperatures it is 2 to 5 % high between the points. The two points must be of one oil.
    "oil-viscosity" "Viscosity of an oil at another temperature"
    fn viscosity(
        v_1: KinematicViscosity = "nu_1" "viscosity at the first temperature" [CST, MM2_S: 0.5 .. 1e5 in 0.21 .. 2e7];
        t_1: Temperature = "T_1" "first temperature" [DEG_F, DEG_C: -30.0 .. 150.0 in -70.0 .. 370.0];
        v_2: KinematicViscosity = "nu_2" "viscosity at the second temperature" [CST, MM2_S: 0.5 .. 1e5 in 0.21 .. 2e7];
        t_2: Temperature = "T_2" "second temperature" [DEG_F, DEG_C: -30.0 .. 150.0 in -70.0 .. 370.0];
        t: Temperature = "T" "temperature of the oil" [DEG_F, DEG_C: -30.0 .. 150.0 in -70.0 .. 370.0];
    ) -> KinematicViscosity = "nu" "viscosity of the oil" [CST, MM2_S];
    reduced [v_1 MM2_S, t_1 K, v_2 MM2_S, t_2 K, t K => MM2_S] {
        let z_1 = v_1 + 0.7 + exp(-1.47 - 1.84 * v_1 - 0.51 * pow(v_1, 2.0));
        let z_2 = v_2 + 0.7 + exp(-1.47 - 1.84 * v_2 - 0.51 * pow(v_2, 2.0));
        let w_1 = log10(log10(z_1));
        let w_2 = log10(log10(z_2));
        let b = (w_1 - w_2) / (log10(t_2) - log10(t_1));
        let a = w_1 + b * log10(t_1);
        let z = exp10(exp10(a - b * log10(t)));
        let y = z - 0.7;
        y - exp(-0.7487 - 3.295 * y + 0.6119 * pow(y, 2.0) - 0.3193 * pow(y, 3.0))
    }
    sources [ASTM_D341, NOAA_OIL_DATA]
    checks [
        "v_1=32 mm2/s, t_1=40 °C, v_2=5.4 mm2/s, t_2=100 °C, t=80 °C" => "8.5 mm2/s",
            Published(&ASTM_D341, "worked pair in a public copy: 8.5 at 80 °C");
        "v_1=46 mm2/s, t_1=40 °C, v_2=6.76 mm2/s, t_2=100 °C, t=40 °C" => "46 mm2/s" within 1e-12 "rounding of the logarithms",
            Limit("the first point is met");
        "v_1=46 mm2/s, t_1=40 °C, v_2=6.76 mm2/s, t_2=100 °C, t=100 °C" => "6.76 mm2/s" within 1e-9 "the inverse is a fit",
            Limit("the second point is met");
        "v_1=32 mm2/s, t_1=40 °C, v_2=5.36 mm2/s, t_2=100 °C, t=5 °C" => "232.121 mm2/s",
            ByHand("independent evaluation in Python of the full form");
        "v_1=68 mm2/s, t_1=40 °C, v_2=8.67 mm2/s, t_2=100 °C, t=15 °C" => "304.913 mm2/s",
            ByHand("independent evaluation in Python of the full form");
        "v_1=112 mm2/s, t_1=40 °C, v_2=15 mm2/s, t_2=100 °C, t=20 °C" => "326.193 mm2/s",
            ByHand("independent evaluation in Python of the full form");
        "v_1=2.6 mm2/s, t_1=40 °C, v_2=1.05 mm2/s, t_2=100 °C, t=5 °C" => "6.4517 mm2/s",
            ByHand("independent evaluation in Python of the full form");
    ]
}

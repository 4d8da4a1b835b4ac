//! Formula: Saybolt universal seconds

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Published};
use crate::sources::{ASTM_D2161, GRADE_CHART, SAYBOLT_FACTOR};
use stillrise_units::math::pow;
use stillrise_units::{KinematicViscosity, Ratio, Temperature};

formula! {
    /// Saybolt universal seconds of a kinematic viscosity, at the temperature of the test.
    ///
    /// Old US data sheets give viscosity so. The conversion is stated for 1.81 to 500 mm2/s at
    /// 100 °F; above, seconds are 4.632 times the viscosity, which this form approaches by itself
    /// within 0.02 %. The factor for other temperatures is from memory; it meets the printed
    /// 4.664 at 210 °F within 0.02 %. Furol seconds, for heavy oils, are another scale.
    "saybolt" "Saybolt universal seconds"
    fn seconds(
        v: KinematicViscosity = "nu" "kinematic viscosity" [CST, MM2_S: 1.81 .. 500.0 in 1.0 .. 1e6];
        t: Temperature = "t" "temperature of the test" [DEG_F, DEG_C: 0.0 .. 100.0 in -20.0 .. 200.0];
    ) -> Ratio = "SUS" "Saybolt universal seconds" [ONE, ONE];
    reduced [v MM2_S, t DEG_F => ONE] {
        let s_100 = 4.6324 * v + (1.0 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * pow(v, 2.0) + 1.646 * pow(v, 3.0)) * 1e-5);
        s_100 * (1.0 + 0.000061 * (t - 100.0))
    }
    sources [ASTM_D2161, SAYBOLT_FACTOR]
    checks [
        "v=500 mm2/s, t=100 °F" => "2316" within 3e-4 "the limit factor is printed to four digits",
            Published(&ASTM_D2161, "section 5: 4.632 times the viscosity at 100 °F");
        "v=500 mm2/s, t=210 °F" => "2332" within 3e-4 "the limit factor is printed to four digits",
            Published(&ASTM_D2161, "section 5: 4.664 times the viscosity at 210 °F");
        "v=32 mm2/s, t=100 °F" => "150" within 0.005 "the chart is read to 5 s", Published(&GRADE_CHART, "32 mm2/s is 150 s");
        "v=46 mm2/s, t=100 °F" => "215" within 0.005 "the chart is read to 5 s", Published(&GRADE_CHART, "46 mm2/s is 215 s");
        "v=100 mm2/s, t=100 °F" => "465" within 0.005 "the chart is read to 5 s", Published(&GRADE_CHART, "100 mm2/s is 465 s");
        "v=151.08914751515542 mm2/s, t=100 °F" => "700.000",
            Library("chemicals 1.5.2, viscosity_converter(700, 'Saybolt Universal Seconds', 'kinematic viscosity')");
        "v=32 mm2/s, t=100 °F" => "150.4880", ByHand("independent evaluation in Python");
    ]
}

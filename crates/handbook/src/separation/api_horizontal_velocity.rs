//! Formula: highest horizontal velocity in an API basin

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{API_421, MIL_1005_16, NZ_PETROLEUM};
use stillrise_units::Velocity;
use stillrise_units::math::min;

formula! {
    /// The smaller of fifteen times the rise velocity and 3 ft/min (15.2 mm/s).
    ///
    /// Trap: one public text prints the limit as 3 ft per *second*; lecture slides round it to
    /// 1.5 cm/s (2.95 ft/min).
    "api-horizontal-velocity" "Highest horizontal velocity in an API basin"
    fn velocity(
        v_t: Velocity = "V_t" "rise velocity of the design droplet" [FT_MIN, MM_S: 0.0 .. 5.0 in 0.0 .. 1000.0];
    ) -> Velocity = "V_H" "horizontal velocity" [FT_MIN, MM_S];
    reduced [v_t FT_MIN => FT_MIN] { min(15.0 * v_t, 3.0) }
    sources [API_421, MIL_1005_16]
    checks [
        "v_t=0.870 m/h" => "13.05 m/h", Published(&NZ_PETROLEUM, "retail site, as a second text transcribes it: 15 V_t = 13.05 m/h");
        "v_t=0.000242 m/s" => "0.0036 m/s", Published(&NZ_PETROLEUM, "retail site, as a second text transcribes it: 0.0036 m/s");
        "v_t=0.869 m/h" => "13.04 m/h", Published(&NZ_PETROLEUM, "retail site: 13.04 m/h");
        "v_t=1 ft/min" => "54.864 m/h", Published(&API_421, "3 ft/min = 54.864 m/h in a worked example");
        "v_t=0.21021 ft/min" => "3.000 ft/min", ByHand("15 x 0.21021 = 3.1532, so the limit of 3 holds");
        "v_t=0 ft/min" => "0 ft/min", Limit("what does not rise cannot be carried along");
    ]
}

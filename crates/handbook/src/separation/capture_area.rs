//! Formula: plate area that counts towards capture

use super::laminar_capture::PlateRun;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{SURFACE_LOADING, YAO};
use stillrise_units::math::sin;
use stillrise_units::{Angle, Area};

formula! {
    /// Projected area of a pack with the droplets' own way along the gaps: what laminar gaps catch is rise
    /// velocity times this, over the flow.
    ///
    /// `laminar-capture` summed over the gaps. Where the water runs down, what rises faster than it never
    /// enters, or is that much longer between the plates: the open section adds its own projection. Where it runs
    /// up, droplets are hurried along and it is taken off, on the safe side by the same small term; across the
    /// slope it changes nothing. Mostly below 3 %.
    "capture-area" "Plate area that counts towards capture"
    fn area(
        plates: Area = "A_p" "projected area of the plates" [FT2, M2: 0.1 .. 5000.0 in 0.0 .. 1e7];
        open: Area = "A_f" "open section of the gaps, square to the flow" [FT2, M2: 0.01 .. 100.0 in 0.0 .. 1e6];
        theta: Angle = "theta" "angle of the plates to the horizontal" [DEG, DEG: 0.0 .. 60.0 in 0.0 .. 90.0];
        run: PlateRun = "run" "which way the water runs";
    ) -> Area = "A_c" "area that counts" [FT2, M2];
    reduced [plates M2, open M2, theta RAD => M2] {
        let along = if run == PlateRun::CounterCurrent { 1.0 } else if run == PlateRun::CoCurrent { -1.0 } else { 0.0 };
        plates + open * along * sin(theta)
    }
    sources [SURFACE_LOADING, YAO]
    checks [
        "plates=0.385673 m2, open=0.0127 m2, theta=50 deg, run=cross-flow" => "0.385673 m2", Limit("across the slope");
        "plates=0.385673 m2, open=0.0127 m2, theta=50 deg, run=counter-current" => "0.3954 m2" within 3e-4 "the share caught is printed to four digits",
            ByHand("one gap, 0.6 m by 12.7 mm, 1 m wide, 5 mm/s, droplets of 0.05 mm/s followed in Python: 0.3060 of those that enter, and 0.00766 that do not: 0.31132 x 0.0635 L/s / 0.05 mm/s");
        "plates=0.385673 m2, open=0.0127 m2, theta=50 deg, run=co-current" => "0.375944 m2", ByHand("Yao: the critical velocity is U / (L/h cos - sin); times area it is the flow: 0.0635 L/s / 0.168908 mm/s");
        "plates=2 m2, open=0.5 m2, theta=0 deg, run=counter-current" => "2.00000 m2", Limit("level plates");
    ]
}

//! Formula: capture in the gap between two inclined plates

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{SURFACE_LOADING, YAO};
use crate::{choice, formula};
use stillrise_units::math::{cos, max, min, sin};
use stillrise_units::{Angle, Length, Ratio, Velocity};

const PATHS: &str = "the paths of random droplets followed in Python, agreeing to 1e-4";

choice! {
    /// Which way the water runs against the oil that slides up under the plates.
    PlateRun {
        /// the water runs down, against the oil
        CounterCurrent "counter-current",
        /// the water runs up, with the oil
        CoCurrent "co-current",
        /// the water runs level, across the oil
        CrossFlow "cross-flow",
    }
}

formula! {
    /// Share of droplets of one rise velocity that one laminar gap catches; exact for any profile.
    ///
    /// The term `v sin θ` is the droplet's own way along the plate; it is mostly below 2 % and is
    /// dropped when only the projected area is counted. Counter-current, the share is of the
    /// droplets that enter the gap: those faster than the water along the plate never do.
    "laminar-capture" "Capture between two inclined plates"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 10.0 in -1e6 .. 1e6];
        u: Velocity = "U" "mean velocity of the water in the gap" [FT_MIN, MM_S: 0.1 .. 30.0 in 1e-6 .. 1e6];
        length: Length = "L" "length of the plate along the flow" [IN, MM: 100.0 .. 3000.0 in 0.0 .. 100000.0];
        gap: Length = "h" "gap, square to the plates" [IN, MM: 5.0 .. 50.0 in 0.1 .. 10000.0];
        theta: Angle = "theta" "angle of the plates to the horizontal" [DEG, DEG: 0.0 .. 60.0 in 0.0 .. 90.0];
        run: PlateRun = "run" "which way the water runs";
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, u MM_S, length MM, gap MM, theta RAD => ONE] {
        let w = max(v, 0.0);
        let u_along = if run == PlateRun::CounterCurrent { u - w * sin(theta) }
            else if run == PlateRun::CoCurrent { u + w * sin(theta) }
            else { u };
        if u_along > 0.0 { min(1.0, w * cos(theta) * length / (u_along * gap)) } else { 1.0 }
    }
    sources [SURFACE_LOADING, YAO]
    checks [
        "v=0.05 mm/s, u=5 mm/s, length=0.6 m, gap=12.7 mm, theta=50 deg, run=counter-current" => "0.3060", ByHand(PATHS);
        "v=0.05 mm/s, u=5 mm/s, length=0.6 m, gap=12.7 mm, theta=50 deg, run=cross-flow" => "0.3037", ByHand(PATHS);
        "v=0.05 mm/s, u=5 mm/s, length=0.6 m, gap=12.7 mm, theta=50 deg, run=co-current" => "0.3014", ByHand(PATHS);
        "v=0.1 mm/s, u=5 mm/s, length=0.6 m, gap=12.7 mm, theta=50 deg, run=counter-current" => "0.6168", ByHand(PATHS);
        "v=0.05 mm/s, u=5 mm/s, length=600 mm, gap=12 mm, theta=0 deg, run=co-current" => "0.5000",
            Limit("level plates: rise velocity over surface loading, whichever way");
        "v=1 mm/s, u=5 mm/s, length=600 mm, gap=12 mm, theta=50 deg, run=cross-flow" => "1.000", Limit("no more than all");
        "v=-1 mm/s, u=5 mm/s, length=600 mm, gap=12 mm, theta=50 deg, run=cross-flow" => "0", Limit("what sinks is not caught");
        "v=6 mm/s, u=5 mm/s, length=0 mm, gap=12 mm, theta=90 deg, run=counter-current" => "1.000",
            Limit("what outruns the water never enters the gap");
    ]
}

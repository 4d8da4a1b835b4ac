//! Formula: removal in tanks in series

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{EPA_DETENTION, HAZEN_CAMP};
use stillrise_units::math::{max, pow};
use stillrise_units::{Ratio, Velocity};

const OWN: &str = "independent evaluation in Python";

formula! {
    /// Share of droplets of one rise velocity that `n` mixed tanks in series of one overflow rate in all catch.
    ///
    /// A common grading, from memory: one tank is very poor, two or three good, five very good. As n grows it
    /// tends to a tank mixed over its depth with plug flow along it, never to an ideal one. `equivalent-tanks`
    /// gives n from a measured spread of the residence time.
    "tanks-in-series" "Removal in tanks in series"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
        v_0: Velocity = "v_0" "overflow rate of all tanks together" [GPM_FT2, MM_S: 0.001 .. 20.0 in 1e-9 .. 1e12];
        n: Ratio = "n" "number of tanks" [ONE, ONE: 1.0 .. 20.0 in 0.01 .. 1e6];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, v_0 MM_S, n ONE => ONE] { 1.0 - pow(1.0 + max(v / v_0, 0.0) / n, -n) }
    sources [HAZEN_CAMP, EPA_DETENTION]
    checks [
        "v=0.5 mm/s, v_0=1 mm/s, n=1" => "0.3333", ByHand(OWN);
        "v=0.5 mm/s, v_0=1 mm/s, n=2" => "0.3600", ByHand(OWN);
        "v=0.5 mm/s, v_0=1 mm/s, n=5" => "0.3791", ByHand(OWN);
        "v=0.5 mm/s, v_0=1 mm/s, n=10" => "0.3861", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=1" => "0.5000", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=2" => "0.5556", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=3" => "0.5781", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=5" => "0.5981", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=10" => "0.6145", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, n=1" => "0.6667", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, n=2" => "0.7500", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, n=5" => "0.8141", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, n=10" => "0.8385", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, n=1" => "0.8000", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, n=2" => "0.8889", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, n=5" => "0.9471", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, n=10" => "0.9654", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, n=1e6" => "0.6321", Limit("many tanks: 1 - 1/e");
        "v=-1 mm/s, v_0=1 mm/s, n=3" => "0", Limit("what sinks is not caught");
    ]
}

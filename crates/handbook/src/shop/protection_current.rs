//! Formula: current that protects buried steel

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::UFC_3_570_02A;
use stillrise_units::{Area, Ratio};

formula! {
    /// Current for the steel that its coating leaves bare.
    ///
    /// 2 mA for each square foot of bare steel reproduces an Army example. A factory coating that arrives intact leaves some
    /// 2 % bare, a field coating 20 % there: ten times the current, so do not take the first for the second. A specialist
    /// measures the soil and designs; this is the size of it.
    "protection-current" "Current that protects buried steel"
    fn current(
        area: Area = "A" "coated steel in the ground" [FT2, M2: 0.0 .. 500.0 in 0.0 .. 1e6];
        bare: Ratio = "f" "share of it that is bare" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0 .. 100.0];
        density: Ratio = "j" "current for bare steel in mA for each square foot" [ONE, ONE: 1.0 .. 3.0 in 0.0 .. 100.0];
    ) -> Ratio = "I" "current in amperes" [ONE, ONE];
    reduced [area FT2, bare ONE, density ONE => ONE] { area * bare * density / 1000.0 }
    sources [UFC_3_570_02A]
    checks [
        "area=1734 ft2, bare=20 %, density=2" => "0.7", Published(&UFC_3_570_02A, "tank of 12 x 40 ft, coating 80 % efficient: 0.7 A; the 2 mA are worked back from it");
        "area=436 ft2, bare=2 %, density=2" => "0.01744", ByHand("436 x 0.02 x 2 mA");
        "area=436 ft2, bare=0 %, density=2" => "0", Limit("nothing bare, no current");
    ]
}

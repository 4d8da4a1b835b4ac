//! Formula: long-term mean that keeps a permit limit

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::EPA_TSD;
use stillrise_units::{Concentration, Ratio};

formula! {
    /// Mean at which an effluent keeps its limit at the percentile of `permit-multiplier`.
    ///
    /// This is the number to compare with a predicted mean; never the limit itself.
    "long-term-mean" "Long-term mean that keeps a permit limit"
    fn mean(
        limit: Concentration = "C_limit" "permit limit" [MG_L, MG_L: 0.0 .. 1000.0 in 0.0 .. 1e6];
        multiplier: Ratio = "m" "limit over long-term mean" [ONE, ONE: 1.0 .. 10.0 in 0.01 .. 1000.0];
    ) -> Concentration = "C_mean" "long-term mean" [MG_L, MG_L];
    typed { limit / multiplier }
    sources [EPA_TSD]
    checks [
        "limit=15 mg/L, multiplier=3.11" => "4.8 mg/L", ByHand("daily maximum at the 99th percentile, CV 0.6: 15 / 3.11");
        "limit=10 mg/L, multiplier=1.55" => "6.45 mg/L", ByHand("monthly average of four at the 95th percentile: 10 / 1.55");
        "limit=15 mg/L, multiplier=1" => "15 mg/L", Limit("an effluent that does not vary");
    ]
}

//! Formula: peak flow of rain by the rational method

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::HDS_2;
use stillrise_units::{Area, Flow, Ratio, Velocity};

crate::choice! {
    /// How the product of US units is turned into cubic feet per second.
    RationalFactor {
        /// exactly: one inch an hour on one acre is 1.00833 cfs
        Exact "exact",
        /// as US manuals do: one inch an hour on one acre is called 1 cfs
        Unity "unity",
    }
}

/// Cubic feet per second in one inch per hour on one acre: 43 560 ft2/acre over 12 in/ft and 3600 s/h.
const ACRE_INCH_HOUR: f64 = 43_560.0 / 43_200.0;

formula! {
    /// Peak flow of a small area when the rain lasts as long as the water takes to arrive.
    ///
    /// Uniform rain, no storage, up to about 80 ha (200 acres); some authorities allow more. Manuals
    /// in US units leave out the factor 1.00833, so their worked answers are 0.8 % smaller than the
    /// exact product: the default here is exact, `unity` reproduces the manuals.
    "rational-flow" "Peak flow of rain, rational method"
    fn flow(
        c: Ratio = "C" "runoff coefficient" [ONE, ONE: 0.05 .. 1.0 in 0.0 .. 1.0];
        i: Velocity = "i" "rainfall intensity" [IN_H, MM_H: 0.0 .. 300.0 in 0.0 .. 2000.0];
        a: Area = "A" "area drained" [ACRES, M2: 0.0 .. 809371.0 in 0.0 .. 1e9];
        factor: RationalFactor = "factor" "exact, or 1 as in US manuals";
    ) -> Flow = "Q" "peak flow" [GPM, L_S];
    typed {
        let k = if factor == RationalFactor::Exact { 1.0 } else { 1.0 / ACRE_INCH_HOUR };
        k * c * i * a
    }
    constants [ACRE_INCH_HOUR "k_US"]
    sources [HDS_2]
    checks [
        "c=0.32, i=3.35 in/h, a=108 acre, factor=unity" => "116 cfs", Published(&HDS_2, "example 5.5, US units");
        "c=0.32, i=85 mm/h, a=43.7 ha, factor=exact" => "3.3 m3/s", Published(&HDS_2, "example 5.5");
        "c=0.20, i=79 mm/h, a=2.3 ha, factor=exact" => "0.10 m3/s", Published(&HDS_2, "example 8.1, before");
        "c=0.45, i=102 mm/h, a=2.3 ha, factor=exact" => "0.29 m3/s", Published(&HDS_2, "example 8.1, after");
        "c=0.20, i=79 mm/h, a=5.7 acre, factor=unity" => "3.5 cfs", Published(&HDS_2, "example 8.1, before, US units");
        "c=0.45, i=102 mm/h, a=5.7 acre, factor=unity" => "10.3 cfs", Published(&HDS_2, "example 8.1, after, US units");
        "c=0.826, i=5.67 in/h, a=2.5 acre, factor=exact" => "11.81 cfs", ByHand("1.00833 x 0.826 x 5.67 x 2.5");
        "c=0.826, i=5.67 in/h, a=2.5 acre, factor=exact" => "5299 gpm", ByHand("11.806 cfs x 448.831");
        "c=0.826, i=5.67 in/h, a=2.5 acre, factor=unity" => "11.71 cfs", ByHand("0.826 x 5.67 x 2.5");
        "c=1, i=1 in/h, a=1 acre, factor=exact" => "452.6 gpm", Limit("one inch an hour on one acre, by definition of the units");
        "c=1, i=1 in/h, a=1 acre, factor=unity" => "1.000000 cfs", Limit("what the manuals call it");
    ]
}

//! Formula: Morrill index

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::MORRILL;
use stillrise_units::{Ratio, Time};

const SCIPY: &str = "scipy 1.17.1, stats.gamma.ppf at 0.9 over the same at 0.1";

formula! {
    /// Time at which 90 % of a tracer has left over that at which 10 % has: 1 in plug flow, 22 in a mixed tank.
    ///
    /// Below 2 a basin is commonly called good, from memory. It looks at both limbs of the curve, where the
    /// time of the first 10 % alone looks at one, and needs no mean; how many tanks in series it stands
    /// for, `tanks-quantile` shows at 10 and at 90 %.
    "morrill-index" "Morrill index"
    fn index(
        t_10: Time = "t_10" "time at which 10 % of the tracer has left" [MIN, MIN: 0.1 .. 600.0 in 1e-6 .. 1e9];
        t_90: Time = "t_90" "time at which 90 % of the tracer has left" [MIN, MIN: 0.1 .. 6000.0 in 1e-6 .. 1e9];
    ) -> Ratio = "M" "Morrill index" [ONE, ONE];
    typed { t_90 / t_10 }
    sources [MORRILL]
    checks [
        "t_10=0.105361 min, t_90=2.302585 min" => "21.85", Limit("one mixed tank: ln 10 / ln(10/9)");
        "t_10=0.265906 min, t_90=1.944860 min" => "7.314", Library(SCIPY);
        "t_10=0.367355 min, t_90=1.774107 min" => "4.829", Library(SCIPY);
        "t_10=0.486518 min, t_90=1.598718 min" => "3.286", Library(SCIPY);
        "t_10=0.622130 min, t_90=1.420599 min" => "2.283", Library(SCIPY);
        "t_10=0.726263 min, t_90=1.295126 min" => "1.783", Library(SCIPY);
        "t_10=0.823581 min, t_90=1.184980 min" => "1.439", Library(SCIPY);
        "t_10=20 min, t_90=20 min" => "1", Limit("plug flow");
    ]
}

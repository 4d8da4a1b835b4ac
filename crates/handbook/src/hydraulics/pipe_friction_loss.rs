//! Formula: friction loss of a full pipe

use crate::formula;
use crate::page::Evidence::Published;
use crate::sources::{DARCY, R_HYDRAULICS};
use stillrise_units::{G, Length, Ratio, Velocity};

formula! {
    /// Head lost to friction along a full pipe, Darcy and Weisbach.
    ///
    /// The friction factor is Darcy's, four times Fanning's.
    "pipe-friction-loss" "Friction loss of a full pipe"
    fn loss(
        f: Ratio = "f" "Darcy friction factor" [ONE, ONE: 0.005 .. 0.1 in 0.0 .. 1000.0];
        length: Length = "L" "length" [FT, M: 0.0 .. 5000.0 in 0.0 .. 1e6];
        d: Length = "D" "inside diameter" [IN, MM: 10.0 .. 1500.0 in 0.0 .. 20000.0];
        v: Velocity = "V" "mean velocity" [FT_S, M_S: 0.0 .. 5.0 in 0.0 .. 100.0];
    ) -> Length = "h_f" "head lost" [FT, MM];
    typed { f * (length / d) * (v * v / (2.0 * G)) }
    sources [DARCY]
    checks [
        "f=0.0173, length=10560 ft, d=20 in, v=1.8335 ft/s" => "5.72 ft" within 0.002 "the friction factor is printed to three digits",
             Published(&R_HYDRAULICS, "pipe example, 4 cfs in 20 in: loss 5.72 ft");
    ]
}

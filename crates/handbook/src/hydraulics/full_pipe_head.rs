//! Formula: head of a full pipe with its fittings

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit, Published};
use crate::sources::{DARCY, R_HYDRAULICS};
use stillrise_units::{G, Length, Ratio, Velocity};

formula! {
    /// Head that drives a full pipe: entry, fittings, exit and friction together.
    ///
    /// Level to level: the exit's coefficient of 1 belongs into the sum when the pipe ends under
    /// water, and equally when it ends free, where the velocity head is lost outside.
    "full-pipe-head" "Head of a full pipe with its fittings"
    fn head(
        k_sum: Ratio = "K" "sum of the loss coefficients" [ONE, ONE: 0.0 .. 20.0 in 0.0 .. 1e6];
        f: Ratio = "f" "Darcy friction factor" [ONE, ONE: 0.005 .. 0.1 in 0.0 .. 1000.0];
        length: Length = "L" "length" [FT, M: 0.0 .. 5000.0 in 0.0 .. 1e6];
        d: Length = "D" "inside diameter" [IN, MM: 10.0 .. 1500.0 in 0.0 .. 20000.0];
        v: Velocity = "V" "mean velocity" [FT_S, M_S: 0.0 .. 5.0 in 0.0 .. 100.0];
    ) -> Length = "h" "head from level to level" [IN, MM];
    typed { (k_sum + f * length / d) * (v * v / (2.0 * G)) }
    sources [DARCY]
    checks [
        "k_sum=0, f=0.0173, length=10560 ft, d=20 in, v=1.8335 ft/s" => "5.72 ft" within 0.002 "the friction factor is printed to three digits",
             Published(&R_HYDRAULICS, "pipe example, 4 cfs in 20 in");
        "k_sum=1, f=0.02, length=0 m, d=100 mm, v=1 m/s" => "50.986 mm", Limit("without length, the velocity head");
        "k_sum=2.1, f=0.02, length=0 ft, d=6.065 in, v=3.332 ft/s" => "0.362 ft", ByHand("300 gpm in 6 in schedule 40: 2.1 x 0.1724");
        "k_sum=0, f=0.0168903, length=100 m, d=154.08 mm, v=2.030162 m/s" => "2.3036 m",
            Library("fluids 1.3.1, friction.Colebrook, 600 gpm in 6 in");
    ]
}

//! Formula: stress in a rectangular plate under even pressure

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::ROARK_PLATES;
use stillrise_units::math::{max, min};
use stillrise_units::{Length, Pressure};

/// Rows of the table: long over short side, coefficient.
const ROWS: [(f64, f64); 9] = [
    (1.0, 0.2874),
    (1.2, 0.3762),
    (1.4, 0.4530),
    (1.6, 0.5172),
    (1.8, 0.5688),
    (2.0, 0.6102),
    (3.0, 0.7134),
    (4.0, 0.7410),
    (5.0, 0.7476),
];

/// The coefficient at a ratio of sides, linear between rows; that of an endless strip beyond the last.
fn even_load(ratio: f64) -> f64 {
    for pair in ROWS.windows(2) {
        if let [low, high] = pair
            && ratio <= high.0
        {
            return low.1 + (high.1 - low.1) * (ratio - low.0) / (high.0 - low.0);
        }
    }
    0.75
}

formula! {
    /// Greatest bending stress of a floor or roof panel between beams, its edges supported and free to turn.
    ///
    /// A floor on a full bed needs no more than the least thickness of the shop. Panels that run through over their
    /// beams carry about two thirds of it. Sides may be given in either order.
    "floor-panel-stress" "Stress in a rectangular plate under even pressure"
    fn stress(
        a: Length = "a" "one side" [IN, M: 0.1 .. 5.0 in 0.001 .. 1000.0];
        b: Length = "b" "the other side" [IN, M: 0.1 .. 5.0 in 0.001 .. 1000.0];
        t: Length = "t" "thickness" [IN, MM: 1.0 .. 50.0 in 0.001 .. 1000.0];
        p: Pressure = "p" "even pressure" [PSI, KPA: 0.0 .. 100.0 in 0.0 .. 1e6];
    ) -> Pressure = "sigma" "greatest bending stress" [PSI, KPA];
    reduced [a M, b M, t M, p PA => PA] {
        let short = min(a, b);
        let coefficient = even_load(max(a, b) / short);
        coefficient * p * short * short / (t * t)
    }
    helpers [even_load(f64) "beta" "coefficient of the published table by the ratio of sides, 0.2874 at 1 to 0.75 for a strip"]
    sources [ROARK_PLATES]
    checks [
        "a=10 in, b=10 in, t=1 in, p=1 psi" => "28.74 psi", Published(&ROARK_PLATES, "a/b 1: 0.2874");
        "a=16 in, b=10 in, t=1 in, p=1 psi" => "51.72 psi", Published(&ROARK_PLATES, "a/b 1.6: 0.5172");
        "a=10 in, b=30 in, t=1 in, p=1 psi" => "71.34 psi", Published(&ROARK_PLATES, "a/b 3: 0.7134");
        "a=50 in, b=10 in, t=1 in, p=1 psi" => "74.76 psi", Published(&ROARK_PLATES, "a/b 5: 0.7476");
        "a=25 in, b=10 in, t=1 in, p=1 psi" => "66.18 psi", ByHand("midway between 0.6102 and 0.7134");
        "a=1000 in, b=10 in, t=1 in, p=1 psi" => "75.0000 psi", Limit("a strip: p b2/8 over t2/6");
    ]
}

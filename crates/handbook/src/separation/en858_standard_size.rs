//! Formula: next nominal size of the series

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::EN_858_SIZES;
use stillrise_units::Flow;

formula! {
    /// Smallest nominal size of the preferred series that is not below what is needed.
    ///
    /// The series as two texts list it, each in part; other sizes are on the market. Above 500 there is none: several
    /// in parallel, or a unit of its own. A need above a size by no more than the last digits of arithmetic takes that size.
    "en858-standard-size" "Next nominal size of the series"
    fn size(
        need: Flow = "NS" "nominal size that is needed, as a flow" [L_S, L_S: 0.0 .. 500.0 in 0.0 .. 500.0];
    ) -> Flow = "NS_series" "nominal size of the series, as a flow" [L_S, L_S];
    reduced [need L_S => L_S] { next_size(need) }
    helpers [
        next_size(f64) "NS_series" "smallest of 1.5, 3, 6, 10, 15, 20, 30, 40, 50, 65, 80, 100, 125, 150, 200, 300, 400, 500 that is not below";
    ]
    sources [EN_858_SIZES]
    checks [
        "need=1.5 L/s" => "1.5 L/s", Published(&EN_858_SIZES, "smallest of the series");
        "need=1.51 L/s" => "3 L/s", Published(&EN_858_SIZES, "the size that follows 1.5");
        "need=12.8 L/s" => "15 L/s", Published(&EN_858_SIZES, "the size that follows 10, in one of the two texts");
        "need=50.1 L/s" => "65 L/s", Published(&EN_858_SIZES, "the size that follows 50");
        "need=201 L/s" => "300 L/s", Published(&EN_858_SIZES, "the size that follows 200, in the other text");
        "need=0 L/s" => "1.5 L/s", Limit("there is none smaller");
        "need=500 L/s" => "500 L/s", Limit("a need that is a size of the series takes that size");
        "need=501 L/s" => "outside: need", Limit("the series ends at 500");
    ]
}

/// Preferred sizes.
const SERIES: [f64; 18] = [
    1.5, 3.0, 6.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 125.0, 150.0, 200.0, 300.0, 400.0, 500.0,
];

/// Share by which a need may exceed a size because of arithmetic alone.
const ARITHMETIC: f64 = 1e-9;

fn next_size(need: f64) -> f64 {
    SERIES.into_iter().find(|size| need <= size * (1.0 + ARITHMETIC)).unwrap_or(f64::NAN)
}

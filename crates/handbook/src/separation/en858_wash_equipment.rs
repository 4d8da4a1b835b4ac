//! Formula: flow of automatic washes and high-pressure units by EN 858-2

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::EN_858_TABLES;
use stillrise_units::math::{max, min};
use stillrise_units::{Flow, Ratio};

formula! {
    /// Flow that EN 858-2 counts for automatic vehicle washes and high-pressure units, whatever their nameplates say.
    ///
    /// Two litres per second for each automatic wash, up to 20 bar and for body and chassis only. The first high-pressure
    /// unit counts for two litres per second and each further one for one; beside an automatic wash each counts for one.
    "en858-wash-equipment" "Flow of washes and high-pressure units by EN 858-2"
    fn flow(
        automatic: Ratio = "n_a" "automatic washes" [ONE, ONE: 0.0 .. 20.0 in 0.0 .. 10000.0];
        high_pressure: Ratio = "n_h" "high-pressure units" [ONE, ONE: 0.0 .. 50.0 in 0.0 .. 10000.0];
    ) -> Flow = "Q_s23" "flow of washes and high-pressure units" [L_S, L_S];
    reduced [automatic ONE, high_pressure ONE => L_S] {
        if automatic > 0.0 { 2.0 * automatic + 1.0 * high_pressure }
        else { 2.0 * min(high_pressure, 1.0) + 1.0 * max(high_pressure - 1.0, 0.0) }
    }
    sources [EN_858_TABLES]
    checks [
        "automatic=0, high_pressure=1" => "2.0 L/s", Published(&EN_858_TABLES, "a single high-pressure unit");
        "automatic=1, high_pressure=0" => "2.0 L/s", Published(&EN_858_TABLES, "an automatic wash");
        "automatic=1, high_pressure=1" => "3.0 L/s", ByHand("2 + 1: a unit beside an automatic wash counts for one");
        "automatic=0, high_pressure=3" => "4.0 L/s", ByHand("2 + 1 + 1");
        "automatic=0, high_pressure=0" => "0 L/s", Limit("nothing runs");
    ]
}

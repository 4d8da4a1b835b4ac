//! Formula: frequency factor of the runoff coefficient

use crate::formula;
use crate::page::Evidence::Published;
use crate::sources::DOT_FREQUENCY;
use stillrise_units::{Ratio, Time};

/// Factor by return period, years (Oklahoma and Oregon drainage manuals).
const FACTORS: [(f64, f64); 4] = [(10.0, 1.0), (25.0, 1.1), (50.0, 1.2), (100.0, 1.25)];

fn factor_of(years: f64) -> f64 {
    let mut last = FACTORS[0];
    for row in FACTORS {
        if years <= row.0 {
            let share = if row.0 > last.0 { (years - last.0) / (row.0 - last.0) } else { 0.0 };
            return if years <= last.0 { last.1 } else { last.1 + share * (row.1 - last.1) };
        }
        last = row;
    }
    last.1
}

formula! {
    /// Runoff coefficients are tabulated for storms of 2 to 10 years; rarer storms fall on wetter
    /// ground. Linear between the rows; the product with the coefficient never exceeds 1.
    "frequency-factor" "Frequency factor of the runoff coefficient"
    fn factor(
        years: Time = "T" "return period" [YR, YR: 1.0 .. 100.0 in 0.1 .. 1000.0];
    ) -> Ratio = "C_f" "factor on the runoff coefficient" [ONE, ONE];
    reduced [years YR => ONE] { factor_of(years) }
    helpers [factor_of(f64) "C_f" "the table, 1.0 at 10, 1.1 at 25, 1.2 at 50, 1.25 at 100 years"]
    sources [DOT_FREQUENCY]
    checks [
        "years=10 yr" => "1.0", Published(&DOT_FREQUENCY, "2 to 10 years");
        "years=25 yr" => "1.1", Published(&DOT_FREQUENCY, "25 years");
        "years=50 yr" => "1.2", Published(&DOT_FREQUENCY, "50 years");
        "years=100 yr" => "1.25", Published(&DOT_FREQUENCY, "100 years");
        "years=2 yr" => "1.0", Published(&DOT_FREQUENCY, "2 to 10 years");
    ]
}

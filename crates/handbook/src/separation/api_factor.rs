//! Formula: factor for turbulence and short-circuiting of an API basin

use crate::page::Evidence::{ByHand, Limit, Memory, Published};
use crate::sources::{API_421, API_421_FACTOR, API_EXAMPLE, NZ_PETROLEUM, SWMMWW};
use crate::{choice, formula};
use stillrise_units::Ratio;

/// Short-circuiting, as API 421 is quoted (from memory).
const SHORT_CIRCUIT: f64 = 1.2;

choice! {
    /// Which rounding of the factor; two circulate.
    FactorRounding {
        /// 1.2 times the turbulence factor, not rounded: the default
        Product "product",
        /// the printed row 1.28, 1.37, 1.52, 1.64, 1.74
        Printed "printed",
        /// as printed, but 1.65 at 15, as in a manual of Washington State
        Washington "washington",
    }
}

formula! {
    /// Factor on the basin's area, from the ratio of horizontal to rise velocity.
    ///
    /// Linear between the rows 3, 6, 10, 15, 20 of the published table and down to 1.2 at no flow;
    /// a graph is read 0.01 lower below 3. The table ends at 20: there is no value beyond, nor
    /// need of one, since the ratio is held to 15. The rows are from memory: no admissible text prints them,
    /// two worked examples agree with them. Some manuals leave the factor out and come to basins
    /// that are 1.3 to 1.7 times smaller.
    "api-factor" "Factor for turbulence and short-circuiting of an API basin"
    fn factor(
        ratio: Ratio = "r" "horizontal velocity over rise velocity" [ONE, ONE: 0.0 .. 20.0 in 0.0 .. 20.0];
        rounding: FactorRounding = "rounding" "which rounding of the factor";
    ) -> Ratio = "F" "factor on the area" [ONE, ONE];
    reduced [ratio ONE => ONE] {
        if rounding == FactorRounding::Product { SHORT_CIRCUIT * turbulence(ratio) }
        else if rounding == FactorRounding::Printed { printed_row(ratio) }
        else { washington_row(ratio) }
    }
    constants [SHORT_CIRCUIT "F_s"]
    helpers [
        turbulence(f64) "F_t" "turbulence factor, linear between 1 at 0, 1.07 at 3, 1.14 at 6, 1.27 at 10, 1.37 at 15, 1.45 at 20";
        printed_row(f64) "F_printed" "linear between 1.2 at 0, 1.28 at 3, 1.37 at 6, 1.52 at 10, 1.64 at 15, 1.74 at 20";
        washington_row(f64) "F_washington" "as printed, but 1.65 at 15";
    ]
    sources [API_421, API_421_FACTOR, SWMMWW]
    checks [
        "ratio=10.36, rounding=product" => "1.53", Published(&API_EXAMPLE, "V_H/V_t 10.36: F 1.53");
        "ratio=10.36, rounding=printed" => "1.53", Published(&API_EXAMPLE, "V_H/V_t 10.36: F 1.53");
        "ratio=2.55, rounding=printed" => "1.26" within 0.01 "the source reads a graph",
            Published(&NZ_PETROLEUM, "retail site, V_H/V_t 2.55: F 1.26");
        "ratio=2.5438, rounding=printed" => "1.268", ByHand("1.2 + 0.08 x 2.5438 / 3");
        "ratio=9.2742, rounding=printed" => "1.4928", ByHand("1.37 + 0.15 x 3.2742 / 4");
        "ratio=3, rounding=product" => "1.28", Memory("row of API 421: F_t 1.07");
        "ratio=6, rounding=product" => "1.37", Memory("row of API 421: F_t 1.14");
        "ratio=10, rounding=product" => "1.52", Memory("row of API 421: F_t 1.27");
        "ratio=15, rounding=product" => "1.644", Memory("row of API 421: 1.2 x 1.37, printed there as 1.64");
        "ratio=20, rounding=product" => "1.74", Memory("row of API 421: F_t 1.45");
        "ratio=15, rounding=printed" => "1.64", Memory("row of API 421");
        "ratio=20, rounding=printed" => "1.74", Memory("row of API 421");
        "ratio=15, rounding=washington" => "1.65", Memory("V_H = 15 V_t: F 1.65, L = 24.75 d");
        "ratio=0, rounding=product" => "1.2", Limit("no flow, no turbulence");
        "ratio=20.1, rounding=product" => "outside: ratio", Limit("the table ends at 20");
    ]
}

/// Ratios of the table's rows, with no flow put before them.
const RATIO: [f64; 6] = [0.0, 3.0, 6.0, 10.0, 15.0, 20.0];

fn turbulence(ratio: f64) -> f64 {
    between(&[1.0, 1.07, 1.14, 1.27, 1.37, 1.45], ratio)
}

fn printed_row(ratio: f64) -> f64 {
    between(&[1.2, 1.28, 1.37, 1.52, 1.64, 1.74], ratio)
}

fn washington_row(ratio: f64) -> f64 {
    between(&[1.2, 1.28, 1.37, 1.52, 1.65, 1.74], ratio)
}

fn between(row: &[f64; 6], ratio: f64) -> f64 {
    for (x, y) in RATIO.windows(2).zip(row.windows(2)) {
        if let ([x0, x1], [y0, y1]) = (x, y)
            && ratio <= *x1
        {
            return y0 + (y1 - y0) * (ratio - x0) / (x1 - x0);
        }
    }
    // Only a rounding error above 20 comes here: the domain ends there.
    row[5]
}

//! Formula: mean of results, what was not detected at a share of its reporting limit

use super::count as count_of;
use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::page::{Series, sum_x, sum_xy};
use crate::sources::{DEFINITION, HELSEL};
use stillrise_units::{Concentration, Ratio};

const NUMPY: &str = "numpy 2.4.6, mean of the results with the share put in";

formula! {
    /// Arithmetic mean of the results of a set; each non-detect counts with a share of its reporting limit.
    ///
    /// With the shares 0 and 1 come the least and the most that the mean can be, whatever the non-detects truly
    /// are: the one honest statement where few results were detected. The half is common in reports and has no
    /// theory behind it (Helsel): it stands here for comparison. Where all were detected the share says nothing.
    "sample-mean" "Arithmetic mean of results"
    fn mean(
        results: Series = "C_i|detected" "results, each 1 where it was detected and 0 below its reporting limit" {MG_L, MG_L; ONE, ONE};
        part: Ratio = "p" "share of the reporting limit at which a non-detect counts" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
    ) -> Concentration = "C_mean" "arithmetic mean" [MG_L, MG_L];
    reduced [part ONE => KG_M3] {
        let found = sum_xy(&results);
        let limits = sum_x(&results) - found;
        (found + part * limits) / count(results)
    }
    helpers [count(Series) "n" "number of results"]
    sources [DEFINITION, HELSEL]
    checks [
        "results=[12 mg/L: 1; 8.4 mg/L: 1; 22 mg/L: 1; 15 mg/L: 1; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 11 mg/L: 1; 7.7 mg/L: 1; 18 mg/L: 1], part=0" => "14.1000 mg/L", Library(NUMPY);
        "results=[12 mg/L: 1; 5 mg/L: 0; 8.4 mg/L: 1; 22 mg/L: 1; 5 mg/L: 0; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 10 mg/L: 0; 7.7 mg/L: 1], part=0" => "9.70000 mg/L", Library(NUMPY);
        "results=[12 mg/L: 1; 5 mg/L: 0; 8.4 mg/L: 1; 22 mg/L: 1; 5 mg/L: 0; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 10 mg/L: 0; 7.7 mg/L: 1], part=50 %" => "10.7000 mg/L", Library(NUMPY);
        "results=[12 mg/L: 1; 5 mg/L: 0; 8.4 mg/L: 1; 22 mg/L: 1; 5 mg/L: 0; 6.1 mg/L: 1; 9.8 mg/L: 1; 31 mg/L: 1; 10 mg/L: 0; 7.7 mg/L: 1], part=1" => "11.7000 mg/L", Library(NUMPY);
        "results=[7 mg/L: 1], part=0" => "7.00000 mg/L", Limit("one result is its own mean");
        "results=[5 mg/L: 0; 5 mg/L: 0], part=1" => "5.00000 mg/L", Limit("nothing detected: no more than the reporting limit");
    ]
}

fn count(results: Series) -> f64 {
    count_of(&results)
}

//! The calculation report, and the trail of every value as its annex.

use super::{EVERYBODY, Head, Paper, lacks};
use crate::report;

/// The calculation report.
pub static REPORT: Paper = Paper {
    name: "calculation-report",
    title: "Calculation report",
    about: "For whoever checks the calculation: everything in the order in which it is checked. Each number carries its place in the trail, a document of its own.",
    editions: EVERYBODY,
    head: Head::Cover,
    refers: &[],
    lacks: lacks::nothing,
    make: |r, beside| report::calculation(r, beside.charts),
};

/// What stands beside the report.
pub static ANNEX: Paper = Paper {
    name: "calculation-annex",
    title: "Annex to the calculation report",
    about: "For whoever checks further: what each stage catches by size, zone by zone, solids by size, rules that pass or do not apply, start-up and acceptance.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::nothing,
    make: |r, beside| report::beside(r, beside.charts),
};

/// Every value.
pub static TRAIL: Paper = Paper {
    name: "trail",
    title: "Trail of every value",
    about: "Annex of the calculation report: every value in the order of calculation, with its formula, its inputs and where they come from, and the sources of all formulas.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::trail,
    make: |r, _| report::annex(r),
};

//! Settles an enquiry given as text and prints the unit, the verdicts on the limits and what fails.

#![allow(clippy::print_stdout, reason = "an example shows its result")]

use stillrise_design::enquiry::{range::read_range, read_enquiry};
use stillrise_search::settle;

const ENQUIRY: &str = r#"
[enquiry]
title = "An invented wash bay"
print = "us"

[[stream]]
name = "wash"
flow = "20 gpm"
oil = { kind = "diesel", mean = "120 mg/L" }

[[limit]]
pollutant = "oil and grease"
value = "50 mg/L"
statistic = "daily maximum"
"#;

fn main() {
    let range = read_range(include_str!("../../../ranges/demo.toml")).file;
    let enquiry = match read_enquiry(ENQUIRY, &|_| None) {
        Ok(enquiry) => enquiry,
        Err(faults) => {
            for fault in faults {
                println!("{fault}");
            }
            return;
        }
    };
    let settled = settle(&enquiry, &range);
    if let Some(pick) = &settled.pick {
        println!("taken: {}", pick.name(&range));
    }
    for limit in settled.job.design.performance.iter().flat_map(|p| &p.limits) {
        println!("limit: {}; {}", limit.says(), limit.because);
    }
    for judged in settled.verdicts.iter().filter(|v| v.stands_failed()) {
        println!("fails: {}: {}", judged.rule.title, judged.verdict.says());
    }
    println!("{} values in the trail", settled.job.ledger.entries.len());
}

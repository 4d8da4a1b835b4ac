//! What the files keep that other programs open: drawings, model and workbook, each read back here by a reader that is not ours.
#![allow(clippy::panic, clippy::unwrap_used, reason = "helpers of tests fail as tests do")]

mod drawing;
mod model;
mod outlined;
mod workbook;

use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_search::{Settled, settle};
use stillrise_units::System;

const ENQUIRY: &str = include_str!("../../../../enquiries/vehicle-yard/enquiry.toml");
const RAIN: &str = include_str!("../../../../enquiries/vehicle-yard/rain.csv");
const RANGE: &str = include_str!("../../../../ranges/demo.toml");

fn range() -> Range {
    read_range(RANGE).file
}

/// The vehicle yard in a system of units, with a `[unit]` block and other changes.
fn job(system: System, unit: &str, change: impl Fn(String) -> String) -> Settled {
    let print = match system {
        System::Us => "us",
        System::Si => "si",
    };
    let before = ENQUIRY.split("\n[unit]").next().unwrap_or(ENQUIRY);
    let text = change(before.replace("print = \"us\"", &format!("print = \"{print}\"")));
    let read = read_enquiry(&format!("{text}\n{unit}\n"), &|_| Some(RAIN.as_bytes().to_vec()));
    let enquiry = read.unwrap_or_else(|faults| panic!("{faults:?}"));
    settle(&enquiry, &range())
}

/// Every unit of the demo range in both systems of units.
fn every_unit(mut each: impl FnMut(&str, System, &Settled)) {
    let mut count = 0;
    for model in range().models.iter().filter_map(|m| m.model.0.clone()) {
        for system in [System::Us, System::Si] {
            each(&model, system, &job(system, &format!("[unit]\nmodel = \"{model}\""), |t| t));
            count += 1;
        }
    }
    assert!(count > 6, "the range has units");
}

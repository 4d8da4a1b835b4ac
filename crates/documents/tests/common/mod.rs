//! What tests of documents share: worked jobs with something added, and the vehicle yard in either system with a unit of its own.
#![allow(dead_code, reason = "each test program uses its own part of it")]
#![allow(clippy::panic, reason = "helpers of tests fail as tests do")]

use std::error::Error;
use std::path::{Path, PathBuf};
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_search::{Settled, settle};
use stillrise_units::System;

pub const ENQUIRY: &str = include_str!("../../../../enquiries/vehicle-yard/enquiry.toml");
pub const RAIN: &str = include_str!("../../../../enquiries/vehicle-yard/rain.csv");
const RANGE: &str = include_str!("../../../../ranges/demo.toml");

/// The top of the repository.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The demo range.
pub fn range() -> Range {
    read_range(RANGE).file
}

/// The text of a worked job's enquiry.
pub fn text_of(name: &str) -> Result<String, Box<dyn Error>> {
    Ok(std::fs::read_to_string(root().join("enquiries").join(name).join("enquiry.toml"))?)
}

/// A worked job, with more behind its text.
pub fn job(name: &str, more: &str) -> Result<Settled, Box<dyn Error>> {
    let files = |file: &str| std::fs::read(root().join("enquiries").join(name).join(file)).ok();
    let enquiry = read_enquiry(&(text_of(name)? + more), &files).map_err(|faults| format!("{name}: {faults:?}"))?;
    Ok(settle(&enquiry, &range()))
}

/// The vehicle yard in a system of units, with a `[unit]` block and other changes.
pub fn yard(system: System, unit: &str, change: impl Fn(String) -> String) -> Settled {
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

//! What the files keep that other programs open: drawings, model and workbook, each read back here by a reader that is not ours.
#![allow(clippy::panic, clippy::unwrap_used, reason = "helpers of tests fail as tests do")]

#[path = "../common/mod.rs"]
mod common;
mod drawing;
mod model;
mod outlined;
mod workbook;

use common::{ENQUIRY, range, yard as job};
use stillrise_search::Settled;
use stillrise_units::System;

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

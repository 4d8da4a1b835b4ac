//! The whole chain on worked enquiries with anything done to their text: what is read is settled, never
//! a panic. Runs for `STILLRISE_FUZZ_SECONDS`, 5 when nothing is said.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;
#[path = "../../design/tests/edits/mod.rs"]
mod edits;

use common::{at_data, at_top, demo};
use edits::{edited, edits};
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::{Config, TestRunner};
use std::time::{Duration, Instant};
use stillrise_design::enquiry::read_enquiry;
use stillrise_search::settle;

#[test]
fn any_enquiry_that_is_read_is_settled() {
    let seconds = std::env::var("STILLRISE_FUZZ_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(5);
    let range = demo();
    let worked = ["vehicle-yard", "transformer-yard", "truck-wash"].map(|name| {
        let folder = at_top("enquiries").join(name);
        let text = std::fs::read_to_string(folder.join("enquiry.toml")).expect("a worked enquiry");
        (folder, text)
    });
    let laboratory = at_data("laboratory.toml");
    let text = std::fs::read_to_string(&laboratory).expect("the bay with laboratory results");
    let mut jobs: Vec<_> = worked.into_iter().chain([(at_data(""), text)]).collect();
    // Containments stand in no worked job of these.
    jobs.push((at_data(""), std::fs::read_to_string(at_data("pit.toml")).expect("a base enquiry")));
    // A unit that stands, with changes and days, so that what rates it is reached as well.
    jobs.push((at_data(""), std::fs::read_to_string(at_data("changed.toml")).expect("an enquiry of these tests")));
    // What is asked for by the European standard stands in none of them either.
    let asked = "[asked]\nnominal_size = \"NS 10\"\n[european]\nclass = \"I\"\nbypass = true\ntaps = [\"DN15 x 2\", \"3 x DN 25\"]\nhigh_pressure = 2\nrain_flow = \"3 L/s\"\n";
    let wash = std::fs::read_to_string(at_data("wash.toml")).expect("a base enquiry");
    jobs.push((at_data(""), format!("{wash}\n{asked}")));
    let settled = std::cell::Cell::new(0);
    let end = Instant::now() + Duration::from_secs(seconds);
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: 40, failure_persistence: None, ..Config::default() });
        runner
            .run(&(any::<Index>(), edits()), |(which, edits)| {
                let (folder, text) = &jobs[which.index(jobs.len())];
                let files = |name: &str| std::fs::read(folder.join(name)).ok();
                if let Ok(enquiry) = read_enquiry(&edited(text, &edits), &files) {
                    let mut job = settle(&enquiry, &range);
                    if !enquiry.observed.is_empty() {
                        // Whatever it answers, it answers.
                        let _rated = job.diagnose();
                    }
                    settled.set(settled.get() + 1);
                }
                Ok(())
            })
            .expect("no enquiry breaks the chain");
    }
    assert!(settled.get() > 0);
}

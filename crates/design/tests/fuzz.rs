//! A worked enquiry, its rain table and the demo range with anything done to their text: each is read
//! or refused with place, reason and remedy, never a panic. Runs for `STILLRISE_FUZZ_SECONDS`, 5 when
//! nothing is said.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod edits;

use edits::{edited, edits};
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::{Config, TestRunner};
use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use stillrise_design::enquiry::rain_table::read_table;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_units::Fault;

fn seconds() -> u64 {
    std::env::var("STILLRISE_FUZZ_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(5)
}

fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn complete(faults: &[Fault]) -> Result<(), TestCaseError> {
    prop_assert!(!faults.is_empty(), "refused without a fault");
    for fault in faults {
        let full = !fault.place.is_empty() && !fault.reason.is_empty() && !fault.remedy.is_empty();
        prop_assert!(full, "a fault lacks place, reason or remedy: {fault:?}");
    }
    Ok(())
}

fn fuzz(texts: &[(PathBuf, String)], read: impl Fn(&Path, &str) -> Result<(), Vec<Fault>>) {
    let (taken, refused) = (Cell::new(0_u32), Cell::new(0_u32));
    let end = Instant::now() + Duration::from_secs(seconds());
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: 200, failure_persistence: None, ..Config::default() });
        runner
            .run(&(any::<Index>(), edits()), |(which, edits)| {
                let (folder, text) = &texts[which.index(texts.len())];
                match read(folder, &edited(text, &edits)) {
                    Ok(()) => taken.set(taken.get() + 1),
                    Err(faults) => {
                        refused.set(refused.get() + 1);
                        complete(&faults)?;
                    }
                }
                Ok(())
            })
            .expect("no text breaks the reader");
    }
    assert!(
        taken.get() > 0 && refused.get() > 0,
        "{} taken, {} refused: nothing was tried",
        taken.get(),
        refused.get()
    );
}

fn worked() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(top().join("enquiries")).expect("worked jobs").flatten() {
        let file = entry.path().join("enquiry.toml");
        if file.exists() {
            found.push((entry.path(), std::fs::read_to_string(file).expect("text")));
        }
    }
    found.sort();
    assert!(found.len() >= 3);
    found
}

#[test]
fn any_enquiry_is_read_or_refused_with_a_remedy() {
    fuzz(&worked(), |folder, text| read_enquiry(text, &|name| std::fs::read(folder.join(name)).ok()).map(drop));
}

#[test]
fn any_range_is_read_or_refused_with_a_remedy() {
    let file = top().join("ranges/demo.toml");
    let text = std::fs::read_to_string(&file).expect("the demo range");
    fuzz(&[(file, text)], |_, text| {
        let faults = read_range(text).faults;
        if faults.is_empty() { Ok(()) } else { Err(faults) }
    });
}

#[test]
fn any_rain_table_is_read_or_refused_with_a_remedy() {
    let tables: Vec<(PathBuf, String)> = worked()
        .into_iter()
        .filter_map(|(folder, _)| std::fs::read_to_string(folder.join("rain.csv")).ok().map(|text| (folder, text)))
        .collect();
    assert!(!tables.is_empty());
    fuzz(&tables, |_, text| read_table(text.as_bytes()).map(drop));
}

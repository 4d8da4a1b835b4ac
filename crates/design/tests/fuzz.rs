//! A worked enquiry, its rain table and the demo range with anything done to their text: each is read
//! or refused with place, reason and remedy, never a panic, and what is read reads the same again.
//! Runs for `STILLRISE_FUZZ_SECONDS`, 5 when nothing is said; files beside the
//! enquiry a third of it.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod edits;

use edits::{Edit, edited, edits};
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::{Config, TestRunner};
use std::cell::Cell;
use std::fmt::Debug;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use stillrise_design::enquiry::rain_table::read_table;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_units::Fault;

fn seconds() -> u64 {
    std::env::var("STILLRISE_FUZZ_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(5)
}

/// The time of a file that is small beside the enquiry, or read within it.
fn third() -> u64 {
    seconds().div_ceil(3)
}

fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// What is read instead of a worked text.
#[derive(Debug, Clone)]
enum Input {
    /// A worked text with edits.
    Edited(Vec<Edit>),
    /// A worked text with bits turned over, as a broken transfer leaves it.
    Flipped(Vec<(Index, u8)>),
    /// A worked text that ends early.
    Cut(Index),
    /// Anything at all.
    Bytes(Vec<u8>),
}

fn inputs() -> impl Strategy<Value = Input> {
    let text = prop_oneof![
        any::<String>(),
        r"\PC{0,80}",
        // What looks like a file of blocks, and what looks like a table.
        r#"(\[{1,2}[a-z]{1,8}\]{1,2}\n|[a-z_]{1,9} ?= ?("[^"]{0,9}"|[-0-9.e]{1,9}|\[\]|\{\}|true)\n){0,9}"#,
        r"([0-9a-z./ -]{0,8},){0,4}(\n([0-9]{1,5} ?(min|h|in|mm|in/h)?,){0,4}){0,6}",
    ];
    prop_oneof![
        8 => edits().prop_map(Input::Edited),
        3 => prop::collection::vec((any::<Index>(), 0_u8..8), 1..4).prop_map(Input::Flipped),
        1 => any::<Index>().prop_map(Input::Cut),
        1 => text.prop_map(|t| Input::Bytes(t.into_bytes())),
        1 => prop::collection::vec(any::<u8>(), 0..200).prop_map(Input::Bytes),
    ]
}

fn bytes_of(worked: &str, input: &Input) -> Vec<u8> {
    match input {
        Input::Edited(edits) => edited(worked, edits).into_bytes(),
        Input::Flipped(flips) => {
            let mut bytes = worked.as_bytes().to_vec();
            let count = bytes.len();
            for (at, bit) in flips {
                bytes[at.index(count)] ^= 1 << bit;
            }
            bytes
        }
        Input::Cut(at) => worked.as_bytes()[..at.index(worked.len() + 1)].to_vec(),
        Input::Bytes(bytes) => bytes.clone(),
    }
}

fn complete(faults: &[Fault]) -> Result<(), TestCaseError> {
    prop_assert!(!faults.is_empty(), "refused without a fault");
    for fault in faults {
        let full = [&fault.place, &fault.reason, &fault.remedy].iter().all(|part| !part.trim().is_empty());
        prop_assert!(full, "a fault lacks place, reason or remedy: {fault:?}");
    }
    Ok(())
}

fn fuzz<T: Debug>(texts: &[(PathBuf, String)], seconds: u64, read: impl Fn(&Path, &[u8]) -> Result<T, Vec<Fault>>) {
    let (taken, refused) = (Cell::new(0_u32), Cell::new(0_u32));
    let end = Instant::now() + Duration::from_secs(seconds);
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: 200, failure_persistence: None, ..Config::default() });
        runner
            .run(&(any::<Index>(), inputs()), |(which, input)| {
                let (folder, text) = &texts[which.index(texts.len())];
                let bytes = bytes_of(text, &input);
                match read(folder, &bytes) {
                    Ok(first) => {
                        taken.set(taken.get() + 1);
                        let again = read(folder, &bytes).map(|second| format!("{second:?}"));
                        prop_assert_eq!(again, Ok(format!("{first:?}")), "the same text reads differently");
                    }
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

/// Bytes that are no text are refused before the reader sees them; here they become marks of replacement.
fn text_of(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn worked() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(top().join("enquiries")).expect("worked jobs").flatten() {
        let file = entry.path().join("enquiry.toml");
        if file.exists() {
            found.push((entry.path(), std::fs::read_to_string(file).expect("text")));
        }
    }
    // The one that has laboratory results.
    let laboratory = top().join("crates/search/tests/data/laboratory.toml");
    let text = std::fs::read_to_string(&laboratory).expect("text");
    found.push((laboratory.with_file_name(""), text));
    found.sort();
    // One with containments, which no worked job of the first had.
    let pit = top().join("crates/search/tests/data/pit.toml");
    let text = std::fs::read_to_string(&pit).expect("text");
    found.push((top().join("crates/search/tests/data"), text));
    assert!(found.len() >= 5);
    found
}

fn tables() -> Vec<(PathBuf, String)> {
    let tables: Vec<(PathBuf, String)> = worked()
        .into_iter()
        .filter_map(|(folder, _)| std::fs::read_to_string(folder.join("rain.csv")).ok().map(|text| (folder, text)))
        .collect();
    assert!(!tables.is_empty());
    tables
}

fn ranges() -> Vec<(PathBuf, String)> {
    let file = top().join("ranges/demo.toml");
    let text = std::fs::read_to_string(&file).expect("the demo range");
    vec![(file, text)]
}

#[test]
fn any_enquiry_is_read_or_refused_with_a_remedy() {
    fuzz(&worked(), seconds(), |folder, bytes| {
        read_enquiry(&text_of(bytes), &|name| std::fs::read(folder.join(name)).ok())
    });
}

/// The files that an enquiry names are as broken as the enquiry itself.
#[test]
fn any_named_file_is_read_or_refused_with_a_remedy() {
    let enquiry = "[enquiry]\ntitle = \"x\"\n[[surface]]\narea = \"1 acre\"\n[rain]\ntable = \"rain.csv\"\n[unit]\nfrom = \"range.toml\"\n";
    let named: Vec<(PathBuf, String)> = tables().into_iter().chain(ranges()).collect();
    let (table, range) = (&named[0].1, &named[named.len() - 1].1);
    fuzz(&named, third(), |from, bytes| {
        let as_range = from.extension().is_some();
        let files = |name: &str| match (name, as_range) {
            ("range.toml", true) | ("rain.csv", false) => Some(bytes.to_vec()),
            ("range.toml", false) => Some(range.clone().into_bytes()),
            _ => Some(table.clone().into_bytes()),
        };
        read_enquiry(enquiry, &files)
    });
}

#[test]
fn any_range_is_read_or_refused_with_a_remedy() {
    fuzz(&ranges(), third(), |_, bytes| {
        let outcome = read_range(&text_of(bytes));
        if outcome.faults.is_empty() { Ok(outcome.file) } else { Err(outcome.faults) }
    });
}

/// A table that is read can be used: it has a return period, and its rain is a number above zero.
#[test]
fn any_rain_table_is_read_or_refused_with_a_remedy() {
    fuzz(&tables(), third(), |_, bytes| {
        let table = read_table(bytes)?;
        assert!(!table.columns.is_empty(), "a table without a return period was taken");
        for (years, series) in &table.columns {
            assert!(years.is_finite() && *years > 0.0 && series.0.len() >= 2, "{table:?}");
            assert!(series.0.iter().all(|(t, d)| t.is_finite() && d.is_finite() && *t > 0.0 && *d > 0.0), "{table:?}");
        }
        Ok(table)
    });
}

/// A file says the same whichever machine ended its lines, and whether or not it marks itself as UTF-8.
#[test]
fn line_ends_and_a_byte_order_mark_change_nothing() {
    for (folder, text) in worked() {
        let read = |text: &str| read_enquiry(text, &|name| std::fs::read(folder.join(name)).ok());
        let plain = format!("{:?}", read(&text).expect("a worked enquiry"));
        for other in [text.replace('\n', "\r\n"), format!("\u{feff}{text}"), text.trim_end().to_owned()] {
            assert_eq!(read(&other).map(|e| format!("{e:?}")), Ok(plain.clone()), "{}", folder.display());
        }
    }
    for (_, text) in tables() {
        let plain = read_table(text.as_bytes()).expect("a worked table");
        assert_eq!(read_table(text.replace('\n', "\r\n").as_bytes()), Ok(plain.clone()));
        assert_eq!(read_table(format!("\u{feff}{text}").as_bytes()), Ok(plain));
    }
}

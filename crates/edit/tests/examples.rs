//! The declared example of every key of every block, set by its path, is read without a fault of its own.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{after, set};
use std::fs;
use std::path::PathBuf;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_design::enquiry::{blocks, read_enquiry};
use stillrise_edit::{Action, Heading, Path, said};
use toml_edit::{Document, Value};

const BASE: &str = "# a comment\n[enquiry]\ntitle = \"x\"\nprint = \"us\"\n\n[[stream]]\nname = \"bus wash rinse\"\nflow = \"5 gpm\"\n";

/// What else must stand for a key to make sense: its path, the other key, that one's value.
const BESIDE: &[(&str, &str, &str)] = &[
    ("shear.fitting", "kind", "fitting"),
    ("shear.pump", "kind", "pump"),
    ("shear.pump_power", "kind", "pump"),
    ("shear.pump_head", "kind", "pump"),
    ("shear.pump_speed", "kind", "pump"),
    ("shear.impeller", "kind", "pump"),
    ("shear.impeller_width", "kind", "pump"),
    ("shear.efficiency", "kind", "pump"),
    ("shear.head_coefficient", "kind", "pump"),
    ("containment.drained_in_rain", "drain_rate", "5 gpm"),
    ("spill.fire_duration", "fire_flow", "5 gpm"),
    ("samples.dates", "results", "12 mg/L; 9 mg/L"),
    ("samples.after_silica_gel", "results", "12 mg/L; 9 mg/L"),
];

/// An example as a person would type it.
fn typed(like: &str) -> String {
    let text = format!("x = {like}\n");
    let document = Document::parse(text.as_str()).expect("an example is TOML");
    match document.get("x").and_then(|item| item.as_value()) {
        Some(Value::Array(list)) => {
            list.iter().map(|item| item.as_str().expect("a text").to_owned()).collect::<Vec<_>>().join("\n")
        }
        Some(Value::String(text)) => text.value().clone(),
        Some(_) => like.to_owned(),
        None => panic!("{like}"),
    }
}

/// The keys of a block and of the tables in it, each with its names from the block on.
fn keys(block: &'static BlockSpec, before: &str, found: &mut Vec<(String, &'static KeySpec)>) {
    for key in block.keys() {
        let own = format!("{before}{}", key.name);
        match key.kind {
            KeyKind::Table(inner) => keys(inner(), &format!("{own}."), found),
            _ => found.push((own, key)),
        }
    }
}

fn file(name: &str) -> Option<Vec<u8>> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    match name {
        "rain.csv" => fs::read(root.join("enquiries/vehicle-yard/rain.csv")).ok(),
        "range.toml" => fs::read_dir(root.join("ranges")).ok()?.flatten().find_map(|entry| {
            let path = entry.path();
            if path.is_dir() { fs::read(path.join("range.toml")).ok() } else { fs::read(path).ok() }
        }),
        _ => None,
    }
}

#[test]
fn every_example_is_read() {
    let (mut count, mut refused) = (0, Vec::new());
    for (block, many) in blocks() {
        let mut all = Vec::new();
        keys(block, "", &mut all);
        let needed: Vec<(String, String)> = block
            .keys()
            .into_iter()
            .filter(|key| key.needed)
            .map(|key| (key.name.to_owned(), typed(key.like)))
            .collect();
        for (names, key) in all {
            let base = if many {
                after(BASE, &Action::AddBlock { block: block.name.to_owned(), keys: needed.clone() })
            } else {
                BASE.to_owned()
            };
            let beside = BESIDE.iter().filter(|(of, ..)| *of == format!("{}.{names}", block.name));
            let number = many.then(|| base.matches(&format!("[[{}]]", block.name)).count());
            let heading = Heading::new(block.name, number, None).expect("a block");
            let base = beside.fold(base, |base, (_, key, value)| {
                after(&base, &set(&Path::new(heading.clone(), key).expect("a key"), value, None))
            });
            let path = Path::new(heading, &names).expect("a key");
            let value = typed(key.like);
            let out = after(&base, &set(&path, &value, None));
            assert!(out.starts_with("# a comment\n"), "{out}");
            let faults = read_enquiry(&out, &file).err().unwrap_or_default();
            let own = format!(": {}", names.replace('.', ": "));
            // A name of something that does not stand is no fault of how it is written.
            let is_own = |place: &str| place.ends_with(&own) || place.contains(&format!("{own},"));
            let named = |reason: &str| reason.contains(" is called \"");
            let wrong = faults.iter().find(|f| {
                f.place.contains("the file") && f.reason.contains("not a")
                    || is_own(&f.place) && !named(&f.reason)
                    || f.reason.contains("is not a key of this block")
            });
            if let Some(fault) = wrong {
                refused.push(format!("{path} = {value}: {fault}"));
            }
            let standing = said(&out).expect("TOML");
            let is_it = |said: &&stillrise_edit::Said| {
                core::ptr::eq(said.path.key(), key) && said.claims[0].value.replace("; ", "\n") == value
            };
            assert!(standing.iter().any(|said| is_it(&said)), "{path} = {value}: {standing:?}\n{out}");
            count += 1;
        }
    }
    assert!(refused.is_empty(), "{}", refused.join("\n"));
    assert!(count > 300, "{count} keys");
}

//! A revision is issued, kept, and held against what stands later.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{Tree, job, run, tree};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;
use tempfile::TempDir;

/// A worked job that goes out.
fn released() -> TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    fs::copy(job("vehicle-yard").join("rain.csv"), dir.path().join("rain.csv")).expect("copied");
    let text = fs::read_to_string(job("vehicle-yard").join("enquiry.toml")).expect("read");
    write(dir.path(), &text.replace("\"preliminary\"", "\"for approval\""));
    dir
}

fn write(dir: &Path, text: &str) {
    fs::write(dir.join("enquiry.toml"), text).expect("written");
}

fn text(dir: &Path) -> String {
    fs::read_to_string(dir.join("enquiry.toml")).expect("read")
}

/// All files but the one by which programs take turns.
fn files(dir: &Path) -> Tree {
    tree(dir).into_iter().filter(|(name, _)| !name.ends_with(".lock")).collect()
}

fn issued(dir: &Path, more: &[&str]) -> (i32, String, String) {
    run(dir, &[&["issue", "enquiry.toml"], more].concat())
}

fn changes(dir: &Path) -> Value {
    let (_, out, said) = run(dir, &["compare", "enquiry.toml", "--with-issued", "A", "--json"]);
    serde_json::from_str(&out).unwrap_or_else(|_| panic!("no JSON: {out}{said}"))
}

#[test]
fn all_that_bars_an_issue_is_told_at_once_and_nothing_is_written() {
    let dir = released();
    let text = text(dir.path());
    let lines = |line: &&str| !["revision", "date", "status"].iter().any(|key| line.starts_with(key));
    let bare: Vec<&str> = text.lines().filter(lines).collect();
    // A rule fails as well: the decision names none.
    write(
        dir.path(),
        &format!("{}\n[[decision]]\nrule = \"no-such-rule\"\ndecision = \"open\"\nbecause = \"x\"\n", bare.join("\n")),
    );
    let before = files(dir.path());
    let (code, _, said) = issued(dir.path(), &[]);
    assert_eq!(code, 2, "{said}");
    for word in ["enquiry: revision", "enquiry: date", "enquiry: status", "rule unknown-decision", "4 faults"] {
        assert!(said.contains(word), "{word}: {said}");
    }
    assert_eq!(files(dir.path()), before);
    // One decision on it, which nobody signed, is not enough.
    let decided = |more: &str| {
        let own =
            "[[decision]]\nrule = \"unknown-decision\"\ndecision = \"accepted\"\nbecause = \"kept for the record\"\n";
        format!("{text}\n[[decision]]\nrule = \"no-such-rule\"\ndecision = \"open\"\nbecause = \"x\"\n{own}{more}")
    };
    write(dir.path(), &decided(""));
    let (code, _, said) = issued(dir.path(), &[]);
    assert!(code == 2 && said.contains("neither name nor date"), "{code} {said}");
    write(dir.path(), &decided("who = \"J. Example\"\ndate = \"2026-03-02\"\n"));
    let (code, _, said) = issued(dir.path(), &[]);
    assert_eq!(code, 0, "{said}");
    let (_, out, _) = run(dir.path(), &["size", "enquiry.toml"]);
    let plain = out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(plain.contains("Decided: accepted: kept for the record (J. Example, 2026-03-02)."), "{out}");
}

#[test]
fn a_set_holds_every_input_with_its_hash_and_is_never_replaced() {
    let dir = released();
    let (code, _, said) = issued(dir.path(), &[]);
    assert_eq!(code, 0, "{said}");
    let set = files(&dir.path().join("issued-A"));
    let names: Vec<&str> = set.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["inputs/enquiry.toml", "inputs/rain.csv", "manifest.json", "results.json"]);
    let of = |name: &str| &set.iter().find(|(own, _)| own == name).expect("in the set").1;
    assert_eq!(of("inputs/enquiry.toml"), text(dir.path()).as_bytes());
    let manifest: Value = serde_json::from_slice(of("manifest.json")).expect("JSON");
    for input in manifest["inputs"].as_array().expect("a list") {
        assert_eq!(input["sha256"], sha256(of(input["file"].as_str().expect("a name"))).as_str());
    }
    assert_eq!(manifest["results"]["sha256"], sha256(of("results.json")).as_str());
    let results: Value = serde_json::from_slice(of("results.json")).expect("JSON");
    let numbers = results["numbers"].as_array().expect("a list");
    assert_eq!(manifest["results"]["numbers"], numbers.len());
    let mut ids: Vec<&str> = numbers.iter().filter_map(|n| n["id"].as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), numbers.len(), "each number has a name of its own");
    // The same again is no harm; another content is refused.
    let (code, out, _) = issued(dir.path(), &[]);
    assert!(code == 0 && out.contains("stands as it was issued"), "{out}");
    write(dir.path(), &text(dir.path()).replace("title = \"Bus yard", "title = \"Another yard"));
    let (code, _, said) = issued(dir.path(), &[]);
    assert!(code == 2 && said.contains("was issued with another content of enquiry.toml"), "{said}");
    assert_eq!(files(&dir.path().join("issued-A")), set);
    // As another revision it goes out, and the enquiry says so.
    let (code, _, said) = issued(dir.path(), &["--revision", "B"]);
    assert_eq!(code, 0, "{said}");
    assert!(text(dir.path()).contains("revision = \"B\"") && dir.path().join("issued-B").is_dir());
    assert_eq!(files(&dir.path().join("issued-A")), set);
}

#[test]
fn what_changed_is_told_apart_by_inputs_and_by_the_tool() {
    let dir = released();
    assert_eq!(issued(dir.path(), &[]).0, 0);
    let same = changes(dir.path());
    assert_eq!((&same["because"], same["numbers"].as_array().map(Vec::len)), (&Value::from("nothing"), Some(0)));
    // More fouling: numbers differ by the inputs.
    let own = text(dir.path());
    write(dir.path(), &format!("{own}\n[method]\nfouling = \"25 %\"\n"));
    let (code, out, said) = run(dir.path(), &["compare", "enquiry.toml", "--with-issued"]);
    assert_eq!(code, 0, "{out}{said}");
    assert!(out.contains("The inputs changed") && out.contains("20 % -> 25 %"), "{out}");
    let found = changes(dir.path());
    assert_eq!(found["because"], "inputs");
    let numbers = found["numbers"].as_array().expect("a list");
    assert!(numbers.len() > 3 && numbers.iter().all(|n| n["by"] == "inputs"), "{numbers:?}");
    assert_eq!(found["inputs"].as_array().map(Vec::len), Some(1));
    write(dir.path(), &own);
    // As if another version had issued it: the same inputs, and one number was another.
    let set = dir.path().join("issued-A");
    let results = fs::read_to_string(set.join("results.json")).expect("read");
    let line = results.lines().find(|line| line.contains("reserve of plate area")).expect("a line");
    let other = results.replace(line, &line.replace("\"value\":0.15", "\"value\":0.16").replace("0.0,", "0.01,"));
    assert_ne!(results, other, "{line}");
    fs::write(set.join("results.json"), &other).expect("written");
    let (code, _, said) = run(dir.path(), &["compare", "enquiry.toml", "--with-issued"]);
    assert!(code == 2 && said.contains("was changed since the revision was issued"), "{said}");
    let manifest = fs::read_to_string(set.join("manifest.json")).expect("read");
    let manifest = manifest.replace(&sha256(results.as_bytes()), &sha256(other.as_bytes()));
    fs::write(set.join("manifest.json"), manifest.replace("\"version\": \"", "\"version\": \"0.0.")).expect("written");
    let (code, out, _) = run(dir.path(), &["compare", "enquiry.toml", "--with-issued"]);
    assert_eq!(code, 1, "{out}");
    assert!(
        out.contains("The inputs are the same, and 1 number differ") && out.contains("because the tool changed"),
        "{out}"
    );
    let found = changes(dir.path());
    assert_eq!((&found["because"], &found["numbers"][0]["by"]), (&Value::from("tool"), &Value::from("tool")));
    // With both, each is told by itself.
    write(dir.path(), &format!("{own}\n[method]\nfouling = \"25 %\"\n"));
    assert_eq!(changes(dir.path())["because"], "both");
}

#[test]
fn a_text_kept_alone_by_an_earlier_version_is_still_read() {
    let dir = released();
    fs::write(dir.path().join("issued-A.toml"), text(dir.path())).expect("written");
    let found = changes(dir.path());
    assert_eq!((&found["because"], &found["tool"]["issued"]), (&Value::from("text alone"), &Value::Null));
    write(dir.path(), &format!("{}\n[method]\nfouling = \"25 %\"\n", text(dir.path())));
    let found = changes(dir.path());
    assert!(found["numbers"].as_array().is_some_and(|all| all.len() > 3));
    assert!(found["says"].as_str().is_some_and(|says| says.contains("text of the enquiry alone was kept")));
    let (code, _, said) = issued(dir.path(), &[]);
    assert!(code == 2 && said.contains("was issued with another text"), "{said}");
}

#[test]
fn what_is_answered_has_the_shape_that_is_stated() {
    let dir = released();
    assert_eq!(issued(dir.path(), &[]).0, 0);
    let manifest = fs::read(dir.path().join("issued-A/manifest.json")).expect("read");
    let manifest: Value = serde_json::from_slice(&manifest).expect("JSON");
    for (of, value) in [("issued", manifest), ("changes", changes(dir.path()))] {
        let (_, schema, _) = run(dir.path(), &["schema", of]);
        let schema: Value = serde_json::from_str(&schema).expect("JSON");
        let (stated, found) = (schema["properties"].as_object().expect("some"), value.as_object().expect("an object"));
        assert_eq!(stated.keys().collect::<Vec<_>>(), found.keys().collect::<Vec<_>>(), "{of}");
    }
}

fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

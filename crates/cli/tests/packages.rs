//! Packages: whole or not at all, hashed, the same twice, different by edition.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{job, program, run, tree};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::fs;
use std::process::Stdio;
use std::thread::sleep;
use std::time::Duration;

fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}

#[test]
fn a_package_holds_what_its_manifest_says_and_is_the_same_twice() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = job("vehicle-yard").to_string_lossy().into_owned();
    let (code, _, err) = run(dir.path(), &["submittal", &path, "--out", "one"]);
    assert_eq!(code, 0, "{err}");
    let files = tree(&dir.path().join("one"));
    let manifest: Value =
        serde_json::from_slice(&files.iter().find(|f| f.0 == "manifest.json").expect("a manifest").1).expect("JSON");
    let listed = manifest["files"].as_array().expect("files");
    assert_eq!(listed.len() + 1, files.len());
    for file in listed {
        let name = file["name"].as_str().expect("a name");
        let bytes = &files.iter().find(|f| f.0 == name).expect("in the package").1;
        assert_eq!(file["sha256"].as_str(), Some(hash(bytes).as_str()), "{name}");
    }
    for name in ["calculation-report.pdf", "long-section.svg", "result.json", "trail.txt", "sheet.txt"] {
        assert!(files.iter().any(|f| f.0 == name), "{name}");
    }
    let report = &files.iter().find(|f| f.0 == "calculation-report.pdf").expect("a report").1;
    assert!(report.starts_with(b"%PDF-") && report.len() > 50_000);
    // Replacing a package of ours gives the same bytes.
    let (code, ..) = run(dir.path(), &["submittal", &path, "--out", "one"]);
    assert_eq!(code, 0);
    assert_eq!(files, tree(&dir.path().join("one")));
    assert_eq!(fs::read_dir(dir.path()).expect("readable").count(), 1, "nothing is left beside it");
}

#[test]
fn editions_differ_in_what_is_ours() {
    let dir = tempfile::tempdir().expect("a folder");
    let enquiry = dir.path().join("job");
    fs::create_dir(&enquiry).expect("made");
    let text = fs::read_to_string(job("transformer-yard").join("enquiry.toml")).expect("read");
    let decided = format!(
        "{text}\n[[decision]]\nrule = \"frost-outdoors\"\ndecision = \"by others\"\nbecause = \"tracing by others\"\nwho = \"Q. Inventedname\"\n"
    );
    fs::write(enquiry.join("enquiry.toml"), decided).expect("written");
    for (edition, shown) in [("client", false), ("us", true)] {
        let (code, _, err) = run(dir.path(), &["submittal", "job", "--for", edition, "--out", edition]);
        assert!(code <= 1, "{err}");
        let result = fs::read_to_string(dir.path().join(edition).join("result.json")).expect("read");
        assert_eq!(result.contains("Q. Inventedname"), shown, "{edition}");
        let result: Value = serde_json::from_str(&result).expect("JSON");
        assert_eq!(result["train"]["price"].is_object(), shown, "{edition}");
    }
}

#[test]
fn a_folder_that_is_not_ours_is_left_alone() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = job("vehicle-yard").to_string_lossy().into_owned();
    fs::create_dir(dir.path().join("mine")).expect("made");
    fs::write(dir.path().join("mine/letter.txt"), "keep").expect("written");
    let (code, out, err) = run(dir.path(), &["submittal", &path, "--out", "mine"]);
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(err.contains("no manifest of ours"), "{err}");
    assert_eq!(tree(&dir.path().join("mine")), vec![("letter.txt".to_owned(), b"keep".to_vec())]);
    // A file where a folder should be made: the machine's failure, and nothing is left.
    fs::write(dir.path().join("file"), "x").expect("written");
    let (code, _, err) = run(dir.path(), &["submittal", &path, "--out", "file/package"]);
    assert_eq!(code, 3, "{err}");
    assert!(err.contains("nothing was changed"), "{err}");
    assert_eq!(fs::read_dir(dir.path()).expect("readable").count(), 2);
}

#[test]
fn an_interrupted_write_leaves_the_old_package_or_none() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = job("transformer-yard").to_string_lossy().into_owned();
    let (code, ..) = run(dir.path(), &["submittal", &path, "--out", "package"]);
    assert_eq!(code, 1);
    let whole = tree(&dir.path().join("package"));
    for wait in [0, 5, 50, 200, 800, 2000] {
        let mut child = program()
            .current_dir(dir.path())
            .args(["submittal", &path, "--out", "package"])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("starts");
        sleep(Duration::from_millis(wait));
        let _ = child.kill();
        let _ = child.wait();
        assert_eq!(tree(&dir.path().join("package")), whole, "after {wait} ms");
    }
}

//! Packages: whole or not at all, hashed, the same twice, different by edition.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Tree, job, program, run, tree};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::thread::sleep;
use std::time::{Duration, Instant};

fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}

fn file<'a>(files: &'a Tree, name: &str) -> &'a [u8] {
    let names: Vec<&str> = files.iter().map(|f| f.0.as_str()).collect();
    let at = names.iter().position(|n| *n == name);
    assert!(at.is_some(), "no {name} among {names:?}");
    &files[at.unwrap_or_default()].1
}

fn json(files: &Tree, name: &str) -> Value {
    serde_json::from_slice(file(files, name)).expect("JSON")
}

/// The manifest names every other file of the folder once, with its length and hash.
fn manifest_agrees(files: &Tree) {
    let manifest = json(files, "manifest.json");
    assert_eq!(manifest["is"], "stillrise submittal");
    let listed = manifest["files"].as_array().expect("files");
    let names: BTreeSet<&str> = listed.iter().filter_map(|f| f["name"].as_str()).collect();
    let there: BTreeSet<&str> = files.iter().map(|f| f.0.as_str()).filter(|n| *n != "manifest.json").collect();
    assert_eq!(names, there);
    assert_eq!(listed.len(), names.len(), "a name is listed twice");
    for entry in listed {
        let name = entry["name"].as_str().expect("a name");
        let bytes = file(files, name);
        assert_eq!(entry["sha256"].as_str(), Some(hash(bytes).as_str()), "{name}");
        assert_eq!(entry["bytes"].as_u64(), Some(bytes.len() as u64), "{name}");
    }
}

const TOO_SHORT: &str = r#"[unit.dimensions]
model = "X-60"
rated_flow = "120 gpm"
rated_basis = "60 um, oil of 850 kg/m3, 60 °F, clean"
length = "24 in"
width = "48 in"
height = "68 in"
outlet_invert = "46 in"
outlet_pipe = "6 in"
inlet_invert = "56 in"
inlet_pipe = "6 in"
inlet_length = "12 in"
hopper_length = "36 in"
hopper_bottom = "6 in"
hopper_depth = "20 in"
pack_length = "60 in"
pack_height = "24 in"
pack_bottom = "6 in"
gap = "0.75 in"
angle = "55 deg"
pack_lifts_out = true
module_weight = "160 lb"
mesh = "4 in"
retention_length = "18 in"
well_length = "14 in"
lip = "10 in"
oil_draw = "45 in"
float_density = "930 kg/m3"
"#;

/// An enquiry that stops early, so that its package is soon made: the internals do not fit into its unit.
fn short(dir: &Path, name: &str) {
    let text =
        format!("[enquiry]\ntitle = \"short\"\nproject = \"{name}\"\n[[stream]]\nflow = \"45 gpm\"\n{TOO_SHORT}");
    fs::write(dir.join(format!("{name}.toml")), text).expect("written");
}

fn made(dir: &Path, name: &str, out: &str) -> Tree {
    let (code, said, err) = run(dir, &["submittal", &format!("{name}.toml"), "--out", out]);
    assert!(code <= 1 && err.is_empty(), "{code} {said}{err}");
    tree(&dir.join(out))
}

fn beside(dir: &Path) -> usize {
    fs::read_dir(dir).expect("readable").count()
}

#[test]
fn a_package_holds_every_document_and_is_the_same_twice() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = job("vehicle-yard").to_string_lossy().into_owned();
    let (code, said, err) = run(dir.path(), &["submittal", &path, "--for", "us", "--out", "one", "--json"]);
    assert_eq!((code, err.as_str()), (0, ""));
    let files = tree(&dir.path().join("one"));
    manifest_agrees(&files);
    for name in [
        "offer-summary.pdf",
        "calculation-report.pdf",
        "trail.pdf",
        "drawings.pdf",
        "drawings/1-general-arrangement.svg",
        "data/trail.txt",
        "data/result.json",
        "manifest.json",
    ] {
        assert!(!file(&files, name).is_empty(), "{name}");
    }
    for name in ["enquiry.toml", "rain.csv"] {
        let given = fs::read(job("vehicle-yard").join(name)).expect("read");
        assert_eq!(file(&files, &format!("inputs/{name}")), given, "{name}");
    }
    let report = file(&files, "calculation-report.pdf");
    assert!(report.starts_with(b"%PDF-") && report.len() > 50_000);
    let said: Value = serde_json::from_str(&said).expect("JSON");
    let said: BTreeSet<(&str, Option<u64>)> = said["files"]
        .as_array()
        .expect("files")
        .iter()
        .map(|f| (f["name"].as_str().unwrap_or(""), f["bytes"].as_u64()))
        .collect();
    assert_eq!(said, files.iter().map(|f| (f.0.as_str(), Some(f.1.len() as u64))).collect());
    // The enquiry inside the package makes the package again, in place of itself, elsewhere in the world.
    let out = program()
        .current_dir(dir.path())
        .args(["submittal", "one/inputs/enquiry.toml", "--for", "us", "--out", "one"])
        .env("TZ", "Pacific/Auckland")
        .env("LC_ALL", "de_DE.UTF-8")
        .env("COLUMNS", "66")
        .output()
        .expect("starts");
    assert_eq!(out.status.code(), Some(0));
    assert_eq!(names_that_differ(&files, &tree(&dir.path().join("one"))), Vec::<String>::new());
    assert_eq!(beside(dir.path()), 1, "something is left beside it");
}

fn names_that_differ(a: &Tree, b: &Tree) -> Vec<String> {
    let mut names: BTreeSet<&str> = a.iter().filter(|f| !b.contains(f)).map(|f| f.0.as_str()).collect();
    names.extend(b.iter().filter(|f| !a.contains(f)).map(|f| f.0.as_str()));
    names.into_iter().map(str::to_owned).collect()
}

/// The client sees neither our price nor who decided, nor the words of a decision on the drawing; the
/// authority sees every step.
#[test]
fn editions_differ_in_what_is_ours() {
    let dir = tempfile::tempdir().expect("a folder");
    fs::create_dir(dir.path().join("job")).expect("made");
    let text = fs::read_to_string(job("transformer-yard").join("enquiry.toml")).expect("read");
    let decided = "[[decision]]\nrule = \"frost-outdoors\"\ndecision = \"by others\"\nbecause = \"traced by others\"\nwho = \"Q. Inventedname\"\n";
    fs::write(dir.path().join("job/enquiry.toml"), format!("{text}\n{decided}")).expect("written");
    let [client, regulator, us] = ["client", "regulator", "us"].map(|edition| {
        let (code, _, err) = run(dir.path(), &["submittal", "job", "--for", edition, "--out", edition]);
        assert!(code <= 1, "{err}");
        let files = tree(&dir.path().join(edition));
        manifest_agrees(&files);
        assert_eq!(json(&files, "manifest.json")["edition"], edition);
        // What programs read is for the authority and for us.
        if edition == "client" {
            assert!(files.iter().all(|f| !f.0.starts_with("data/")), "a client reads papers");
        } else {
            assert_eq!(json(&files, "data/result.json")["edition"], edition);
        }
        files
    });
    let price = json(&us, "data/result.json")["train"]["price"].clone();
    let (value, currency) = (price["value"].clone(), price["currency"].as_str().unwrap_or("").to_owned());
    assert!(value.as_f64().is_some_and(|v| v > 0.0) && currency == "USD", "{price}");
    for (edition, files) in [("client", &client), ("regulator", &regulator)] {
        if edition == "regulator" {
            assert!(json(files, "data/result.json")["train"]["price"].is_null());
        }
        for (name, bytes) in files.iter() {
            assert!(!name.starts_with("inputs/"), "{edition}: what we were given and our range stay with us");
            let text = String::from_utf8_lossy(bytes);
            for ours in ["Inventedname", &currency] {
                assert!(!text.contains(ours), "{edition}/{name} says {ours}");
            }
        }
    }
    assert!(String::from_utf8_lossy(file(&us, "data/result.json")).contains("Q. Inventedname"));
    let made_from = |files: &Tree| json(files, "manifest.json")["made_from"].clone();
    let given = hash(file(&us, "inputs/enquiry.toml"));
    assert_eq!(made_from(&us)[0]["sha256"].as_str(), Some(given.as_str()));
    assert_eq!(made_from(&client), made_from(&us), "all editions name what they were made from");
    let decision = |files: &Tree| {
        let all = json(files, "data/result.json")["verdicts"].as_array().expect("verdicts").clone();
        let one = all.into_iter().find(|v| v["rule"] == "frost-outdoors").expect("the rule");
        (one["decision"]["because"].as_str().map(str::to_owned), one["decision"]["who"].as_str().map(str::to_owned))
    };
    let because = Some("traced by others".to_owned());
    assert_eq!(decision(&regulator), (because.clone(), None));
    assert_eq!(decision(&us), (because, Some("Q. Inventedname".to_owned())));
    // The trail is printed in full for the authority and for us.
    let length = |files: &Tree| file(files, "trail.pdf").len();
    assert!(length(&client) * 10 < length(&regulator) * 9, "{} {}", length(&client), length(&regulator));
    assert_eq!(file(&regulator, "data/trail.txt"), file(&us, "data/trail.txt"));
}

#[test]
fn an_existing_package_is_replaced_whole() {
    let dir = tempfile::tempdir().expect("a folder");
    ["first", "second"].iter().for_each(|name| short(dir.path(), name));
    let first = made(dir.path(), "first", "package");
    manifest_agrees(&first);
    // What somebody put there or changed, and the package of another job, is not lost.
    let at = |name: &str| dir.path().join("package").join(name);
    let refused = |file: &str, want: &str| {
        let before = tree(&dir.path().join("package"));
        let (code, _, err) = run(dir.path(), &["submittal", file, "--out", "package"]);
        assert!(code == 2 && err.contains(want), "{code} {err}");
        assert_eq!(tree(&dir.path().join("package")), before);
    };
    fs::create_dir(at("old")).expect("made");
    fs::write(at("old/letter.txt"), "keep").expect("written");
    refused("second.toml", "old/letter.txt, not of the package");
    fs::remove_dir_all(at("old")).expect("gone");
    let trail = fs::read(at("trail.pdf")).expect("read");
    fs::write(at("trail.pdf"), "with a remark").expect("written");
    refused("second.toml", "trail.pdf, changed since");
    fs::write(at("trail.pdf"), trail).expect("written");
    let other = fs::read_to_string(dir.path().join("first.toml")).expect("read").replace("short", "another");
    fs::write(dir.path().join("other.toml"), other).expect("written");
    refused("other.toml", "the package of another job, \"short\"");
    fs::remove_file(dir.path().join("other.toml")).expect("gone");
    let second = made(dir.path(), "second", "package");
    assert_eq!(second, made(dir.path(), "second", "deep/er/package"), "elsewhere the same");
    assert_ne!(first, second);
    // A refused enquiry leaves the package as it is.
    fs::write(dir.path().join("broken.toml"), "[enquiry]\ntitel = \"x\"\n").expect("written");
    let (code, ..) = run(dir.path(), &["submittal", "broken.toml", "--out", "package"]);
    assert_eq!((code, tree(&dir.path().join("package"))), (2, second));
    assert_eq!(beside(dir.path()), 5, "something is left beside it");
}

#[test]
fn what_is_not_ours_is_left_alone() {
    let dir = tempfile::tempdir().expect("a folder");
    short(dir.path(), "first");
    let at = |name: &str| dir.path().join(name);
    for name in ["mine", "other"] {
        fs::create_dir(at(name)).expect("made");
    }
    fs::write(at("mine/letter.txt"), "keep").expect("written");
    fs::write(at("other/manifest.json"), "{ \"is\": \"another program's\" }").expect("written");
    fs::write(at("file"), "keep").expect("written");
    let before = tree(dir.path());
    for out in ["mine", "other", "file", "."] {
        let (code, said, err) = run(dir.path(), &["submittal", "first.toml", "--out", out]);
        assert_eq!((code, said.as_str()), (2, ""), "{out}: {err}");
        let why = if out == "file" { "is no folder" } else { "no manifest of ours" };
        assert!(err.contains(why) && err.contains("name another folder"), "{out}: {err}");
        assert_eq!(tree(dir.path()), before, "{out}");
    }
    assert_eq!(beside(dir.path()), 4);
    // An empty folder is nobody's.
    fs::create_dir(at("empty")).expect("made");
    manifest_agrees(&made(dir.path(), "first", "empty"));
}

#[test]
fn a_place_that_cannot_be_written_is_the_machines_failure() {
    let dir = tempfile::tempdir().expect("a folder");
    short(dir.path(), "first");
    fs::write(dir.path().join("file"), "x").expect("written");
    let mut places = vec!["file/package".to_owned(), "file/deep/package".to_owned()];
    // Nobody makes folders there, whoever he is.
    if cfg!(target_os = "linux") && Path::new("/proc/self").exists() {
        places.push("/proc/package".to_owned());
    }
    let sealed = dir.path().join("sealed");
    fs::create_dir(&sealed).expect("made");
    let mut permissions = fs::metadata(&sealed).expect("there").permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&sealed, permissions.clone()).expect("sealed");
    // The superuser writes into a sealed folder all the same.
    if fs::write(sealed.join("try"), "x").is_err() {
        places.push("sealed/package".to_owned());
    }
    let before = tree(dir.path());
    for out in &places {
        let (code, said, err) = run(dir.path(), &["submittal", "first.toml", "--out", out]);
        assert_eq!((code, said.as_str()), (3, ""), "{out}: {err}");
        assert!(err.contains(out.as_str()) && err.contains("nothing was changed"), "{out}: {err}");
        assert_eq!(tree(dir.path()), before, "{out}");
    }
    assert_eq!(beside(dir.path()), 3);
    open_again(&sealed, permissions);
}

/// So that the scratch folder can be removed.
#[allow(clippy::permissions_set_readonly_false, reason = "a scratch folder of this test")]
fn open_again(path: &Path, mut permissions: fs::Permissions) {
    permissions.set_readonly(false);
    fs::set_permissions(path, permissions).expect("opened");
}

/// Scratch folders of a run that was killed.
fn scratch(dir: &Path) -> BTreeSet<PathBuf> {
    let all = fs::read_dir(dir).expect("readable").flatten().map(|e| e.path());
    all.filter(|p| p.file_name().is_some_and(|n| n.to_string_lossy().starts_with(".stillrise-"))).collect()
}

/// Starts a submittal and kills it: after a time, or that much after it began to write. `false` when it
/// had ended before.
fn killed(dir: &Path, name: &str, wait: Duration, in_writing: bool) -> bool {
    let left = scratch(dir);
    let mut child = program()
        .current_dir(dir)
        .args(["submittal", &format!("{name}.toml"), "--out", "package"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("starts");
    let patience = Instant::now() + Duration::from_secs(300);
    while in_writing && scratch(dir).is_subset(&left) && child.try_wait().expect("a child").is_none() {
        assert!(Instant::now() < patience, "it never began to write");
        sleep(Duration::from_micros(100));
    }
    sleep(wait);
    let ended = child.try_wait().expect("a child").is_some();
    let _ = child.kill();
    let _ = child.wait();
    !ended
}

/// After a kill the package is the old one or the new one, whole; or absent, if it was absent, or if the
/// old one stands whole in the scratch folder it was moved to.
#[test]
fn an_interrupted_write_leaves_no_half_package() {
    let dir = tempfile::tempdir().expect("a folder");
    ["first", "second"].iter().for_each(|name| short(dir.path(), name));
    let package = dir.path().join("package");
    let (first, second) = (made(dir.path(), "first", "one"), made(dir.path(), "second", "two"));
    let mut kills = 0;
    for there_before in [false, true] {
        for (wait, in_writing) in
            [(0, false), (300_000, false), (0, true), (200, true), (500, true), (1000, true), (2000, true)]
        {
            if package.exists() {
                fs::remove_dir_all(&package).expect("removed");
            }
            scratch(dir.path()).iter().for_each(|left| fs::remove_dir_all(left).expect("removed"));
            if there_before {
                copy(&dir.path().join("one"), &package);
            }
            kills += u32::from(killed(dir.path(), "second", Duration::from_micros(wait), in_writing));
            let said = format!("killed after {wait} us, in writing: {in_writing}, there before: {there_before}");
            if package.exists() {
                let now = tree(&package);
                assert!(now == second || there_before && now == first, "half a package, {said}");
            } else if there_before {
                let kept = scratch(dir.path()).iter().any(|left| tree(&left.join("old")) == first);
                assert!(kept, "the old package is lost, {said}");
            }
        }
    }
    assert!(kills >= 4, "only {kills} runs were killed in time");
    // What a killed run left behind does not trouble the next.
    if !package.exists() {
        copy(&dir.path().join("one"), &package);
    }
    assert_eq!(made(dir.path(), "second", "package"), second);
}

fn copy(from: &Path, to: &Path) {
    for (name, bytes) in tree(from) {
        let path = to.join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        fs::write(path, bytes).expect("written");
    }
}

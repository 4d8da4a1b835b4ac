//! The manual as a folder, and the pictures of the guide: what they name exists, and they are shown where they belong.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use stillrise_web::manual::pictures::{LIST, all};
use stillrise_web::manual::{CONTRIBUTING, Shelf, UP, Ways, site};

/// Bytes that a picture may have: one that shows a basin of concrete takes most.
const LARGEST: usize = 23 * 1024;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

#[test]
fn every_path_of_a_picture_exists() {
    for picture in LIST {
        for path in picture.steps.iter().map(|step| step.path).chain(picture.proof.paths.iter().copied()) {
            assert!(root().join(path).exists(), "{}: there is no {path}", picture.id);
        }
        // What is to be typed runs tests that are named beside it.
        for test in tests_of(picture.proof.command) {
            let named =
                |path: &&str| path.ends_with(&format!("tests/{test}.rs")) || path.contains(&format!("tests/{test}/"));
            assert!(picture.proof.paths.iter().any(named), "{}: {test}", picture.id);
        }
    }
}

/// The tests that a command names: after `--test`, or in `binary(..)`.
fn tests_of(command: &str) -> Vec<&str> {
    let plain = command.split("--test ").skip(1).filter_map(|rest| rest.split([' ', ';']).next());
    let chosen = command.split("binary(").skip(1).filter_map(|rest| rest.split(')').next());
    plain.chain(chosen).collect()
}

#[test]
fn tests_are_read_off_a_command() {
    assert_eq!(tests_of("cargo nextest run -p a --test rules --test unknowns; then more"), ["rules", "unknowns"]);
    assert_eq!(tests_of("cargo nextest run -E 'binary(vault) or binary(replay)'; look"), ["vault", "replay"]);
}

/// Every section that tells how to do something begins with its picture, and none is left over.
#[test]
fn every_section_shows_its_picture() {
    let sections = CONTRIBUTING.split("\n## ").skip(1);
    let mut shown = Vec::new();
    for section in sections.filter(|s| ["Correct", "Add", "Teach"].iter().any(|verb| s.starts_with(verb))) {
        let title = section.lines().next().unwrap();
        let Some(picture) = LIST.iter().find(|picture| picture.title == title) else { panic!("no picture: {title}") };
        // Who cannot see it is told at least what proves it.
        let shown_so = format!("proves it: {}](docs/pictures/{}.svg)", picture.proof.command, picture.id);
        assert!(section.contains(&shown_so), "{title}: {shown_so}");
        shown.push(picture.id);
    }
    assert_eq!(shown, LIST.iter().map(|picture| picture.id).collect::<Vec<_>>());
}

#[test]
fn every_picture_is_small_and_can_be_read() {
    assert_eq!(all().len(), LIST.len());
    for made in all() {
        assert!(made.svg.len() < LARGEST, "{}: {} bytes", made.id, made.svg.len());
        assert!(made.scene.outside().is_empty(), "{}: {:?}", made.id, made.scene.outside());
        assert!(made.scene.overlaps().is_empty(), "{}: {:?}", made.id, made.scene.overlaps());
        let kept = std::fs::read_to_string(root().join(format!("docs/pictures/{}.svg", made.id))).unwrap_or_default();
        assert!(kept == made.svg, "docs/pictures/{}.svg: `cargo xtask bless pictures`, and look at it", made.id);
        // Letters are text in a face of one width, whatever that is called where it is looked at.
        assert!(made.svg.contains("monospace") && made.svg.contains("textLength"), "{}", made.id);
    }
}

#[test]
fn the_folder_holds_every_page_once_and_the_same_twice() {
    let files = site();
    let names: BTreeSet<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names.len(), files.len());
    for shelf in Shelf::ALL {
        let leaves = shelf.leaves();
        assert!(!leaves.is_empty());
        for leaf in leaves {
            let name = Ways::Written("").to(shelf, &leaf.id);
            assert!(names.contains(name.as_str()), "{name}");
        }
    }
    let text = |name: &str| {
        let bytes = files.iter().find(|(known, _)| known == name).map(|(_, bytes)| bytes.clone());
        String::from_utf8(bytes.unwrap_or_else(|| panic!("{name}"))).unwrap()
    };
    let rise = text("formula/stokes-rise.html");
    assert!(
        rise.contains("<math")
            && rise.contains("run when this was written")
            && rise.contains(&format!("{UP}index.html"))
    );
    // What only the program can do is not offered.
    assert!(!rise.contains("Work it") && !rise.contains("href=\"/"));
    assert!(
        text("oil/diesel.html").contains("<svg")
            && text("guide/contributing.html").matches("<svg").count() == LIST.len()
    );
    let same = Shelf::Keys.body("enquiry-stream", Ways::Written(UP), "");
    assert!(same.is_some_and(|body| text("keys/enquiry-stream.html").contains(&body.into_string())));
}

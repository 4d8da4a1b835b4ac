//! What was acknowledged stands on the disk, whole, whatever happens to the program; and nothing outside the folder is reached.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test fails by panicking"
)]

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use stillrise_desk::folder::{Folder, Stamp, is_name};
use stillrise_desk::save::{Unsaved, disk};

/// The folder in which the child saves, where it is one.
const CHILD: &str = "STILLRISE_TEST_SAVES_IN";
/// How often the child is killed.
const KILLS: u32 = 1000;

/// A text of a size that no disk writes at once, with its number at both ends.
fn text(number: u64) -> String {
    format!("# {number}\n[enquiry]\ntitle = \"{}\"\n# {number}\n", "x".repeat(20_000))
}

/// The number of a whole text.
fn number(text: &str) -> Option<u64> {
    let first: u64 = text.lines().next()?.strip_prefix("# ")?.parse().ok()?;
    let last: u64 = text.lines().last()?.strip_prefix("# ")?.parse().ok()?;
    (first == last && text.len() > 20_000).then_some(first)
}

/// Saves for ever and tells each number once it is saved; the child of the test below, and nothing without a folder.
#[test]
fn child_that_saves() {
    let Some(root) = std::env::var_os(CHILD) else { return };
    let folder = Folder::open(Path::new(&root)).unwrap();
    let place = folder.find("job").unwrap();
    let (now, mut stamp) = folder.text(&place).unwrap();
    let mut at = number(&now).unwrap();
    loop {
        at += 1;
        stamp = folder.save(&place, &text(at), &stamp).unwrap();
        println!("saved {at}");
    }
}

#[test]
fn a_kill_at_any_moment_loses_nothing_that_was_acknowledged() {
    let root = tempfile::tempdir().unwrap();
    let folder = Folder::open(root.path()).unwrap();
    let place = folder.create("job", &[("enquiry.toml", text(0).as_bytes())]).unwrap();
    let (mut stood, mut met) = (0, 0);
    for kill in 0..KILLS {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "child_that_saves", "--nocapture"])
            .env(CHILD, root.path())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        // Once it has begun to save, some moment later.
        let told = |line: &str| line.split("saved ").nth(1)?.trim().parse::<u64>().ok();
        let first = lines.by_ref().find_map(|line| told(&line.unwrap())).expect("the child saves");
        std::thread::sleep(Duration::from_micros(u64::from(kill) * 7919 % 4000));
        child.kill().unwrap();
        child.wait().unwrap();
        let last = lines.map_while(Result::ok).filter_map(|line| told(&line)).last().unwrap_or(first);
        let (now, _) = folder.text(&place).unwrap();
        let stands = number(&now).unwrap_or_else(|| panic!("torn after {kill} kills: {} bytes", now.len()));
        assert!(stands >= last && stands >= stood, "kill {kill}: {last} was acknowledged, {stands} stands");
        met += u32::from(stands > last || fs::read_dir(&place.home).unwrap().count() > 2);
        stood = stands;
    }
    assert!(met > KILLS / 20, "only {met} kills met a save: the test tests nothing");
    // The next save takes away what the killed ones left.
    let (_, stamp) = folder.text(&place).unwrap();
    folder.save(&place, &text(stood + 1), &stamp).unwrap();
    let names =
        fs::read_dir(&place.home).unwrap().map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned());
    assert_eq!(names.filter(|name| name.starts_with(".stillrise-")).count(), 0);
}

#[test]
fn of_two_that_save_one_is_told() {
    let root = tempfile::tempdir().unwrap();
    let (one, two) = (Folder::open(root.path()).unwrap(), Folder::open(root.path()).unwrap());
    let place = one.create("job", &[("enquiry.toml", b"a = 1\n")]).unwrap();
    let (_, stamp) = one.text(&place).unwrap();
    one.save(&place, "a = 2\n", &stamp).unwrap();
    match two.save(&place, "a = 3\n", &stamp) {
        Err(Unsaved::Changed(now)) => assert_eq!(now, b"a = 2\n"),
        other => panic!("{other:?}"),
    }
    assert_eq!(one.text(&place).unwrap().1, Stamp::of(b"a = 2\n"));
}

#[test]
fn many_at_once_lose_no_save() {
    let root = tempfile::tempdir().unwrap();
    let folder = Folder::open(root.path()).unwrap();
    let place = folder.create("job", &[("enquiry.toml", b"")]).unwrap();
    std::thread::scope(|scope| {
        for who in 0..8 {
            let (folder, place) = (&folder, &place);
            scope.spawn(move || {
                for _ in 0..25 {
                    loop {
                        let (text, stamp) = folder.text(place).unwrap();
                        match folder.save(place, &format!("{text}{who}\n"), &stamp) {
                            Ok(_) => break,
                            Err(Unsaved::Changed(_)) => {}
                            Err(other) => panic!("{other}"),
                        }
                    }
                }
            });
        }
    });
    assert_eq!(folder.text(&place).unwrap().0.lines().count(), 200);
}

#[test]
fn names_lead_nowhere_else() {
    let root = tempfile::tempdir().unwrap();
    let folder = Folder::open(root.path()).unwrap();
    let place = folder.create("job", &[("enquiry.toml", b"a = 1\n")]).unwrap();
    for name in ["../job", "..", ".", "", "a/b", "a\\b", "job/../job", "a\0b", ".hidden", "a\n", "job ", "%2e%2e", "C:"]
    {
        assert!(folder.find(name).is_err(), "{name:?}");
        assert!(folder.create(name, &[]).is_err(), "{name:?}");
    }
    for name in ["../../etc/passwd", "/etc/passwd", "../rain.csv", "sub/../../rain.csv"] {
        assert_eq!(folder.beside(&place, name), None, "{name}");
    }
}

#[cfg(unix)]
#[test]
fn links_lead_nowhere_else() {
    use std::os::unix::fs::symlink;
    let (root, outside) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    fs::write(outside.path().join("enquiry.toml"), "secret").unwrap();
    fs::write(outside.path().join("rain.csv"), "secret").unwrap();
    let folder = Folder::open(root.path()).unwrap();
    let place = folder.create("job", &[("enquiry.toml", b"a = 1\n")]).unwrap();
    symlink(outside.path(), root.path().join("linked")).unwrap();
    symlink(outside.path().join("rain.csv"), place.home.join("rain.csv")).unwrap();
    symlink(outside.path().join("rain.csv"), place.home.join("mail.txt")).unwrap();
    assert!(folder.find("linked").is_err());
    assert_eq!(folder.list().unwrap().len(), 1);
    assert_eq!((folder.beside(&place, "rain.csv"), folder.mail(&place)), (None, None));
    assert!(folder.save_mail(&place, "hello").is_err());
    fs::remove_file(&place.file).unwrap();
    symlink(outside.path().join("enquiry.toml"), &place.file).unwrap();
    assert!(folder.text(&place).is_err());
    assert!(matches!(folder.save(&place, "x", &Stamp::of(b"secret")), Err(Unsaved::Gone)));
    assert_eq!(fs::read_to_string(outside.path().join("enquiry.toml")).unwrap(), "secret");
}

#[test]
fn a_disk_that_takes_nothing_says_what_helps() {
    // A device that is always full stands in for the disk, where this machine has one.
    let full = Path::new("/dev/full");
    if full.exists() {
        let error = fs::write(full, "x").unwrap_err();
        assert!(disk(&error).to_string().contains("make room"), "{error}");
    }
    let denied = disk(&std::io::ErrorKind::PermissionDenied.into()).to_string();
    assert!(denied.contains("may not be written") && denied.contains("the file is as it was"), "{denied}");
}

#[test]
fn names_are_held_to_what_every_file_system_takes() {
    for good in ["bus depot north", "Q-1042", "Hafen_2", "Werk (alt)", "a.b", "Öl"] {
        assert!(is_name(good), "{good}");
    }
    // Letters of four bytes each: 80 of them are more than a file system takes.
    let long = "\u{20000}".repeat(80);
    assert!(!is_name(&long));
    let root = tempfile::tempdir().unwrap();
    let folder = Folder::open(root.path()).unwrap();
    for (wish, name) in
        [("Bus depot, north!", "bus-depot-north"), ("..", "enquiry"), ("", "enquiry"), ("a/b\\c", "a-b-c")]
    {
        assert_eq!(folder.free_name(wish), name);
    }
    let free = folder.free_name(&long);
    assert!(is_name(&free) && folder.create(&free, &[("enquiry.toml", b"")]).is_ok(), "{free}");
    folder.create("bus-depot", &[("enquiry.toml", b"")]).unwrap();
    assert_eq!(folder.free_name("Bus depot"), "bus-depot-2");
}

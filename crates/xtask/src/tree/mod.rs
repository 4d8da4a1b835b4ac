//! Rules about the tree itself: arrows between the rooms, what a room may touch, sizes, words.
//!
//! A rule is a pure function over the files; each has, beside it, a small bad example that it
//! must find. `cargo xtask tree` prints what they see, `tests/tree.rs` makes it fail a build.

pub mod arithmetic;
pub mod arrows;
pub mod factors;
pub mod identities;
pub mod keys;
pub mod length;
pub mod links;
pub mod papers;
pub mod registered;
pub mod rooms;
pub mod source;
pub mod unfinished;
pub mod words;

use std::fmt;
use std::path::{Path, PathBuf};

/// A file of the tree: path from the root with forward slashes, and its text.
#[derive(Debug, Clone)]
pub struct File {
    /// Path from the root of the tree.
    pub path: String,
    /// Contents, bytes that are no text replaced.
    pub text: String,
}

impl File {
    /// A file made up for a test.
    #[must_use]
    pub fn new(path: &str, text: &str) -> Self {
        Self { path: path.to_owned(), text: text.to_owned() }
    }

    /// The crate's folder name, for files under `crates/`.
    #[must_use]
    pub fn room(&self) -> Option<&str> {
        room(&self.path)
    }
}

/// The crate's folder name in a path under `crates/`.
#[must_use]
pub fn room(path: &str) -> Option<&str> {
    path.strip_prefix("crates/")?.split_once('/').map(|(room, _)| room)
}

/// True for library or program code: under a crate's `src`, not its tests, benches, examples.
#[must_use]
pub fn is_source(path: &str) -> bool {
    room(path).is_some_and(|room| path[room.len() + 8..].starts_with("src/")) && path.ends_with(".rs")
}

/// What a rule found, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Path from the root of the tree.
    pub path: String,
    /// Line from 1; 0 when the file as a whole is meant.
    pub line: usize,
    /// What is wrong and what to do.
    pub what: String,
}

impl Fault {
    /// A fault at a line of a file.
    #[must_use]
    pub fn new(path: &str, line: usize, what: impl Into<String>) -> Self {
        Self { path: path.to_owned(), line, what: what.into() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            0 => write!(f, "{}: {}", self.path, self.what),
            line => write!(f, "{}:{line}: {}", self.path, self.what),
        }
    }
}

/// How a rule looks: at one file by itself, or at all of them together.
#[derive(Clone, Copy)]
pub enum Look {
    /// Path and text of one file.
    File(fn(&str, &str) -> Vec<Fault>),
    /// All files.
    Tree(fn(&[File]) -> Vec<Fault>),
}

/// A rule about the tree.
#[derive(Clone, Copy)]
pub struct Rule {
    /// Short name.
    pub name: &'static str,
    /// What must hold, as a sentence.
    pub holds: &'static str,
    /// The function that looks.
    pub look: Look,
}

impl Rule {
    /// Everything the rule finds wrong.
    #[must_use]
    pub fn faults(&self, files: &[File]) -> Vec<Fault> {
        match self.look {
            Look::File(look) => files.iter().flat_map(|f| look(&f.path, &f.text)).collect(),
            Look::Tree(look) => look(files),
        }
    }
}

/// All rules, in the order in which they are reported.
pub const RULES: &[Rule] = &[
    arrows::RULE,
    rooms::RULE,
    arithmetic::RULE,
    factors::RULE,
    registered::RULE,
    keys::RULE,
    identities::RULE,
    length::RULE,
    unfinished::RULE,
    words::RULE,
    papers::RULE,
    links::RULE,
];

/// Root of the tree: the nearest folder above the current one that holds `crates/xtask`.
///
/// # Errors
/// When no such folder exists, or the current one cannot be read.
pub fn root() -> Result<PathBuf, String> {
    let here = std::env::current_dir().map_err(|e| format!("the current folder cannot be read: {e}"))?;
    here.ancestors()
        .find(|dir| dir.join("crates/xtask/Cargo.toml").is_file())
        .map(Path::to_path_buf)
        .ok_or_else(|| "run this inside the project's tree".to_owned())
}

/// All files of the tree, sorted by path; build output and version control left out.
///
/// # Errors
/// When a folder or file cannot be read.
pub fn read(root: &Path) -> Result<Vec<File>, String> {
    let mut files = Vec::new();
    let mut folders = vec![root.to_path_buf()];
    while let Some(folder) = folders.pop() {
        let entries = std::fs::read_dir(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
        for entry in entries {
            let path = entry.map_err(|e| format!("{}: {e}", folder.display()))?.path();
            if path.is_dir() {
                if !is_output(&path) {
                    folders.push(path);
                }
                continue;
            }
            let bytes = std::fs::read(&path).map_err(|e| format!("{}: {e}", path.display()))?;
            let parts: Vec<_> =
                path.strip_prefix(root).unwrap_or(&path).iter().map(|part| part.to_string_lossy()).collect();
            files.push(File { path: parts.join("/"), text: String::from_utf8_lossy(&bytes).into_owned() });
        }
    }
    files.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(files)
}

/// Version control, and whatever cargo has marked as its own output.
fn is_output(folder: &Path) -> bool {
    let name = folder.file_name().unwrap_or_default();
    name == ".git" || name == "target" || folder.join("CACHEDIR.TAG").is_file()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_tell_room_and_kind() {
        assert_eq!(room("crates/units/src/math.rs"), Some("units"));
        assert_eq!(room("README.md"), None);
        assert!(is_source("crates/units/src/math.rs"));
        assert!(!is_source("crates/units/tests/exact.rs"));
        assert!(!is_source("crates/units/src/units.csv"));
    }

    #[test]
    fn a_fault_names_its_place() {
        assert_eq!(Fault::new("a.rs", 3, "no").to_string(), "a.rs:3: no");
        assert_eq!(Fault::new("a.rs", 0, "no").to_string(), "a.rs: no");
    }
}

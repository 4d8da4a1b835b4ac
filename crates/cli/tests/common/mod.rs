//! Running the program as a user would, in a folder of its own.

#![allow(dead_code, reason = "each test file uses its part")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use tempfile::TempDir;

/// A worked job's folder.
pub fn job(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../enquiries").join(name)
}

/// All worked jobs.
pub fn jobs() -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../enquiries");
    let mut names: Vec<String> = fs::read_dir(root)
        .expect("the worked jobs")
        .flatten()
        .filter(|e| e.path().join("enquiry.toml").exists())
        .map(|e| e.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// The program.
pub fn program() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_stillrise"));
    command.stdin(Stdio::null()).env("NO_COLOR", "1").env_remove("COLUMNS");
    command
}

/// Exit code, standard output, error stream.
pub fn run(dir: &Path, args: &[&str]) -> (i32, String, String) {
    let out: Output = program().current_dir(dir).args(args).output().expect("the program starts");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (out.status.code().unwrap_or(-1), text(&out.stdout), text(&out.stderr))
}

/// A folder with an enquiry in it.
pub fn folder(enquiry: &str) -> TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    fs::write(dir.path().join("enquiry.toml"), enquiry).expect("written");
    dir
}

/// Name and bytes of each file below a folder, sorted.
pub type Tree = Vec<(String, Vec<u8>)>;

/// All files below a folder; none when it is not there.
pub fn tree(dir: &Path) -> Tree {
    let mut files = Vec::new();
    let mut open: Vec<PathBuf> = dir.is_dir().then(|| dir.to_owned()).into_iter().collect();
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(folder).expect("readable").flatten() {
            let path = entry.path();
            if path.is_dir() {
                open.push(path);
            } else {
                let name = path.strip_prefix(dir).expect("below").to_string_lossy().into_owned();
                files.push((name, fs::read(&path).expect("readable")));
            }
        }
    }
    files.sort();
    files
}

//! What the tests share: worked jobs, how they are read, comments counted without the code under test.

#![allow(dead_code, reason = "each test uses its own part")]

use std::fs;
use std::path::PathBuf;
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_edit::{Action, Path, apply};
use stillrise_units::Fault;
use toml_edit::Document;

/// A worked job: its folder and its text.
pub struct Job {
    pub folder: PathBuf,
    pub text: String,
}

/// All worked jobs.
pub fn jobs() -> Vec<Job> {
    let enquiries = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../enquiries");
    let mut folders: Vec<PathBuf> =
        fs::read_dir(enquiries).expect("the worked jobs").flatten().map(|entry| entry.path()).collect();
    folders.sort();
    let job = |folder: PathBuf| Some(Job { text: fs::read_to_string(folder.join("enquiry.toml")).ok()?, folder });
    let jobs: Vec<Job> = folders.into_iter().filter_map(job).collect();
    assert!(jobs.len() > 8, "{} worked jobs", jobs.len());
    jobs
}

impl Job {
    /// The enquiry that a text of this job reads as.
    pub fn read(&self, text: &str) -> Result<Enquiry, Vec<Fault>> {
        read_enquiry(text, &|name| fs::read(self.folder.join(name)).ok())
    }
}

/// The same, told apart by all that was read.
pub fn told(enquiry: &Result<Enquiry, Vec<Fault>>) -> String {
    format!("{enquiry:?}")
}

pub fn path(text: &str) -> Path {
    text.parse().unwrap_or_else(|fault| panic!("{fault}"))
}

pub fn set(path: &Path, value: &str, from: Option<&str>) -> Action {
    Action::Set { path: path.clone(), value: value.to_owned(), from: from.map(str::to_owned) }
}

/// The text after an action; it is TOML.
pub fn after(text: &str, action: &Action) -> String {
    let out = apply(text, action).unwrap_or_else(|fault| panic!("{}: {fault}\n{text}", action.says()));
    is_toml(&out);
    out
}

pub fn is_toml(text: &str) {
    if let Err(error) = Document::parse(text.trim_start_matches('\u{feff}')) {
        panic!("{error}\n{text}");
    }
}

/// The comments of a text, sorted: what is left of each line behind a `#` outside strings, found by cutting the line there and
/// looking whether its front is still whole.
pub fn comments(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut open = String::new();
    for line in text.lines() {
        open.push_str(line);
        let from = open.len() - line.len();
        let cut = line.match_indices('#').map(|(at, _)| from + at).find(|at| is_outside(&open[..*at]));
        if let Some(cut) = cut {
            found.push(open[cut..].trim_end().to_owned());
            open.truncate(cut);
        }
        if is_outside(&open) {
            open.clear();
        } else {
            open.push('\n');
        }
    }
    found.sort();
    found
}

/// Whether a text ends outside strings: a state machine over its characters.
fn is_outside(text: &str) -> bool {
    let all: Vec<char> = text.chars().collect();
    let mut open: Option<(char, usize)> = None;
    let mut i = 0;
    while i < all.len() {
        let run = all[i..].iter().take_while(|c| **c == all[i]).count();
        match open {
            None if matches!(all[i], '"' | '\'') => {
                let size = if run >= 3 { 3 } else { 1 };
                open = (run != 2).then_some((all[i], size));
                i += if run == 2 { 2 } else { size };
            }
            Some(('"', _)) if all[i] == '\\' => i += 2,
            Some((quote, size)) if all[i] == quote && run >= size => {
                open = None;
                i += if size == 3 { run.min(5) } else { 1 };
            }
            _ => i += 1,
        }
    }
    open.is_none()
}

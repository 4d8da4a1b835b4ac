//! The texts: the terminal's summary, the reply and all papers of all editions.

use crate::Outcome;
use std::collections::BTreeSet;
use std::error::Error;
use std::path::{Path, PathBuf};
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::reply::reply;
use stillrise_documents::summary::summary;
use stillrise_documents::{Edition, papers};
use stillrise_handbook::manual::variables;
use stillrise_handbook::{pages, sources};
use stillrise_search::settle;
use stillrise_units::System;

/// A document of a job.
pub struct Text {
    pub system: System,
    /// Job, system and document.
    pub name: String,
    /// Whether it is the trail, or tables that belong to it.
    pub is_trail: bool,
    /// Its sentences and cells as they are printed.
    pub said: Vec<String>,
    /// The same without what others said: the user's words and titles of sources.
    pub ours: Vec<String>,
}

/// All of them.
pub struct Texts(pub Vec<Text>);

impl Texts {
    pub fn sentences(&self) -> usize {
        self.0.iter().map(|text| text.said.len()).sum()
    }
    pub fn of_all_jobs() -> Result<Self, Box<dyn Error>> {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let range = std::fs::read_to_string(root.join("ranges/demo.toml"))?;
        let demo = read_range(&range).file;
        let mut all = Self(Vec::new());
        let mut folders: Vec<PathBuf> = std::fs::read_dir(root.join("enquiries"))?
            .map(|entry| entry.map(|e| e.path()))
            .collect::<Result<_, _>>()?;
        folders.retain(|folder| folder.join("enquiry.toml").exists());
        folders.sort();
        for folder in &folders {
            for system in [System::Us, System::Si] {
                all.add(folder, system, &demo, &range)?;
            }
        }
        Ok(all)
    }

    fn add(&mut self, folder: &Path, system: System, demo: &Range, range: &str) -> Outcome {
        let written = std::fs::read_to_string(folder.join("enquiry.toml"))?;
        let word = if system == System::Us { "us" } else { "si" };
        let rest: Vec<&str> = written.lines().filter(|line| !line.starts_with("print")).collect();
        let text = rest.join("\n").replacen("[enquiry]", &format!("[enquiry]\nprint = \"{word}\""), 1);
        let files = |name: &str| std::fs::read(folder.join(name)).ok();
        let enquiry = read_enquiry(&text, &files).map_err(|faults| format!("{}: {faults:?}", folder.display()))?;
        let mut settled = settle(&enquiry, demo);
        settled.work_alternatives(demo);
        // A study of all would take long; what is said of one is said alike of all.
        if folder.ends_with("crane-yard") {
            settled.study(20);
        }
        let theirs = theirs(&text, range)?;
        let job = folder.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let mut add = |name: &str, is_trail: bool, said: Vec<String>| {
            let said: Vec<String> = said.into_iter().map(|s| s.replace('²', "2").replace('³', "3")).collect();
            let ours = said.iter().map(|text| without(text, &theirs)).collect();
            self.0.push(Text { system, name: format!("{job}, {word}, {name}"), is_trail, said, ours });
        };
        add("terminal", false, lines(&summary(&settled, 160)));
        add("reply", false, lines(&reply(&settled)));
        let mut once = BTreeSet::new();
        for edition in Edition::ALL {
            for paper in papers::of(&settled, edition) {
                let mut said = Vec::new();
                strings(&papers::said(&settled, edition, paper), "", &mut said);
                // Editions share most of it.
                said.retain(|text| once.insert((paper.name, text.clone())));
                add(paper.name, paper.name == "trail", said);
            }
        }
        Ok(())
    }
}

/// Lines of a text, those that were broken joined again.
fn lines(text: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for line in text.lines() {
        let inner = line.trim_start();
        // A table's cells stand apart by two spaces and more; a line that goes on has one.
        match all.last_mut() {
            Some(last)
                if line.starts_with(' ') && !inner.is_empty() && !inner.contains("  ") && !last.contains("  ") =>
            {
                last.push(' ');
                last.push_str(inner);
            }
            _ => all.push(line.to_owned()),
        }
    }
    all
}

/// Every text of a paper's blocks; file names and kinds are none, nor are equations with the numbers put in, which stand in the
/// units in which their formula works.
fn strings(value: &serde_json::Value, key: &str, out: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) if !["t", "file", "m", "alt", "tool", "paper", "id"].contains(&key) => {
            out.push(text.clone());
        }
        serde_json::Value::Array(all) => all.iter().for_each(|one| strings(one, key, out)),
        serde_json::Value::Object(all) => all.iter().for_each(|(key, one)| strings(one, key, out)),
        _ => {}
    }
}

/// What others said: every text of enquiry and range, titles of sources; the longest first.
fn theirs(enquiry: &str, range: &str) -> Result<Vec<String>, Box<dyn Error>> {
    let mut all = BTreeSet::new();
    for text in [enquiry, range] {
        let table: toml::Table = toml::from_str(text)?;
        typed(&toml::Value::Table(table), &mut all);
    }
    for source in sources::all() {
        all.extend([source.to_string(), source.title.to_owned()]);
    }
    let mut all: Vec<String> = all.into_iter().map(|s| s.replace('²', "2").replace('³', "3")).collect();
    // A meaning of a formula's argument names the temperature that its source counts from.
    all.extend(pages().flat_map(|page| variables(page).into_iter().map(|v| v.meaning.to_owned())));
    all.retain(|text| text.chars().count() > 8 || text.chars().any(|c| c.is_ascii_digit()));
    // A sentence may begin with it.
    let large: Vec<String> = all.iter().map(|text| capital(text)).collect();
    all.extend(large);
    all.sort_by_key(|text| core::cmp::Reverse(text.len()));
    Ok(all)
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn typed(value: &toml::Value, out: &mut BTreeSet<String>) {
    match value {
        toml::Value::String(text) => {
            out.insert(text.clone());
        }
        toml::Value::Array(all) => all.iter().for_each(|one| typed(one, out)),
        toml::Value::Table(all) => all.values().for_each(|one| typed(one, out)),
        _ => {}
    }
}

/// A text without what stands between quotes and without what others said.
fn without(text: &str, theirs: &[String]) -> String {
    let mut rest = String::new();
    for (k, part) in text.split('"').enumerate() {
        rest.push_str(if k % 2 == 0 { part } else { "\u{2026}" });
    }
    for one in theirs {
        if rest.contains(one.as_str()) {
            rest = rest.replace(one.as_str(), "\u{2026}");
        }
    }
    rest
}

//! What a frozen set says of itself: the revision, the tool, and the hash of every file in it.

use crate::decisions;
use crate::package::{hash, pretty};
use serde_json::{Value, json};
use stillrise_search::Settled;

/// The file that holds the results in a set.
pub const RESULTS: &str = "results.json";
/// What a manifest says it is.
const MARK: &str = "stillrise issued revision";

/// What a file of the inputs is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The enquiry.
    Enquiry,
    /// A file that the enquiry names.
    Named,
    /// The company's settings, and what these name.
    Settings,
}

impl Kind {
    /// All of them.
    pub const ALL: [Kind; 3] = [Kind::Enquiry, Kind::Named, Kind::Settings];
    /// The word in a manifest.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Kind::Enquiry => "enquiry",
            Kind::Named => "named by the enquiry",
            Kind::Settings => "company's settings",
        }
    }
}

/// A file of the inputs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Input {
    /// What it is.
    pub kind: Kind,
    /// The name by which it is asked for.
    pub name: String,
    /// Its place in the set.
    pub file: String,
    /// Its SHA-256.
    pub sha256: String,
}

/// A manifest as read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Manifest {
    /// The revision.
    pub revision: String,
    /// The date that it states.
    pub date: String,
    /// The version of the tool.
    pub tool: String,
    /// The inputs.
    pub inputs: Vec<Input>,
    /// Hash of the results.
    pub results: String,
}

/// The manifest of a set, as it is written.
#[must_use]
pub fn manifest(settled: &Settled, inputs: &[Input], sizes: &[usize], results: &[u8], numbers: usize) -> Vec<u8> {
    let head = &settled.job.enquiry.head;
    let listed: Vec<Value> = inputs
        .iter()
        .zip(sizes)
        .map(|(input, bytes)| {
            json!({ "kind": input.kind.word(), "name": input.name, "file": input.file, "bytes": bytes, "sha256": input.sha256 })
        })
        .collect();
    let decided: Vec<Value> = settled
        .verdicts
        .iter()
        .filter_map(|judged| Some((judged, judged.decision.as_ref()?, decisions::word(judged)?)))
        .map(|(judged, d, word)| {
            json!({
                "rule": judged.rule.id, "verdict": judged.verdict.word(), "decision": word, "because": d.because.0, "who": d.who.0,
                "date": d.date.0.map(|date| date.to_string()),
            })
        })
        .collect();
    pretty(&json!({
        "is": MARK,
        "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") },
        "title": head.title.0, "project": head.project.0, "revision": head.revision.0, "date": head.date.0,
        "status": head.status.0.map_or("preliminary", |status| status.word()),
        "inputs": listed,
        "results": { "file": RESULTS, "bytes": results.len(), "sha256": hash(results), "numbers": numbers },
        "decisions": decided,
        "caution": crate::summary::CAUTION,
    }))
}

/// Reads a manifest.
///
/// # Errors
/// Why it is none.
pub fn read_manifest(bytes: &[u8]) -> Result<Manifest, String> {
    let value: Value = serde_json::from_slice(bytes).map_err(|error| format!("is no JSON: {error}"))?;
    if value["is"] != MARK {
        return Err("is no manifest of an issued revision".to_owned());
    }
    let text = |value: &Value, key: &str| {
        value[key].as_str().map(str::to_owned).ok_or_else(|| format!("says nothing of \"{key}\""))
    };
    let input = |one: &Value| {
        let word = text(one, "kind")?;
        let kind = Kind::ALL.into_iter().find(|kind| kind.word() == word);
        let kind = kind.ok_or_else(|| format!("holds an input of an unknown kind, \"{word}\""))?;
        let file = text(one, "file")?;
        // A set holds its own files alone, whatever a manifest was made to say.
        let is_plain = file
            .strip_prefix("inputs/")
            .is_some_and(|name| !name.is_empty() && !name.starts_with('.') && !name.contains(['/', '\\', ':']));
        if !is_plain {
            return Err(format!("names a file that is not of the set, \"{file}\""));
        }
        Ok(Input { kind, name: text(one, "name")?, file, sha256: text(one, "sha256")? })
    };
    let inputs = value["inputs"].as_array().into_iter().flatten().map(input).collect::<Result<Vec<Input>, String>>()?;
    if inputs.iter().filter(|input| input.kind == Kind::Enquiry).count() != 1 {
        return Err("does not name one enquiry".to_owned());
    }
    Ok(Manifest {
        revision: text(&value, "revision")?,
        date: text(&value, "date")?,
        tool: text(&value["tool"], "version")?,
        inputs,
        results: text(&value["results"], "sha256")?,
    })
}

/// The inputs in which two sets differ: name, and the hash that each has for it.
#[must_use]
pub fn what_differs(issued: &[Input], now: &[Input]) -> Vec<(String, Option<String>, Option<String>)> {
    let same = |a: &Input, b: &Input| a.kind == b.kind && a.name == b.name;
    let hash = |input: &Input| input.sha256.clone();
    let before = issued.iter().map(|a| {
        let b = now.iter().find(|b| same(a, b));
        (a.name.clone(), Some(hash(a)), b.map(hash))
    });
    let new = now.iter().filter(|b| !issued.iter().any(|a| same(a, b))).map(|b| (b.name.clone(), None, Some(hash(b))));
    before.chain(new).filter(|(_, was, is)| was != is).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    fn input(name: &str, sha256: &str) -> Input {
        Input { kind: Kind::Named, name: name.to_owned(), file: format!("inputs/{name}"), sha256: sha256.to_owned() }
    }

    #[test]
    fn inputs_are_told_apart_by_name_and_hash() {
        let (a, b) = ([input("x", "1"), input("y", "1")], [input("y", "2"), input("z", "1")]);
        let found = what_differs(&a, &b);
        let names: Vec<&str> = found.iter().map(|(name, ..)| name.as_str()).collect();
        assert_eq!(names, ["x", "y", "z"]);
        assert_eq!((&found[0].2, &found[2].1), (&None, &None));
        assert!(what_differs(&a, &a).is_empty());
    }

    #[test]
    fn a_manifest_leads_nowhere_else() {
        let of = |file: &str| {
            json!({
                "is": MARK, "revision": "A", "date": "2026-01-01", "tool": { "version": "1" },
                "inputs": [{ "kind": "enquiry", "name": "enquiry.toml", "file": file, "sha256": "0" }],
                "results": { "sha256": "0" },
            })
            .to_string()
        };
        assert_eq!(read_manifest(of("inputs/enquiry.toml").as_bytes()).unwrap().revision, "A");
        for file in ["../enquiry.toml", "inputs/../x", "/etc/passwd", "inputs/", "inputs/a/b", "inputs/.x"] {
            assert!(read_manifest(of(file).as_bytes()).is_err(), "{file}");
        }
        assert!(read_manifest(b"{}").is_err() && read_manifest(b"no json").is_err());
    }
}

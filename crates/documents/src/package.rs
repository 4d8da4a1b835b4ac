//! The package: names and bytes of all documents, and a manifest with their hashes.

use crate::Edition;
use crate::contents::{self, Making};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use stillrise_search::Settled;
use stillrise_search::side_by_side::both;

/// The manifest's file name; a folder that holds one of ours may be replaced.
pub const MANIFEST: &str = "manifest.json";
/// What the manifest says it is.
pub const MARK: &str = "stillrise submittal";
/// What the manifest of the manual says it is.
pub const MARK_OF_MANUAL: &str = "stillrise manual";
/// What the manifest of a resolved flow says it is.
pub const MARK_OF_WATER: &str = "stillrise water";

/// A document that could not be made.
#[derive(Debug)]
pub struct PackageFault {
    /// Which document.
    pub document: &'static str,
    /// Why.
    pub reason: String,
}

/// All documents of a package, the manifest last.
///
/// `inputs` are the files the enquiry was read from. Our own edition holds copies, so that it can be made
/// again from itself; prices of a range and remarks of an enquiry are not for others, whose manifest names
/// the files with their hashes.
///
/// # Errors
/// [`PackageFault`] naming the document.
pub fn package(
    settled: &Settled,
    edition: Edition,
    inputs: &[(String, Vec<u8>)],
) -> Result<Vec<(String, Vec<u8>)>, PackageFault> {
    let made = package_step_by_step(settled, edition, inputs, &|_| true)?;
    made.ok_or_else(|| PackageFault { document: "package", reason: "it was stopped".to_owned() })
}

/// What is done one after the other, as [`package_step_by_step`] names it.
pub const STEPS: [&str; 4] = contents::STEPS;

/// The same, telling before each document what is done; where `goes_on` says no, nothing more is made and nothing is answered.
///
/// # Errors
/// [`PackageFault`] naming the document.
#[allow(clippy::type_complexity)]
pub fn package_step_by_step(
    settled: &Settled,
    edition: Edition,
    inputs: &[(String, Vec<u8>)],
    goes_on: &dyn Fn(&'static str) -> bool,
) -> Result<Option<Vec<(String, Vec<u8>)>>, PackageFault> {
    let (charts, drawings) = both(|| crate::charts::charts(settled), || crate::drawings::set(settled, edition));
    let mut making = Making::new(settled, edition, inputs, &charts, &drawings);
    for document in contents::of(settled, edition) {
        if !goes_on(document.step) {
            return Ok(None);
        }
        let files = document.make(&mut making);
        making.files.extend(files.map_err(|reason| PackageFault { document: document.name, reason })?);
    }
    Ok(Some(making.files))
}

/// JSON as it is written to files: indented, with a line end.
#[must_use]
pub fn pretty(value: &Value) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(value).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

/// The list of all files with their hashes, and of the inputs that they were made from.
pub(crate) fn manifest(making: &Making<'_>) -> Vec<u8> {
    let Making { settled, edition, inputs, files, .. } = making;
    let head = &settled.job.enquiry.head;
    pretty(&json!({
        "is": MARK,
        "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") },
        "edition": edition.word(),
        "title": head.title.0, "project": head.project.0, "revision": head.revision.0, "date": head.date.0,
        "status": head.status.0.map_or("preliminary", |s| s.word()),
        "caution": crate::summary::CAUTION,
    "made_from": listed(inputs),
        "files": listed(files),
    }))
}

/// The manifest of a manual, which lets a later one take its place: its files with their hashes.
#[must_use]
pub fn manifest_of_manual(files: &[(String, Vec<u8>)]) -> Vec<u8> {
    pretty(&json!({
        "is": MARK_OF_MANUAL, "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") }, "files": listed(files),
    }))
}

/// The manifest of a resolved flow's files, so that the folder may be written anew.
#[must_use]
pub fn manifest_of_water(title: &str, files: &[(String, Vec<u8>)]) -> Vec<u8> {
    pretty(&json!({
        "is": MARK_OF_WATER, "title": title,
        "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") }, "files": listed(files),
    }))
}

/// Name, length and hash of each file.
fn listed(files: &[(String, Vec<u8>)]) -> Vec<Value> {
    files.iter().map(|(name, bytes)| json!({ "name": name, "bytes": bytes.len(), "sha256": hash(bytes) })).collect()
}

/// What stands against replacing a folder by one whose manifest bears this mark: that it is none of these, is of another
/// job, or holds what somebody put there or changed since. `files` are the folder's files, name and bytes.
#[must_use]
pub fn against_replacing(files: &[(String, Vec<u8>)], mark: &str, title: Option<&str>) -> Option<String> {
    let manifest = files.iter().find(|(name, _)| name == MANIFEST);
    let manifest: Option<Value> = manifest.and_then(|(_, bytes)| serde_json::from_slice(bytes).ok());
    let Some(manifest) = manifest.filter(|m| m["is"] == mark) else {
        return Some("exists and holds no manifest of ours".to_owned());
    };
    if let (Some(title), Some(there)) = (title, manifest["title"].as_str())
        && title != there
    {
        return Some(format!("holds the package of another job, \"{there}\""));
    }
    let listed = |name: &str, bytes: &[u8]| {
        let entries = manifest["files"].as_array().into_iter().flatten();
        entries.clone().find(|e| e["name"] == name).map(|e| e["sha256"] == hash(bytes))
    };
    let mut strange = Vec::new();
    for (name, bytes) in files.iter().filter(|(name, _)| name != MANIFEST) {
        match listed(name, bytes) {
            Some(true) => {}
            Some(false) => strange.push(format!("{name}, changed since")),
            None => strange.push(format!("{name}, not of the package")),
        }
    }
    (!strange.is_empty()).then(|| format!("holds files that would be lost: {}", strange.join("; ")))
}

/// SHA-256 of bytes, in hexadecimal.
#[must_use]
pub fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}

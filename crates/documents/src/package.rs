//! The package: names and bytes of all documents, and a manifest with their hashes.

use crate::Edition;
use crate::exchange::{of_drawing, of_job};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use stillrise_search::Settled;

/// The manifest's file name; a folder that holds one of ours may be replaced.
pub const MANIFEST: &str = "manifest.json";
/// What the manifest says it is.
pub const MARK: &str = "stillrise submittal";
/// What the manifest of the manual says it is.
pub const MARK_OF_MANUAL: &str = "stillrise manual";

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

/// The documents that are made one after the other, as [`package_step_by_step`] names them.
pub const STEPS: [&str; 5] = ["drawings", "charts", "papers", "result for programs", "list with hashes"];

/// The same, telling before each document which it is; where `goes_on` says no, nothing more is made and nothing is answered.
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
    let [drawing, charts, papers, result, list] = STEPS;
    let mut files: Vec<(String, Vec<u8>)> = Vec::new();
    if !goes_on(drawing) {
        return Ok(None);
    }
    let set = crate::drawings::set(settled, edition);
    files.extend(drawings(settled, edition, &set)?);
    files.extend(of_job(settled, edition).map_err(|reason| PackageFault { document: "workbook", reason })?);
    if !goes_on(charts) {
        return Ok(None);
    }
    let drawn = crate::charts::charts(settled);
    if settled.risk.is_some() && edition != Edition::Client {
        files.extend(drawn.iter().map(|c| (format!("charts/{}.svg", c.name), c.svg.clone().into_bytes())));
    }
    let sheets = crate::drawings::kinds_of(&set);
    for paper in crate::papers::of(settled, edition) {
        if !goes_on(papers) {
            return Ok(None);
        }
        let made = crate::papers::typeset_beside(settled, edition, paper, &drawn, Some(&sheets))
            .map_err(|fault| PackageFault { document: paper.name, reason: format!("{fault:?}") })?;
        files.push((format!("{}.pdf", paper.name), made.bytes));
    }
    if !goes_on(result) {
        return Ok(None);
    }
    // Data for programs and for whoever checks: a client reads the papers.
    if edition != Edition::Client {
        files.push(("data/trail.txt".to_owned(), crate::trail::trail(settled, 140).into_bytes()));
        files.push(("data/result.json".to_owned(), pretty(&crate::result::result(settled, edition))));
        let texts = set.iter().map(|d| format!("{}\n\n{}\n", d.title, d.sheet_texts));
        files.push(("data/drawings.txt".to_owned(), texts.collect::<String>().into_bytes()));
    }
    if edition.is_internal() {
        files.extend(inputs.iter().map(|(name, bytes)| (format!("inputs/{name}"), bytes.clone())));
    }
    if !goes_on(list) {
        return Ok(None);
    }
    let manifest = manifest(settled, edition, &files, inputs);
    files.push((MANIFEST.to_owned(), manifest));
    Ok(Some(files))
}

/// The drawing set: all sheets as one PDF at true size, each as a picture.
fn drawings(
    settled: &Settled,
    edition: Edition,
    set: &[crate::drawings::Drawing],
) -> Result<Vec<(String, Vec<u8>)>, PackageFault> {
    let mut files = Vec::new();
    let (Some(first), scenes) = (set.first(), set.iter().map(|d| &d.scene).collect::<Vec<_>>()) else {
        return Ok(files);
    };
    let ident = format!("stillrise-drawings-{}-{}", edition.word(), crate::report::fingerprint(settled));
    let title = first.title.split(", general").next().unwrap_or(&first.title);
    let pdf = crate::render::pdf::sheets(&scenes, title, &ident)
        .map_err(|fault| PackageFault { document: "drawings", reason: format!("{fault:?}") })?;
    files.push(("drawings.pdf".to_owned(), pdf.bytes));
    for (k, drawing) in set.iter().enumerate() {
        let name = format!("drawings/{}-{}", k + 1, drawing.name);
        files.extend(of_drawing(drawing, &name, settled.job.enquiry.system()));
    }
    Ok(files)
}

/// JSON as it is written to files: indented, with a line end.
#[must_use]
pub fn pretty(value: &Value) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(value).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

fn manifest(settled: &Settled, edition: Edition, files: &[(String, Vec<u8>)], inputs: &[(String, Vec<u8>)]) -> Vec<u8> {
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

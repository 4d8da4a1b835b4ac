//! Files: reading an enquiry with what it names, writing a package whole or not at all.

use crate::{End, embedded};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_documents::package::{MANIFEST, MARK};
use stillrise_search::{Settled, settle};
use stillrise_units::Fault;

/// Name and bytes of each file that was read.
pub type Inputs = Vec<(String, Vec<u8>)>;

/// An enquiry and the files it was read from.
pub struct Opened {
    /// The enquiry.
    pub enquiry: Enquiry,
    /// Name and bytes of each file.
    pub inputs: Inputs,
}

/// Opens an enquiry file and the files it names, which lie beside it.
pub fn open(path: &Path) -> Result<Opened, End> {
    let path = if path.is_dir() { path.join("enquiry.toml") } else { path.to_owned() };
    let place = path.display().to_string();
    let bytes = fs::read(&path).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => End::Refused(vec![Fault::new(
            &place,
            "there is no such file",
            "check the path, or start one with `stillrise new`",
        )]),
        io::ErrorKind::PermissionDenied => {
            End::Refused(vec![Fault::new(&place, "the file may not be read", "check its permissions")])
        }
        _ => End::Machine(format!("{place} cannot be read: {error}")),
    })?;
    let text = String::from_utf8(bytes.clone())
        .map_err(|_| End::Refused(vec![Fault::new(&place, "is not UTF-8 text", "save it as UTF-8")]))?;
    let folder = path.parent().map_or_else(PathBuf::new, Path::to_owned);
    let seen = RefCell::new(BTreeMap::new());
    let files = |name: &str| {
        let bytes = fs::read(folder.join(name)).ok()?;
        seen.borrow_mut().insert(name.to_owned(), bytes.clone());
        Some(bytes)
    };
    let enquiry = read_enquiry(&text, &files).map_err(End::Refused)?;
    let mut inputs = vec![("enquiry.toml".to_owned(), bytes)];
    // A name that leads out of the folder keeps only its last part inside the package.
    inputs.extend(seen.into_inner().into_iter().map(|(name, bytes)| {
        let last = Path::new(&name).file_name().map_or_else(|| "file".to_owned(), |n| n.to_string_lossy().into_owned());
        (last, bytes)
    }));
    Ok(Opened { enquiry, inputs })
}

/// Opens an enquiry and settles it.
pub fn settled(path: &Path) -> Result<(Settled, Inputs), End> {
    let opened = open(path)?;
    Ok((settle(&opened.enquiry, &embedded::demo_range()), opened.inputs))
}

/// How a finished command ends.
pub fn end(settled: &Settled) -> End {
    if settled.fails() { End::Fails } else { End::Done }
}

/// Refuses a target folder that exists and is not a package of ours.
pub fn may_replace(out: &Path) -> Result<(), End> {
    if !out.exists() {
        return Ok(());
    }
    let ours = fs::read_to_string(out.join(MANIFEST)).is_ok_and(|text| text.contains(MARK));
    if ours {
        return Ok(());
    }
    Err(End::Refused(vec![Fault::new(
        out.display().to_string(),
        "exists and holds no manifest of ours",
        "name another folder, or remove that one yourself",
    )]))
}

/// Writes a folder whole or not at all: beside its place first, then by renaming.
pub fn write_folder(out: &Path, files: &[(String, Vec<u8>)]) -> Result<(), End> {
    may_replace(out)?;
    let machine = |what: &str, error: &io::Error| {
        End::Machine(format!("{}: {what}: {error}; nothing was changed", out.display()))
    };
    let parent = out.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    fs::create_dir_all(parent).map_err(|e| machine("the folder above cannot be made", &e))?;
    let fresh = tempfile::Builder::new()
        .prefix(".stillrise-")
        .tempdir_in(parent)
        .map_err(|e| machine("cannot be written beside", &e))?;
    let new = fresh.path().join("new");
    for (name, bytes) in files {
        let path = new.join(name);
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder).map_err(|e| machine("a folder cannot be made", &e))?;
        }
        fs::write(&path, bytes).map_err(|e| machine("a file cannot be written", &e))?;
    }
    if out.exists() {
        let old = fresh.path().join("old");
        fs::rename(out, &old).map_err(|e| machine("the old package cannot be moved away", &e))?;
        if let Err(error) = fs::rename(&new, out) {
            if fs::rename(&old, out).is_ok() {
                return Err(machine("the new package cannot be moved in", &error));
            }
            // The scratch folder now holds the only old package and must outlive this run.
            return Err(End::Machine(format!(
                "{}: the new package cannot be moved in: {error}; the old one is kept in {}",
                out.display(),
                fresh.keep().join("old").display()
            )));
        }
    } else {
        fs::rename(&new, out).map_err(|e| machine("the package cannot be moved in", &e))?;
    }
    Ok(())
}

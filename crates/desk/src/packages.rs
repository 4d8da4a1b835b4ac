//! Packages on disk: written whole or not at all.

use crate::Trouble;
use crate::files::Inputs;
use std::fs;
use std::io;
use std::path::Path;
use stillrise_documents::package::{MANIFEST, MARK, against_replacing};
use stillrise_units::Fault;

/// Refuses a target that exists, unless it is an empty folder or an unchanged package of ours, of the job with
/// this title if one is named.
///
/// # Errors
/// [`Trouble`] that says what stands there.
pub fn may_replace(out: &Path, title: Option<&str>) -> Result<(), Trouble> {
    may_replace_marked(out, MARK, title)
}

/// The same of a folder whose manifest bears this mark.
fn may_replace_marked(out: &Path, mark: &str, title: Option<&str>) -> Result<(), Trouble> {
    let refuse = |reason: String| {
        let remedy = "name another folder, or remove that one yourself";
        Err(Trouble::Refused(vec![Fault::new(out.display().to_string(), reason, remedy)]))
    };
    if fs::symlink_metadata(out).is_err() {
        return Ok(());
    }
    if out.is_symlink() || !out.is_dir() {
        return refuse("exists and is no folder".to_owned());
    }
    // A folder without a manifest is not ours, whatever it holds; it need not be read.
    let empty = fs::read_dir(out).is_ok_and(|mut entries| entries.next().is_none());
    if empty {
        return Ok(());
    }
    let files = if out.join(MANIFEST).is_file() { below(out) } else { Ok(Vec::new()) };
    match files {
        Err(error) => Err(Trouble::Machine(format!("{} cannot be read: {error}", out.display()))),
        Ok(files) => against_replacing(&files, mark, title).map_or(Ok(()), refuse),
    }
}

/// All files below a folder, by their names from there.
fn below(folder: &Path) -> io::Result<Inputs> {
    let mut files = Vec::new();
    let mut open = vec![(folder.to_owned(), String::new())];
    while let Some((place, before)) = open.pop() {
        for entry in fs::read_dir(place)? {
            let entry = entry?;
            let name = format!("{before}{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                open.push((entry.path(), format!("{name}/")));
            } else {
                files.push((name, fs::read(entry.path())?));
            }
        }
    }
    files.sort();
    Ok(files)
}

/// Writes the folder of a job whole or not at all: beside its place first, then by renaming.
///
/// # Errors
/// As [`may_replace`], and when the disk fails: then nothing was changed, or what was is named.
pub fn write_folder(out: &Path, title: Option<&str>, files: &[(String, Vec<u8>)]) -> Result<(), Trouble> {
    write_marked(out, MARK, title, files)
}

/// The same of a folder whose manifest bears this mark.
///
/// # Errors
/// As [`write_folder`].
pub fn write_marked(out: &Path, mark: &str, title: Option<&str>, files: &[(String, Vec<u8>)]) -> Result<(), Trouble> {
    may_replace_marked(out, mark, title)?;
    let machine = |what: &str, error: &io::Error| {
        Trouble::Machine(format!("{}: {what}: {error}; nothing was changed", out.display()))
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
            return Err(Trouble::Machine(format!(
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

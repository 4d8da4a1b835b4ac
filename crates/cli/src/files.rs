//! Files: reading an enquiry with what it names, writing a package whole or not at all.

use crate::{End, embedded};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Read};
use std::panic::resume_unwind;
use std::path::{Path, PathBuf};
use std::thread;
use stillrise_design::enquiry::range::Range;
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_documents::package::{MANIFEST, against_replacing};
use stillrise_search::{Settled, settle};
use stillrise_units::{Fault, nearest};

/// Name and bytes of each file that was read.
pub type Inputs = Vec<(String, Vec<u8>)>;

/// An enquiry and the files it was read from.
pub struct Opened {
    /// The enquiry.
    pub enquiry: Enquiry,
    /// Name and bytes of each file.
    pub inputs: Inputs,
}

/// Bytes that an enquiry, a range or a table may have.
const LARGEST: u64 = 1_000_000;

/// A whole file, unless it is too large; one without an end is never read to it.
fn read(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    fs::File::open(path)?.take(LARGEST + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > LARGEST { Err(io::ErrorKind::FileTooLarge.into()) } else { Ok(bytes) }
}

/// Opens an enquiry file and the files it names, which lie beside it.
pub fn open(path: &Path) -> Result<Opened, End> {
    let path = if path.is_dir() { path.join("enquiry.toml") } else { path.to_owned() };
    let place = path.display().to_string();
    let bytes = read(&path).map_err(|error| match error.kind() {
        io::ErrorKind::FileTooLarge => End::Refused(vec![Fault::new(
            &place,
            format!("is larger than {} kB, which no enquiry is", LARGEST / 1000),
            "check which file it is",
        )]),
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
        let bytes = read(&folder.join(name)).ok()?;
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
    let (settled, inputs, _) = settled_from(path)?;
    Ok((settled, inputs))
}

/// The same, with the other trains that would do.
pub fn with_alternatives(path: &Path) -> Result<(Settled, Inputs), End> {
    let (mut settled, inputs, demo) = settled_from(path)?;
    settled.work_alternatives(&demo);
    Ok((settled, inputs))
}

/// A settled enquiry, what it was read from, and the demo range.
fn settled_from(path: &Path) -> Result<(Settled, Inputs, Range), End> {
    let (opened, demo) = beside(|| open(path), embedded::demo_range);
    let opened = opened?;
    if let Some(fault) = unknown_model(&opened.enquiry, &demo) {
        return Err(End::Refused(vec![fault]));
    }
    Ok((settle(&opened.enquiry, &demo), opened.inputs, demo))
}

/// Two pieces of work, the second on a thread of its own where the machine gives one.
fn beside<A, B: Send>(one: impl FnOnce() -> A, other: impl Fn() -> B + Send + Sync) -> (A, B) {
    thread::scope(|scope| {
        let begun = thread::Builder::new().spawn_scoped(scope, &other);
        let one = one();
        let other = match begun {
            Ok(begun) => begun.join().unwrap_or_else(|fault| resume_unwind(fault)),
            Err(_) => other(),
        };
        (one, other)
    })
}

/// A model that the range does not hold, where the dimensions are not stated either.
fn unknown_model(enquiry: &Enquiry, demo: &Range) -> Option<Fault> {
    let model = enquiry.unit.model.as_ref().filter(|_| enquiry.unit.dimensions.is_none())?;
    let range = enquiry.range.as_ref().unwrap_or(demo);
    let names: Vec<&str> = range.models.iter().filter_map(|m| m.model.as_deref()).collect();
    if names.contains(&model.as_str()) {
        return None;
    }
    let remedy = match nearest(model, names.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"? The range holds {}", names.join(", ")),
        None => format!("the range holds {}; or state the unit's dimensions", names.join(", ")),
    };
    Some(Fault::new("unit: model", format!("\"{model}\" is not in the range"), remedy))
}

/// How a finished command ends.
pub fn end(settled: &Settled) -> End {
    if settled.fails() { End::Fails } else { End::Done }
}

/// Refuses a target that exists, unless it is an empty folder or an unchanged package of ours, of the job with
/// this title if one is named.
pub fn may_replace(out: &Path, title: Option<&str>) -> Result<(), End> {
    let refuse = |reason: String| {
        let remedy = "name another folder, or remove that one yourself";
        Err(End::Refused(vec![Fault::new(out.display().to_string(), reason, remedy)]))
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
        Err(error) => Err(End::Machine(format!("{} cannot be read: {error}", out.display()))),
        Ok(files) => against_replacing(&files, title).map_or(Ok(()), refuse),
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
pub fn write_folder(out: &Path, title: Option<&str>, files: &[(String, Vec<u8>)]) -> Result<(), End> {
    may_replace(out, title)?;
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

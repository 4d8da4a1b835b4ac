//! Files replaced whole: written beside their place, brought to the disk, then renamed. Whoever stops at any moment leaves
//! the old content or the new one.

use crate::Trouble;
use crate::folder::Stamp;
use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

/// How the files are called that are written first; what is left of one was never moved in.
const BEFORE: &str = ".stillrise-";
/// The file by which programs on one folder take turns.
const LOCK: &str = ".stillrise.lock";
/// How long another program may hold it.
const PATIENCE: Duration = Duration::from_secs(5);

/// Why a file was not saved; what stood there stands.
#[derive(Debug)]
pub enum Unsaved {
    /// Another hand changed it meanwhile: what it holds now.
    Changed(Vec<u8>),
    /// It is gone, or leads out of the folder now.
    Gone,
    /// The disk does not take it: a sentence with what helps.
    Disk(String),
}

impl core::fmt::Display for Unsaved {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Unsaved::Changed(_) => f.write_str("the file was changed by another program meanwhile"),
            Unsaved::Gone => f.write_str("the file is gone from its folder; put it back, or start a new enquiry"),
            Unsaved::Disk(reason) => f.write_str(reason),
        }
    }
}

/// A failure of the disk in a sentence that helps.
#[must_use]
pub fn disk(error: &io::Error) -> Unsaved {
    let remedy = match error.kind() {
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
            "the disk is full: make room, then change it again"
        }
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
            "the folder may not be written: start with one that may, or change its permissions"
        }
        io::ErrorKind::WouldBlock => "another program holds the folder: close it, then change it again",
        _ => "check the disk, then change it again",
    };
    Unsaved::Disk(format!("nothing was saved and the file is as it was ({error}); {remedy}"))
}

/// Replaces a file in a folder, if it still holds what it held by the stamp; `None` takes whatever stands there.
///
/// # Errors
/// [`Unsaved`]; then the file is as it was.
pub fn replace(home: &Path, file: &Path, bytes: &[u8], was: Option<&Stamp>) -> Result<Stamp, Unsaved> {
    let _turn = turn(home).map_err(|error| disk(&error))?;
    if let Some(was) = was {
        let now = match fs::read(file) {
            Ok(now) => now,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Err(Unsaved::Gone),
            Err(error) => return Err(disk(&error)),
        };
        if Stamp::of(&now) != *was {
            return Err(Unsaved::Changed(now));
        }
    }
    sweep(home);
    write(home, file, bytes).map_err(|error| disk(&error))?;
    Ok(Stamp::of(bytes))
}

/// Writes beside the place, and renames what is whole and on the disk.
fn write(home: &Path, file: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut fresh = begun(home)?;
    fresh.write_all(bytes)?;
    // A file of a person is read by his other programs too: it keeps the permissions that it had.
    if let Ok(known) = fs::metadata(file) {
        fresh.as_file().set_permissions(known.permissions())?;
    }
    fresh.as_file().sync_all()?;
    fresh.persist(file).map_err(|failed| failed.error)?;
    // The name too must outlive a loss of power; a file system that cannot say so is taken at its word.
    if let Ok(folder) = File::open(home) {
        let _ = folder.sync_all();
    }
    Ok(())
}

/// A file to be written first, with the permissions that a new file of a person has.
fn begun(home: &Path) -> io::Result<tempfile::NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(BEFORE);
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    builder.tempfile_in(home)
}

/// A new folder with files in it, whole or not at all.
///
/// # Errors
/// [`Trouble`] when the disk does not take it.
pub fn folder(root: &Path, home: &Path, files: &[(&str, &[u8])]) -> Result<(), Trouble> {
    let make = || -> io::Result<()> {
        let _turn = turn(root)?;
        sweep(root);
        let fresh = tempfile::Builder::new().prefix(BEFORE).tempdir_in(root)?;
        for (name, bytes) in files {
            let path = fresh.path().join(name);
            path.parent().map_or(Ok(()), fs::create_dir_all)?;
            let mut file = File::create(path)?;
            file.write_all(bytes)?;
            file.sync_all()?;
        }
        // Others may look into a folder of a person as into its neighbours.
        if let Ok(known) = fs::metadata(root) {
            fs::set_permissions(fresh.path(), known.permissions())?;
        }
        let kept = fresh.keep();
        fs::rename(&kept, home).inspect_err(|_| {
            let _ = fs::remove_dir_all(&kept);
        })
    };
    make().map_err(|error| Trouble::Machine(format!("{}: {}", home.display(), disk(&error))))?;
    // The name too must outlive a loss of power, as that of a file.
    if let Ok(above) = File::open(root) {
        let _ = above.sync_all();
    }
    Ok(())
}

/// Waits for one's turn on a folder; it ends with what is answered.
fn turn(home: &Path) -> io::Result<File> {
    let lock = File::options().create(true).truncate(false).write(true).open(home.join(LOCK))?;
    let begun = Instant::now();
    loop {
        match lock.try_lock() {
            Ok(()) => return Ok(lock),
            Err(TryLockError::Error(error)) => return Err(error),
            Err(TryLockError::WouldBlock) if begun.elapsed() > PATIENCE => return Err(io::ErrorKind::WouldBlock.into()),
            Err(TryLockError::WouldBlock) => thread::sleep(Duration::from_millis(5)),
        }
    }
}

/// Takes away what a program left that was stopped while it wrote; who calls holds the lock.
fn sweep(home: &Path) {
    let Ok(entries) = fs::read_dir(home) else { return };
    for entry in entries.flatten() {
        let left = entry.file_name().to_string_lossy().starts_with(BEFORE);
        if left && entry.file_type().is_ok_and(|kind| kind.is_file()) {
            let _ = fs::remove_file(entry.path());
        }
    }
}

//! A folder of enquiries: which there are, what they say, and new words for them saved whole or not at all.
//!
//! Nothing outside the folder is read or written, whatever a name or a link says. A save first looks whether the file is
//! still the one that was read; two programs on one folder take turns by a lock file.

use crate::Trouble;
use crate::revisions::ISSUED;
use crate::save::{self, Unsaved};
use std::fs;
use std::io::{self, Read};
use std::path::{Component, Path, PathBuf};
use stillrise_documents::package::hash;
use stillrise_units::Fault;

/// Bytes that an enquiry or a file that it names may have.
pub const LARGEST: u64 = 1_000_000;
/// The file that holds an enquiry in a folder of its own.
pub const ENQUIRY: &str = "enquiry.toml";
/// The file beside it that holds the customer's text.
const MAIL: &str = "mail.txt";
/// Letters that a name may have.
const LONGEST_NAME: usize = 80;
/// Bytes of a name: a file system counts these, and some letters have four.
const LONGEST_BYTES: usize = 200;

/// What a file held when it was read: two of one content have one stamp.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stamp(String);

impl Stamp {
    /// Of a content.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(hash(bytes))
    }
    /// As text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }
}

/// A folder that holds enquiries.
#[derive(Debug, Clone)]
pub struct Folder {
    root: PathBuf,
}

/// Where one enquiry lies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// Its name: that of its folder, or of its file without the ending.
    pub name: String,
    /// Its file.
    pub file: PathBuf,
    /// The customer's text beside it, if there is one.
    pub mail: PathBuf,
    /// The folder that it and the files it names lie in.
    pub home: PathBuf,
}

impl Folder {
    /// Opens a folder; it is made where there is none.
    ///
    /// # Errors
    /// [`Trouble`] when it is no folder or cannot be made.
    pub fn open(path: &Path) -> Result<Self, Trouble> {
        let shown = path.display().to_string();
        if path.exists() && !path.is_dir() {
            let remedy = "name the folder that holds the enquiries";
            return Err(Trouble::Refused(vec![Fault::new(shown, "is no folder", remedy)]));
        }
        let cannot = |what: &str, error: &io::Error| Trouble::Machine(format!("{shown} {what}: {error}"));
        fs::create_dir_all(path).map_err(|error| cannot("cannot be made", &error))?;
        let root = path.canonicalize().map_err(|error| cannot("cannot be opened", &error))?;
        Ok(Self { root })
    }

    /// The folder itself.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The enquiries in it, by name.
    ///
    /// # Errors
    /// [`Trouble`] when it cannot be read.
    pub fn list(&self) -> Result<Vec<Place>, Trouble> {
        if self.root.join(ENQUIRY).is_file() {
            return Ok(vec![self.alone()]);
        }
        let cannot = |error: io::Error| Trouble::Machine(format!("{} cannot be read: {error}", self.root.display()));
        let mut found = Vec::new();
        for entry in fs::read_dir(&self.root).map_err(cannot)? {
            let Ok(entry) = entry else { continue };
            let name = entry.file_name().to_string_lossy().into_owned();
            let name = match entry.file_type() {
                Ok(kind) if kind.is_dir() && entry.path().join(ENQUIRY).is_file() => name,
                Ok(kind) if kind.is_file() => match name.strip_suffix(".toml") {
                    Some(stem) if !stem.contains(&format!(".{ISSUED}")) && self.holds_enquiry(&entry.path()) => {
                        stem.to_owned()
                    }
                    _ => continue,
                },
                _ => continue,
            };
            found.extend(self.find(&name).ok());
        }
        found.sort_by(|a, b| a.name.cmp(&b.name));
        found.dedup_by(|a, b| a.name == b.name);
        Ok(found)
    }

    /// Whether a file looks like an enquiry and not like a range: it has a block of that name.
    fn holds_enquiry(&self, path: &Path) -> bool {
        let read = self.read(path).ok().and_then(|bytes| String::from_utf8(bytes).ok());
        read.is_some_and(|text| text.lines().any(|line| line.trim_start().starts_with("[enquiry]")))
    }

    /// The enquiry that the folder itself is.
    fn alone(&self) -> Place {
        let name = self.root.file_name().map_or_else(|| "enquiry".to_owned(), |n| n.to_string_lossy().into_owned());
        Place { name, file: self.root.join(ENQUIRY), mail: self.root.join(MAIL), home: self.root.clone() }
    }

    /// One of its enquiries.
    ///
    /// # Errors
    /// [`Trouble`] when there is none of the name.
    pub fn find(&self, name: &str) -> Result<Place, Trouble> {
        let none = || {
            let remedy = "choose one of the list, or start a new one";
            Trouble::Refused(vec![Fault::new(format!("\"{name}\""), "there is no such enquiry in the folder", remedy)])
        };
        if !is_name(name) {
            return Err(none());
        }
        if self.root.join(ENQUIRY).is_file() {
            return Some(self.alone()).filter(|place| place.name == name).ok_or_else(none);
        }
        let own = self.place(name);
        if self.is_within(&own.file) {
            return Ok(own);
        }
        let file = self.root.join(format!("{name}.toml"));
        let mail = self.root.join(format!("{name}.{MAIL}"));
        let place = Place { name: name.to_owned(), file, mail, home: self.root.clone() };
        if self.is_within(&place.file) { Ok(place) } else { Err(none()) }
    }

    /// Where an enquiry in a folder of its own lies, or would lie.
    fn place(&self, name: &str) -> Place {
        let home = self.root.join(name);
        Place { name: name.to_owned(), file: home.join(ENQUIRY), mail: home.join(MAIL), home }
    }

    /// Whether a path leads to a file in the folder, links followed.
    fn is_within(&self, path: &Path) -> bool {
        path.canonicalize().is_ok_and(|real| real.starts_with(&self.root) && real.is_file())
    }

    /// A whole file of the folder; one that is too large, or lies elsewhere, is not read.
    pub(crate) fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        if !self.is_within(path) {
            return Err(io::ErrorKind::NotFound.into());
        }
        let mut bytes = Vec::new();
        fs::File::open(path)?.take(LARGEST + 1).read_to_end(&mut bytes)?;
        if bytes.len() as u64 > LARGEST { Err(io::ErrorKind::FileTooLarge.into()) } else { Ok(bytes) }
    }

    /// What an enquiry says, and the stamp to save it by.
    ///
    /// # Errors
    /// [`Trouble`] when it cannot be read.
    pub fn text(&self, place: &Place) -> Result<(String, Stamp), Trouble> {
        let refused = |reason: &str, remedy: &str| {
            Trouble::Refused(vec![Fault::new(format!("\"{}\"", place.name), reason, remedy)])
        };
        let bytes = self.read(&place.file).map_err(|error| match error.kind() {
            io::ErrorKind::NotFound => refused("its file is gone from the folder", "choose another of the list"),
            io::ErrorKind::FileTooLarge => refused("is larger than 1 MB, which no enquiry is", "check the file"),
            io::ErrorKind::PermissionDenied => refused("the file may not be read", "check its permissions"),
            _ => Trouble::Machine(format!("\"{}\" cannot be read: {error}", place.name)),
        })?;
        let stamp = Stamp::of(&bytes);
        let text = String::from_utf8(bytes).map_err(|_| refused("is not UTF-8 text", "save it as UTF-8"))?;
        Ok((text, stamp))
    }

    /// A file that an enquiry names: only one that lies in the folder.
    #[must_use]
    pub fn beside(&self, place: &Place, name: &str) -> Option<Vec<u8>> {
        let named = Path::new(name);
        let plain = named.components().all(|part| matches!(part, Component::Normal(_) | Component::CurDir));
        plain.then(|| self.read(&place.home.join(named)).ok()).flatten()
    }

    /// The customer's text beside an enquiry.
    #[must_use]
    pub fn mail(&self, place: &Place) -> Option<String> {
        self.read(&place.mail).ok().and_then(|bytes| String::from_utf8(bytes).ok())
    }

    /// Saves what an enquiry says, if its file is still what it was by the stamp.
    ///
    /// # Errors
    /// [`Unsaved`]: what stands there now, or why the disk did not take it.
    pub fn save(&self, place: &Place, text: &str, was: &Stamp) -> Result<Stamp, Unsaved> {
        if !self.is_within(&place.file) {
            return Err(Unsaved::Gone);
        }
        save::replace(&place.home, &place.file, text.as_bytes(), Some(was))
    }

    /// Saves the customer's text beside an enquiry.
    ///
    /// # Errors
    /// As [`Folder::save`].
    pub fn save_mail(&self, place: &Place, text: &str) -> Result<(), Unsaved> {
        if place.mail.is_symlink() {
            return Err(Unsaved::Gone);
        }
        save::replace(&place.home, &place.mail, text.as_bytes(), None).map(|_| ())
    }

    /// A new enquiry in a folder of its own.
    ///
    /// # Errors
    /// [`Trouble`] when the name is none or is taken, or the disk does not take it.
    pub fn create(&self, name: &str, files: &[(&str, &[u8])]) -> Result<Place, Trouble> {
        let refused = |reason: &str, remedy: &str| {
            Err(Trouble::Refused(vec![Fault::new(format!("name \"{name}\""), reason, remedy)]))
        };
        if !is_name(name) {
            return refused(
                "is no name for an enquiry",
                "use letters, digits, spaces, points, hyphens and underscores, up to 80 of them",
            );
        }
        if self.root.join(ENQUIRY).is_file() {
            return refused(
                "the folder is one enquiry itself and holds no others",
                "start with the folder above it, in which several can lie",
            );
        }
        let place = self.place(name);
        if place.home.symlink_metadata().is_ok() || self.root.join(format!("{name}.toml")).exists() {
            return refused("is taken in this folder", "choose another name");
        }
        save::folder(&self.root, &place.home, files)?;
        Ok(place)
    }

    /// A name that is free in the folder: the one given, or the same with a number behind it.
    #[must_use]
    pub fn free_name(&self, wish: &str) -> String {
        let plain: String = wish
            .chars()
            .map(|c| if c.is_alphanumeric() || matches!(c, '-' | '_' | '.') { c } else { '-' })
            .take(LONGEST_NAME - 5)
            .collect();
        let mut plain = plain.to_lowercase();
        while plain.len() > LONGEST_BYTES - 5 {
            plain.pop();
        }
        let plain = plain.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-");
        let plain = plain.trim_matches(['.', '-', '_']).to_owned();
        let plain = if plain.is_empty() { "enquiry".to_owned() } else { plain };
        let is_free = |name: &str| {
            self.root.join(name).symlink_metadata().is_err() && !self.root.join(format!("{name}.toml")).exists()
        };
        let numbered = (2..1000).map(|k| format!("{plain}-{k}"));
        core::iter::once(plain.clone()).chain(numbered).find(|name| is_free(name)).unwrap_or(plain)
    }
}

/// Whether a text can name an enquiry: nothing that leads elsewhere, and nothing that a file system or an address reads
/// otherwise.
#[must_use]
pub fn is_name(name: &str) -> bool {
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '.' | ' ' | '(' | ')');
    let ends = |c: char| c == '.' || c == ' ';
    !name.is_empty()
        && name.chars().count() <= LONGEST_NAME
        && name.len() <= LONGEST_BYTES
        && name.chars().all(plain)
        && !name.starts_with(ends)
        && !name.ends_with(ends)
}

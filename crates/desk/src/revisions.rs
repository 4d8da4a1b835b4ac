//! Revisions of an enquiry that were issued: the text of each is kept beside it, so that a later one can be held against it.

use crate::folder::{ENQUIRY, Folder, Place};
use crate::save::{self, Unsaved};
use std::fs;
use std::path::PathBuf;

/// What stands before the name of a revision in its file's.
pub(crate) const ISSUED: &str = "issued-";
/// Letters of a revision's name in that of its file.
const LONGEST: usize = 24;

/// A revision's name as a part of a file's: what a file system reads otherwise is left out.
fn plain(revision: &str) -> String {
    let kept = |c: char| if c.is_alphanumeric() || matches!(c, '-' | '.' | ' ') { c } else { '_' };
    let name: String = revision.trim().chars().map(kept).take(LONGEST).collect();
    if name.is_empty() { "unnamed".to_owned() } else { name }
}

/// What the files of an enquiry's revisions begin with: one in a folder of its own shares it with no other.
fn front(place: &Place) -> String {
    let alone = place.file.file_name().is_some_and(|name| name == ENQUIRY);
    if alone { ISSUED.to_owned() } else { format!("{}.{ISSUED}", place.name) }
}

fn path(place: &Place, revision: &str) -> PathBuf {
    place.home.join(format!("{}{}.toml", front(place), plain(revision)))
}

impl Folder {
    /// The revisions of an enquiry that were kept, by name.
    #[must_use]
    pub fn revisions(&self, place: &Place) -> Vec<String> {
        let front = front(place);
        let names = fs::read_dir(&place.home).into_iter().flatten().flatten();
        let mut all: Vec<String> = names
            .filter_map(|entry| {
                let name = entry.file_name().to_string_lossy().into_owned();
                Some(name.strip_prefix(&front)?.strip_suffix(".toml")?.to_owned())
            })
            .collect();
        all.sort();
        all
    }

    /// The text of one of them, as it was issued.
    #[must_use]
    pub fn revision(&self, place: &Place, revision: &str) -> Option<String> {
        self.read(&path(place, revision)).ok().and_then(|bytes| String::from_utf8(bytes).ok())
    }

    /// Keeps the text of a revision that is issued; one that was issued before under its name is replaced.
    ///
    /// # Errors
    /// [`Unsaved`] when the disk does not take it.
    pub fn keep_revision(&self, place: &Place, revision: &str, text: &str) -> Result<(), Unsaved> {
        let path = path(place, revision);
        if path.is_symlink() {
            return Err(Unsaved::Gone);
        }
        save::replace(&place.home, &path, text.as_bytes(), None).map(|_| ())
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn no_name_of_a_revision_leads_elsewhere() {
        for (revision, name) in [("A", "A"), ("P 2", "P 2"), ("../../x", ".._.._x"), ("", "unnamed"), ("Ä/b", "Ä_b")]
        {
            assert_eq!(plain(revision), name);
        }
        assert_eq!(plain(&"a".repeat(300)).len(), 24);
    }
}

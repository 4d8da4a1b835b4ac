//! Revisions of an enquiry that were issued: a frozen set of each is kept beside it, so that a later one can be held against
//! it. Of those issued before sets were kept, the text alone stands there.

use crate::folder::{ENQUIRY, Folder, Place};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use stillrise_documents::package::MANIFEST;

/// What stands before the name of a revision in its file's.
pub(crate) const ISSUED: &str = "issued-";
/// Letters of a revision's name in that of its file.
const LONGEST: usize = 24;

/// A revision's name as a part of a file's: what a file system reads otherwise is left out.
pub(crate) fn plain(revision: &str) -> String {
    let kept = |c: char| if c.is_alphanumeric() || matches!(c, '-' | '.' | ' ') { c } else { '_' };
    let name: String = revision.trim().chars().map(kept).take(LONGEST).collect();
    if name.is_empty() { "unnamed".to_owned() } else { name }
}

/// What the sets of an enquiry's revisions begin with: one in a folder of its own shares it with no other.
pub(crate) fn front_of(file: &Path) -> String {
    let alone = file.file_name().is_some_and(|name| name == ENQUIRY);
    let stem = || file.file_stem().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    if alone { ISSUED.to_owned() } else { format!("{}.{ISSUED}", stem()) }
}

/// The file that holds the text alone of a revision.
fn text_file(file: &Path, revision: &str) -> PathBuf {
    file.with_file_name(format!("{}{}.toml", front_of(file), plain(revision)))
}

/// The text of a revision of which it alone was kept.
pub(crate) fn kept_text(file: &Path, revision: &str) -> Option<String> {
    let path = text_file(file, revision);
    if path.is_symlink() {
        return None;
    }
    crate::files::read(&path).ok().and_then(|bytes| String::from_utf8(bytes).ok())
}

/// The revisions of an enquiry that were issued, by name.
pub(crate) fn names(file: &Path) -> Vec<String> {
    let front = front_of(file);
    let home = file.parent().filter(|home| !home.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    let entries = fs::read_dir(home).into_iter().flatten().flatten();
    let all: BTreeSet<String> = entries
        .filter_map(|entry| {
            let name = entry.file_name().to_string_lossy().into_owned();
            let own = name.strip_prefix(&front)?;
            match entry.path().join(MANIFEST).is_file() {
                true => Some(own.to_owned()),
                false => own.strip_suffix(".toml").map(str::to_owned),
            }
        })
        .collect();
    all.into_iter().collect()
}

impl Folder {
    /// The revisions of an enquiry that were issued, by name.
    #[must_use]
    pub fn revisions(&self, place: &Place) -> Vec<String> {
        names(&place.file)
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

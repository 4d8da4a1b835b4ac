//! Enquiries on disk: read with what they name, and settled.

use crate::folder::ENQUIRY;
use crate::settings::Held;
use crate::{Trouble, jobs};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Read};
use std::panic::resume_unwind;
use std::path::{Path, PathBuf};
use std::thread;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_search::{Settled, settle};
use stillrise_units::{Fault, nearest};

/// Name and bytes of each file that was read.
pub type Inputs = Vec<(String, Vec<u8>)>;

/// An enquiry and the files it was read from.
pub struct Opened {
    /// The enquiry.
    pub enquiry: Enquiry,
    /// The files it was read from.
    pub taken: Taken,
}

/// All files that an enquiry was read from.
#[derive(Debug, Clone, Default)]
pub struct Taken {
    /// The enquiry as it is written.
    pub text: String,
    /// The files that it names, under the names it gives them.
    pub named: Inputs,
    /// The company's settings and their logo.
    pub settings: Inputs,
}

impl Taken {
    /// All of them as they lie side by side in one folder. A name that leads out of the folder keeps only its last part.
    #[must_use]
    pub fn inputs(&self) -> Inputs {
        let last = |name: &str| {
            Path::new(name).file_name().map_or_else(|| "file".to_owned(), |n| n.to_string_lossy().into_owned())
        };
        let own = core::iter::once((ENQUIRY.to_owned(), self.text.clone().into_bytes()));
        let named = self.named.iter().map(|(name, bytes)| (last(name), bytes.clone()));
        own.chain(named).chain(self.settings.iter().cloned()).collect()
    }
}

/// Bytes that an enquiry, a range or a table may have.
const LARGEST: u64 = 1_000_000;

/// A whole file, unless it is too large; one without an end is never read to it.
pub(crate) fn read(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    fs::File::open(path)?.take(LARGEST + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > LARGEST { Err(io::ErrorKind::FileTooLarge.into()) } else { Ok(bytes) }
}

/// The file of an enquiry that is named by it or by its folder.
#[must_use]
pub fn file_of(path: &Path) -> PathBuf {
    if path.is_dir() { path.join(ENQUIRY) } else { path.to_owned() }
}

/// Opens an enquiry file and the files it names, which lie beside it, under the company's settings: those of a file that is
/// named, else those that hold where it lies.
///
/// # Errors
/// [`Trouble`] when it cannot be read or is refused.
pub fn open(path: &Path, settings: Option<&Path>) -> Result<Opened, Trouble> {
    let path = file_of(path);
    of_text(&path, text_of(&path)?, settings)
}

/// The text of a file.
pub(crate) fn text_of(path: &Path) -> Result<String, Trouble> {
    let place = path.display().to_string();
    let bytes = read(path).map_err(|error| match error.kind() {
        io::ErrorKind::FileTooLarge => Trouble::Refused(vec![Fault::new(
            &place,
            format!("is larger than {} kB, which no enquiry is", LARGEST / 1000),
            "check which file it is",
        )]),
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => Trouble::Refused(vec![Fault::new(
            &place,
            "there is no such file",
            "check the path, or start one with `stillrise new`",
        )]),
        io::ErrorKind::PermissionDenied => {
            Trouble::Refused(vec![Fault::new(&place, "the file may not be read", "check its permissions")])
        }
        _ => Trouble::Machine(format!("{place} cannot be read: {error}")),
    })?;
    String::from_utf8(bytes)
        .map_err(|_| Trouble::Refused(vec![Fault::new(&place, "is not UTF-8 text", "save it as UTF-8")]))
}

/// The enquiry of a text that stands, or would stand, in a file.
pub(crate) fn of_text(path: &Path, text: String, settings: Option<&Path>) -> Result<Opened, Trouble> {
    let folder = path.parent().map_or_else(PathBuf::new, Path::to_owned);
    let seen = RefCell::new(BTreeMap::new());
    let files = |name: &str| {
        let bytes = read(&folder.join(name)).ok()?;
        seen.borrow_mut().insert(name.to_owned(), bytes.clone());
        Some(bytes)
    };
    let held = settings.map_or_else(|| Held::beside(path), Held::at);
    let enquiry = held.enquiry(&text, &files).map_err(Trouble::Refused)?;
    let named = seen.into_inner().into_iter().collect();
    Ok(Opened { enquiry, taken: Taken { text, named, settings: held.inputs } })
}

/// Opens an enquiry and settles it.
///
/// # Errors
/// As [`open`].
pub fn settled(path: &Path, settings: Option<&Path>) -> Result<(Settled, Taken), Trouble> {
    let (settled, taken, _) = settled_from(path, settings)?;
    Ok((settled, taken))
}

/// The same, with the other trains that would do.
///
/// # Errors
/// As [`open`].
pub fn with_alternatives(path: &Path, settings: Option<&Path>) -> Result<(Settled, Taken), Trouble> {
    let (mut settled, taken, demo) = settled_from(path, settings)?;
    settled.work_alternatives(&demo);
    Ok((settled, taken))
}

/// A settled enquiry, what it was read from, and the demo range.
fn settled_from(path: &Path, settings: Option<&Path>) -> Result<(Settled, Taken, Range), Trouble> {
    let (opened, demo) = beside(|| open(path, settings), jobs::demo_range);
    let opened = opened?;
    let settled = judged(&opened.enquiry, &demo).map_err(|fault| Trouble::Refused(vec![fault]))?;
    Ok((settled, opened.taken, demo))
}

/// Settles an enquiry that was read.
///
/// # Errors
/// The fault that it asks for a model which the range does not hold.
pub fn judged(enquiry: &Enquiry, demo: &Range) -> Result<Settled, Fault> {
    match unknown_model(enquiry, demo) {
        Some(fault) => Err(fault),
        None => Ok(settle(enquiry, demo)),
    }
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
#[must_use]
pub fn unknown_model(enquiry: &Enquiry, demo: &Range) -> Option<Fault> {
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

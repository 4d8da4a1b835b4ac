//! An issued revision as a frozen set beside its enquiry: the text of every input, the results by number, and a manifest with
//! the hashes of all of it. A set is written whole or not at all, and never replaced by another.

use crate::files::{Inputs, Taken, file_of, judged, of_text, text_of};
use crate::folder::{ENQUIRY, Stamp};
use crate::revisions::{front_of, kept_text, names, plain};
use crate::save::{self, Unsaved};
use crate::settings::Held;
use crate::{Trouble, jobs};
use serde_json::Value;
use std::fs;
use std::io::{self, Read};
use std::path::{Component, Path, PathBuf};
use stillrise_design::enquiry::range::Range;
use stillrise_documents::issue::{
    Changes, Input, Kind, Manifest, RESULTS, bars, changes, manifest, read_manifest, results, results_bytes,
    what_differs,
};
use stillrise_documents::package::{MANIFEST, hash};
use stillrise_edit::{Action, apply};
use stillrise_search::Settled;
use stillrise_units::Fault;

/// Bytes that a file of a set may have: results are longer than an enquiry.
const LARGEST: u64 = 50_000_000;

/// What became of an issue.
pub struct Issued {
    /// The folder of the set.
    pub folder: PathBuf,
    /// Whether it was written now; else it stood there with the same content.
    pub fresh: bool,
    /// The job as it was issued.
    pub settled: Settled,
    /// Its revision.
    pub revision: String,
}

fn refused(place: impl Into<String>, reason: impl Into<String>, remedy: impl Into<String>) -> Trouble {
    Trouble::Refused(vec![Fault::new(place, reason, remedy)])
}

/// Issues an enquiry on disk as it is written, or as another revision, which is then written into it too.
///
/// # Errors
/// [`Trouble`]: all that bars it, or that the revision was issued with another content; then nothing was written.
pub fn issue_file(path: &Path, settings: Option<&Path>, revision: Option<&str>) -> Result<Issued, Trouble> {
    let file = file_of(path);
    let written = text_of(&file)?;
    let text = match revision {
        None => written.clone(),
        Some(revision) => {
            let path = "enquiry.revision".parse().map_err(|fault| Trouble::Refused(vec![fault]))?;
            let action = Action::Set { path, value: revision.to_owned(), from: None };
            apply(&written, &action).map_err(|fault| Trouble::Refused(vec![fault]))?
        }
    };
    let opened = of_text(&file, text, settings)?;
    let settled = judged(&opened.enquiry, &jobs::demo_range()).map_err(|fault| Trouble::Refused(vec![fault]))?;
    let set = prepared(&file, &settled, &opened.taken)?;
    if opened.taken.text != written {
        let home = home_of(&file);
        save::replace(home, &file, opened.taken.text.as_bytes(), Some(&Stamp::of(written.as_bytes())))
            .map_err(unsaved)?;
    }
    let revision = set.revision.clone();
    let (folder, fresh) = set.keep()?;
    Ok(Issued { folder, fresh, settled, revision })
}

fn unsaved(unsaved: Unsaved) -> Trouble {
    Trouble::Machine(unsaved.to_string())
}

/// The folder that a file lies in.
fn home_of(file: &Path) -> &Path {
    file.parent().filter(|home| !home.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."))
}

/// A set that may be written.
pub struct Prepared {
    home: PathBuf,
    folder: PathBuf,
    revision: String,
    files: Inputs,
    stands: bool,
}

/// Makes the set of a settled enquiry; nothing is written yet.
///
/// # Errors
/// [`Trouble`]: all that bars the issue.
pub fn prepared(file: &Path, settled: &Settled, taken: &Taken) -> Result<Prepared, Trouble> {
    let mut faults = bars(settled);
    let revision = settled.job.enquiry.head.revision.0.clone().unwrap_or_default();
    let home = home_of(file).to_owned();
    let folder = home.join(format!("{}{}", front_of(file), plain(&revision)));
    let (inputs, files) = inputs(taken);
    let found = results(settled);
    let bytes = results_bytes(&found);
    let mut stands = false;
    if !revision.trim().is_empty() {
        match already(&folder, file, &revision, taken, &inputs, &bytes) {
            Ok(is) => stands = is,
            Err(Trouble::Refused(found)) => faults.extend(found),
            Err(other) => return Err(other),
        }
    }
    if !faults.is_empty() {
        return Err(Trouble::Refused(faults));
    }
    let sizes: Vec<usize> = files.iter().map(|(_, bytes)| bytes.len()).collect();
    let count = found["numbers"].as_array().map_or(0, Vec::len);
    let listed = manifest(settled, &inputs, &sizes, &bytes, count);
    let own = [(RESULTS.to_owned(), bytes), (MANIFEST.to_owned(), listed)];
    Ok(Prepared { home, folder, revision, files: files.into_iter().chain(own).collect(), stands })
}

impl Prepared {
    /// Writes it, unless it stands with the same content; its folder, and whether it was written now.
    ///
    /// # Errors
    /// [`Trouble`] when the disk does not take it.
    pub fn keep(self) -> Result<(PathBuf, bool), Trouble> {
        if !self.stands {
            let files: Vec<(&str, &[u8])> =
                self.files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
            save::folder(&self.home, &self.folder, &files)?;
        }
        Ok((self.folder, !self.stands))
    }
}

/// The inputs as they are listed, and the files of a set that hold them.
fn inputs(taken: &Taken) -> (Vec<Input>, Inputs) {
    let own = core::iter::once((Kind::Enquiry, ENQUIRY, taken.text.as_bytes()));
    let named = taken.named.iter().map(|(name, bytes)| (Kind::Named, name.as_str(), bytes.as_slice()));
    let settings = taken.settings.iter().map(|(name, bytes)| (Kind::Settings, name.as_str(), bytes.as_slice()));
    let (mut listed, mut files): (Vec<Input>, Inputs) = (Vec::new(), Vec::new());
    for (kind, name, bytes) in own.chain(named).chain(settings) {
        let last = name.rsplit(['/', '\\']).next().unwrap_or(name).trim_start_matches('.');
        let last = if last.is_empty() { "file" } else { last };
        let numbered = (2..1000).map(|k| format!("inputs/{k}-{last}"));
        let is_free = |file: &String| files.iter().all(|(known, _)| known != file);
        let file = core::iter::once(format!("inputs/{last}")).chain(numbered).find(is_free).unwrap_or_default();
        listed.push(Input { kind, name: name.to_owned(), file: file.clone(), sha256: hash(bytes) });
        files.push((file, bytes.to_vec()));
    }
    (listed, files)
}

/// Whether the revision stands already with this content.
fn already(
    folder: &Path,
    file: &Path,
    revision: &str,
    taken: &Taken,
    inputs: &[Input],
    results: &[u8],
) -> Result<bool, Trouble> {
    let shown = folder.display().to_string();
    let next = "start the next revision; what was issued is not changed";
    if let Some(text) = kept_text(file, revision)
        && text != taken.text
    {
        return Err(refused(shown, format!("revision {revision} was issued with another text"), next));
    }
    if folder.symlink_metadata().is_err() {
        return Ok(false);
    }
    let set = Set::open(folder)?;
    if set.manifest.revision != revision {
        let reason = format!("holds revision {}, whose name a file system writes alike", set.manifest.revision);
        return Err(refused(shown, reason, "name the revision otherwise"));
    }
    let differ = what_differs(&set.manifest.inputs, inputs);
    if !differ.is_empty() {
        let names: Vec<&str> = differ.iter().map(|(name, ..)| name.as_str()).collect();
        let reason = format!("revision {revision} was issued with another content of {}", names.join(", "));
        return Err(refused(shown, reason, next));
    }
    if set.manifest.results != hash(results) {
        let reason = format!("revision {revision} was issued by version {} with other results", set.manifest.tool);
        let remedy = format!("see what differs with `compare --with-issued {revision}`; then start the next revision");
        return Err(refused(shown, reason, remedy));
    }
    Ok(true)
}

/// A frozen set, with every hash looked at.
pub struct Set {
    /// What it says of itself.
    pub manifest: Manifest,
    /// The results that were kept.
    pub results: Value,
    files: Inputs,
}

impl Set {
    /// Opens one.
    ///
    /// # Errors
    /// [`Trouble`] when it is none, or any file of it was changed since.
    pub fn open(folder: &Path) -> Result<Self, Trouble> {
        let shown = folder.display().to_string();
        let remedy = "bring the set back as it was issued";
        let read = |name: &str| whole(&folder.join(name));
        let bytes = read(MANIFEST)
            .map_err(|_| refused(&shown, "stands there and holds no manifest of ours", "move it away"))?;
        let manifest = read_manifest(&bytes).map_err(|why| refused(format!("{shown}: {MANIFEST}"), why, remedy))?;
        let mut faults = Vec::new();
        let mut sound = |name: &str, sha256: &str| match read(name) {
            Ok(bytes) if hash(&bytes) == sha256 => Some(bytes),
            Ok(_) => {
                faults.push(Fault::new(
                    format!("{shown}: {name}"),
                    "was changed since the revision was issued",
                    remedy,
                ));
                None
            }
            Err(error) => {
                faults.push(Fault::new(format!("{shown}: {name}"), format!("cannot be read: {error}"), remedy));
                None
            }
        };
        let found = sound(RESULTS, &manifest.results);
        let files = manifest.inputs.iter().filter_map(|i| Some((i.file.clone(), sound(&i.file, &i.sha256)?))).collect();
        if !faults.is_empty() {
            return Err(Trouble::Refused(faults));
        }
        let results = found.and_then(|bytes| serde_json::from_slice(&bytes).ok());
        let results = results.ok_or_else(|| refused(format!("{shown}: {RESULTS}"), "is no JSON", remedy))?;
        Ok(Self { manifest, results, files })
    }

    /// What stands under a name of a kind.
    fn of(&self, kind: Kind, name: Option<&str>) -> Option<Vec<u8>> {
        let listed = self.manifest.inputs.iter().find(|i| i.kind == kind && name.is_none_or(|name| i.name == name))?;
        self.files.iter().find(|(file, _)| *file == listed.file).map(|(_, bytes)| bytes.clone())
    }

    /// The text of the enquiry as it was issued.
    #[must_use]
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.of(Kind::Enquiry, None).unwrap_or_default()).into_owned()
    }

    /// What this tool makes of the inputs as they were issued.
    ///
    /// # Errors
    /// The faults with which it refuses them.
    pub fn settled(&self, demo: &Range) -> Result<Settled, Vec<Fault>> {
        let settings = self.of(Kind::Settings, None);
        let held = settings.map_or_else(Held::default, |bytes| {
            Held::of(stillrise_design::enquiry::settings::SETTINGS, bytes, &|name| self.of(Kind::Settings, Some(name)))
        });
        let enquiry = held.enquiry(&self.text(), &|name| self.of(Kind::Named, Some(name)))?;
        judged(&enquiry, demo).map_err(|fault| vec![fault])
    }
}

/// A whole file of a set.
fn whole(path: &Path) -> io::Result<Vec<u8>> {
    if path.is_symlink() {
        return Err(io::ErrorKind::NotFound.into());
    }
    let mut bytes = Vec::new();
    fs::File::open(path)?.take(LARGEST + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > LARGEST { Err(io::ErrorKind::FileTooLarge.into()) } else { Ok(bytes) }
}

/// What was kept of a revision.
enum Kept {
    /// The whole set.
    Set(Box<Set>),
    /// The text alone, as it was before sets were kept.
    Text(String),
}

/// Finds what was kept of a revision: of the one that the enquiry is of, or of the only one, where none is named; its name.
fn kept(file: &Path, revision: Option<&str>, settled: &Settled) -> Result<(String, Kept), Trouble> {
    let all = names(file);
    let shown = || file.display().to_string();
    let own = settled.job.enquiry.head.revision.as_deref().map(plain);
    let one_of = || format!("name one of {}", all.join(", "));
    let wanted = match (revision.map(plain), own.filter(|own| all.contains(own)), all.as_slice()) {
        (_, _, []) => {
            let remedy = "issue one with `stillrise issue`, or on the sheet";
            return Err(refused(shown(), "no revision of it was issued", remedy));
        }
        (Some(wanted), ..) if all.contains(&wanted) => wanted,
        (Some(wanted), ..) => return Err(refused(shown(), format!("revision {wanted} was not issued"), one_of())),
        (None, Some(own), _) => own,
        (None, None, [only]) => only.clone(),
        (None, None, _) => return Err(refused(shown(), "several revisions were issued", one_of())),
    };
    let folder = home_of(file).join(format!("{}{wanted}", front_of(file)));
    let found = match folder.is_dir() {
        true => Kept::Set(Box::new(Set::open(&folder)?)),
        false => Kept::Text(kept_text(file, &wanted).unwrap_or_default()),
    };
    Ok((wanted, found))
}

impl Kept {
    /// What this tool makes of it. What a text alone names is read as it lies now.
    fn again(&self, file: &Path, settled: &Settled, taken: &Taken, demo: &Range) -> Result<Settled, Vec<Fault>> {
        let text = match self {
            Kept::Set(set) => return set.settled(demo),
            Kept::Text(text) => text,
        };
        let reach = |name: &str| taken.named.iter().find(|(known, _)| known == name).map(|(_, bytes)| bytes.clone());
        let plain = |name: &str| Path::new(name).components().all(|part| matches!(part, Component::Normal(_)));
        let beside =
            |name: &str| reach(name).or_else(|| plain(name).then(|| whole(&home_of(file).join(name)).ok()).flatten());
        let held = Held { settings: settled.job.enquiry.settings.clone(), ..Held::default() };
        held.enquiry(text, &beside).and_then(|e| judged(&e, demo).map_err(|fault| vec![fault]))
    }
}

/// What this tool makes of a revision as it was issued.
///
/// # Errors
/// [`Trouble`] when there is none, its set was changed, or this tool refuses it.
pub fn again(file: &Path, revision: &str, settled: &Settled, taken: &Taken, demo: &Range) -> Result<Settled, Trouble> {
    let (_, kept) = kept(file, Some(revision), settled)?;
    kept.again(file, settled, taken, demo).map_err(Trouble::Refused)
}

/// What has changed since a revision was issued; since the one that the enquiry is of, or the only one, where none is named.
///
/// # Errors
/// [`Trouble`] when there is none, or its set was changed.
pub fn since(
    file: &Path,
    revision: Option<&str>,
    settled: &Settled,
    taken: &Taken,
    demo: &Range,
) -> Result<Changes, Trouble> {
    let (name, kept) = kept(file, revision, settled)?;
    let again = kept.again(file, settled, taken, demo);
    let again = again.as_ref().map_err(Clone::clone);
    let (now, _) = inputs(taken);
    Ok(match &kept {
        Kept::Set(set) => {
            let Set { manifest, results, .. } = &**set;
            changes(&manifest.revision, Some((manifest, results)), again, (settled, &now), &manifest.inputs)
        }
        Kept::Text(text) => {
            let sha256 = hash(text.as_bytes());
            let mut before = now.clone();
            let own = before.iter_mut().filter(|input| input.kind == Kind::Enquiry);
            own.for_each(|input| input.sha256.clone_from(&sha256));
            changes(&name, None, again, (settled, &now), &before)
        }
    })
}

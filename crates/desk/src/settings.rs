//! The company's settings that hold for an enquiry: a file beside it, else in the folder of enquiries that its own folder lies
//! in. The nearer file holds whole; two are never mixed. Which one held is told wherever results are.

use crate::files::{Inputs, read};
use crate::folder::{ENQUIRY, Folder, Place};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use stillrise_checks::standing;
use stillrise_design::enquiry::settings::{SETTINGS, Settings, read_settings};
use stillrise_design::enquiry::{Enquiry, Files, read_enquiry_under};
use stillrise_documents::logo::logo;
use stillrise_units::Fault;

/// The settings that hold, as far as there are some.
#[derive(Debug, Clone, Default)]
pub struct Held {
    /// What they say; nothing where there are none, or where they are refused.
    pub settings: Option<Arc<Settings>>,
    /// Why they are refused; all of it.
    pub faults: Vec<Fault>,
    /// Where the file lies.
    pub file: Option<PathBuf>,
    /// The file as it is written.
    pub text: String,
    /// Name and bytes of the file and its logo, under the names by which they are found beside an enquiry.
    pub inputs: Inputs,
}

/// How a file is reached: its bytes, or why it cannot be had.
type Reach<'a> = &'a dyn Fn(&Path) -> io::Result<Vec<u8>>;

impl Held {
    /// Those of one file, which must be there.
    #[must_use]
    pub fn at(file: &Path) -> Self {
        let shown = file.file_name().map_or_else(|| SETTINGS.to_owned(), |name| name.to_string_lossy().into_owned());
        Self::reached(file, &shown, &|path| read(path)).unwrap_or_else(|| {
            let fault =
                Fault::new(file.display().to_string(), "there is no such file", "check the path of the settings");
            Self { faults: vec![fault], file: Some(file.to_owned()), ..Self::default() }
        })
    }

    /// Those that hold for an enquiry on disk.
    #[must_use]
    pub fn beside(enquiry: &Path) -> Self {
        let home = enquiry.parent().unwrap_or_else(|| Path::new(""));
        let is_alone = enquiry.file_name().is_some_and(|name| name == ENQUIRY);
        let above = is_alone.then(|| home.join(".."));
        Self::first(home, above.as_deref(), &|path| read(path))
    }

    /// Those of the nearer of two folders.
    fn first(home: &Path, above: Option<&Path>, reach: Reach<'_>) -> Self {
        let own = Self::reached(&home.join(SETTINGS), SETTINGS, reach);
        let other = || Self::reached(&above?.join(SETTINGS), &format!("../{SETTINGS}"), reach);
        own.or_else(other).unwrap_or_default()
    }

    /// Those of a file, where it is there.
    fn reached(file: &Path, shown: &str, reach: Reach<'_>) -> Option<Self> {
        let refused = |reason: &str, remedy: &str| {
            Some(Self {
                faults: vec![Fault::new(shown, reason, remedy)],
                file: Some(file.to_owned()),
                ..Self::default()
            })
        };
        match reach(file) {
            Ok(bytes) => {
                let folder = file.parent().unwrap_or_else(|| Path::new(""));
                let beside = |name: &str| reach(&folder.join(name)).ok();
                Some(Self { file: Some(file.to_owned()), ..Self::of(shown, bytes, &beside) })
            }
            Err(error) => match error.kind() {
                io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => None,
                io::ErrorKind::FileTooLarge => refused("is larger than 1 MB, which no settings are", "check the file"),
                _ => refused("the file may not be read", "check its permissions"),
            },
        }
    }

    /// Those of a text; `beside` reaches the logo.
    #[must_use]
    pub fn of(shown: &str, bytes: Vec<u8>, beside: Files<'_>) -> Self {
        let Ok(text) = String::from_utf8(bytes.clone()) else {
            return Self {
                faults: vec![Fault::new(shown, "is not UTF-8 text", "save it as UTF-8")],
                ..Self::default()
            };
        };
        let outcome = read_settings(&text);
        let (mut settings, mut faults) = (outcome.file, outcome.faults);
        faults.extend(standing::faults(&settings));
        let mut inputs = vec![(SETTINGS.to_owned(), bytes)];
        let named = settings.company.logo.0.clone();
        // One that its name alone refuses is not looked for.
        if let Some(name) = named.filter(|_| !faults.iter().any(|fault| fault.place.ends_with("company: logo"))) {
            match beside(&name) {
                None => {
                    let reason = format!("\"{name}\" cannot be read");
                    faults.push(Fault::new(
                        "company: logo",
                        reason,
                        "put the file beside the settings and check its name",
                    ));
                }
                Some(bytes) => {
                    match logo(&name, &bytes) {
                        Ok(found) => settings.logo = Some(found),
                        Err(fault) => faults.push(fault),
                    }
                    inputs.push((name, bytes));
                }
            }
        }
        settings.file = shown.to_owned();
        let faults: Vec<Fault> = faults.into_iter().map(|fault| fault.at(shown)).collect();
        let settings = faults.is_empty().then(|| Arc::new(settings));
        Self { settings, faults, file: None, text, inputs }
    }

    /// An enquiry under these settings, with the faults of both.
    ///
    /// # Errors
    /// All faults.
    pub fn enquiry(&self, text: &str, files: Files<'_>) -> Result<Enquiry, Vec<Fault>> {
        let read = read_enquiry_under(text, files, self.settings.as_ref());
        if self.faults.is_empty() {
            return read;
        }
        let own = read.err().unwrap_or_default();
        Err(own.into_iter().chain(self.faults.iter().cloned()).collect())
    }
}

impl Folder {
    /// The settings that hold for an enquiry of the folder; none are looked for outside of it.
    #[must_use]
    pub fn settings(&self, place: &Place) -> Held {
        let above = (place.home != self.root()).then(|| self.root());
        Held::first(&place.home, above, &|path| self.read(path))
    }

    /// Whether the settings that hold for an enquiry still are these, by their files alone.
    #[must_use]
    pub fn settings_stand(&self, place: &Place, held: &Held) -> bool {
        let above = (place.home != self.root()).then(|| self.root());
        let nearest = [Some(place.home.as_path()), above].into_iter().flatten().map(|home| home.join(SETTINGS));
        let file = nearest.into_iter().find(|file| file.is_file());
        let folder = file.as_deref().and_then(Path::parent);
        let is_same = |(k, (name, bytes)): (usize, &(String, Vec<u8>))| {
            let path = if k == 0 { file.clone() } else { folder.map(|folder| folder.join(name)) };
            path.and_then(|path| self.read(&path).ok()).is_some_and(|now| now == *bytes)
        };
        held.faults.is_empty() && file == held.file && held.inputs.iter().enumerate().all(is_same)
    }

    /// The settings of the folder itself.
    #[must_use]
    pub fn own_settings(&self) -> Held {
        Held::first(self.root(), None, &|path| self.read(path))
    }
}

//! The folder, and the sheets that lie open.

use crate::answer::Refusal;
use crate::sheet::Sheet;
use crate::work::Packages;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};
use stillrise_design::enquiry::range::Range;
use stillrise_desk::folder::Folder;
use stillrise_desk::jobs;

/// What all requests share.
pub struct Desk {
    /// The folder of enquiries.
    pub folder: Folder,
    /// The range to pick from where an enquiry names none.
    pub demo: Range,
    /// Packages that are being made, and those that are done.
    pub packages: Packages,
    sheets: Mutex<BTreeMap<String, Arc<Sheet>>>,
}

/// Sheets that are kept open at a time; of more, the first by name that nobody uses is put away.
const OPEN: usize = 64;

impl Desk {
    /// Over a folder.
    #[must_use]
    pub fn new(folder: Folder) -> Self {
        Self { folder, demo: jobs::demo_range(), packages: Packages::default(), sheets: Mutex::new(BTreeMap::new()) }
    }

    /// An enquiry, opened where it was not yet, and read again where its file was changed by another hand.
    ///
    /// # Errors
    /// [`Refusal`] when there is none of the name, or it cannot be read.
    pub fn sheet(&self, name: &str) -> Result<Arc<Sheet>, Refusal> {
        let place =
            self.folder.find(name).map_err(|_| Refusal::missing(format!("There is no enquiry \"{name}\" here.")))?;
        let known = self.sheets().get(name).cloned();
        let sheet = match known {
            Some(sheet) if sheet.place == place => {
                sheet.look(self)?;
                sheet
            }
            _ => {
                let fresh = Arc::new(Sheet::open(self, place)?);
                let mut sheets = self.sheets();
                // Two that open one at once go on with the same sheet.
                let kept = sheets.entry(name.to_owned()).or_insert_with(|| Arc::clone(&fresh));
                let kept = if kept.place == fresh.place { Arc::clone(kept) } else { Arc::clone(&fresh) };
                sheets.insert(name.to_owned(), Arc::clone(&kept));
                put_away(&mut sheets, name);
                kept
            }
        };
        Ok(sheet)
    }

    fn sheets(&self) -> std::sync::MutexGuard<'_, BTreeMap<String, Arc<Sheet>>> {
        self.sheets.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Closes a sheet that nobody uses, where too many lie open: its text is on the disk, its history ends.
fn put_away(sheets: &mut BTreeMap<String, Arc<Sheet>>, keep: &str) {
    if sheets.len() > OPEN {
        let idle = sheets.iter().find(|(name, sheet)| *name != keep && Arc::strong_count(sheet) == 1);
        if let Some(name) = idle.map(|(name, _)| name.clone()) {
            sheets.remove(&name);
        }
    }
}

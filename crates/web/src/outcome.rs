//! What an enquiry comes to, and what of it is worked only when somebody asks.

use crate::desk::Desk;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use stillrise_design::enquiry::Enquiry;
use stillrise_desk::files::{self, Taken};
use stillrise_desk::folder::Place;
use stillrise_desk::settings::Held;
use stillrise_search::risk::SAMPLES;
use stillrise_search::{Settled, settle};
use stillrise_units::Fault;

/// What an enquiry comes to.
pub struct Outcome {
    /// The settled job; `None` while its text is refused.
    pub settled: Option<Settled>,
    /// Why the text is refused.
    pub faults: Vec<Fault>,
    /// The same with the other trains that would do, worked when first asked for.
    whole: OnceLock<Settled>,
    /// The same with a study of how sure it is.
    studied: OnceLock<Settled>,
    /// What was said.
    pub(crate) enquiry: Option<Enquiry>,
    /// The files that it was read from.
    pub(crate) taken: Taken,
    /// The company's settings that hold for it.
    pub(crate) held: Held,
}

/// A text as it was read.
pub(crate) struct Read {
    /// The enquiry, or why it is refused.
    pub(crate) enquiry: Result<Enquiry, Vec<Fault>>,
    /// The files that it was read from.
    pub(crate) taken: Taken,
    held: Held,
}

impl Read {
    /// Reads a text with the files that it names and the company's settings.
    pub(crate) fn text(desk: &Desk, place: &Place, text: &str) -> Self {
        let held = desk.folder.settings(place);
        let named = RefCell::new(BTreeMap::new());
        let beside = |name: &str| {
            let bytes = desk.folder.beside(place, name)?;
            named.borrow_mut().insert(name.to_owned(), bytes.clone());
            Some(bytes)
        };
        let enquiry = held.enquiry(text, &beside);
        let named = named.into_inner().into_iter().collect();
        let taken = Taken { text: text.to_owned(), named, settings: held.inputs.clone() };
        Self { enquiry, taken, held }
    }
}

impl Outcome {
    /// Of a text.
    pub fn of(desk: &Desk, place: &Place, text: &str) -> Self {
        Self::read(desk, Read::text(desk, place, text))
    }

    /// Of an enquiry that was read.
    pub(crate) fn read(desk: &Desk, read: Read) -> Self {
        let Read { enquiry, taken, held } = read;
        match enquiry.and_then(|enquiry| Ok((files::judged(&enquiry, &desk.demo).map_err(|f| vec![f])?, enquiry))) {
            Ok((settled, enquiry)) => Self {
                settled: Some(settled),
                faults: Vec::new(),
                whole: OnceLock::new(),
                studied: OnceLock::new(),
                enquiry: Some(enquiry),
                taken,
                held,
            },
            Err(faults) => Self {
                settled: None,
                faults,
                whole: OnceLock::new(),
                studied: OnceLock::new(),
                enquiry: None,
                taken,
                held,
            },
        }
    }

    /// Whether the range holds the model that an enquiry asks for.
    ///
    /// # Errors
    /// The fault that it does not.
    pub fn fits(enquiry: &Enquiry, demo: &stillrise_design::enquiry::range::Range) -> Result<(), Fault> {
        files::unknown_model(enquiry, demo).map_or(Ok(()), Err)
    }

    /// The job with the other trains that would do.
    #[must_use]
    pub fn whole(&self, desk: &Desk) -> Option<&Settled> {
        let enquiry = self.enquiry.as_ref()?;
        Some(self.whole.get_or_init(|| {
            let mut settled = settle(enquiry, &desk.demo);
            settled.work_alternatives(&desk.demo);
            // What explains the results belongs into the answer; where nothing can be said of it, the answer goes without.
            if settled.job.enquiry.unit_stands() && settled.job.enquiry.is_observed() {
                let _ = settled.diagnose();
            }
            settled
        }))
    }

    /// The job as far as it was worked: with its study, if somebody asked for that already.
    #[must_use]
    pub fn as_far(&self) -> Option<&Settled> {
        self.studied.get().or(self.settled.as_ref())
    }

    /// The job with a study of how sure it is.
    #[must_use]
    pub fn studied(&self, desk: &Desk) -> Option<&Settled> {
        let enquiry = self.enquiry.as_ref()?;
        Some(self.studied.get_or_init(|| {
            let mut settled = settle(enquiry, &desk.demo);
            settled.study(SAMPLES);
            settled
        }))
    }
}

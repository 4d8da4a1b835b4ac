//! The customer's text beside an enquiry, read once for as long as it stands: it is shown again with every change.

use std::sync::{Arc, Mutex, PoisonError};
use stillrise_mail::{Mail, read_mail};
use stillrise_units::parse::Reading;

/// The text, and what was found in it.
pub struct Customer {
    /// The text.
    pub text: String,
    read: Mutex<Option<(Reading, Arc<Mail>)>>,
}

impl Customer {
    /// A text that nobody read yet.
    #[must_use]
    pub fn new(text: String) -> Self {
        Self { text, read: Mutex::new(None) }
    }

    /// What is found in it, read as the enquiry reads its quantities.
    #[must_use]
    pub fn read(&self, reading: &Reading) -> Arc<Mail> {
        let mut read = self.read.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, mail)) = read.as_ref().filter(|(known, _)| known == reading) {
            return Arc::clone(mail);
        }
        let mail = Arc::new(read_mail(&self.text, reading));
        *read = Some((*reading, Arc::clone(&mail)));
        mail
    }
}

//! What would settle a finding of an enquiry as it is written: its text is edited, read again and tried.

use crate::{Trouble, files, jobs};
use std::path::Path;
use std::sync::Arc;
use stillrise_checks::{RULES, Rule};
use stillrise_design::enquiry::range::Range;
use stillrise_design::enquiry::settings::Settings;
use stillrise_design::enquiry::{Enquiry, Files, read_enquiry_under};
use stillrise_edit::{Action, apply};
use stillrise_search::Settled;
use stillrise_search::remedies::{Remedy, remedies};
use stillrise_units::{Fault, nearest};

/// The rule of an id.
///
/// # Errors
/// The fault that there is none; the nearest is named.
pub fn rule(id: &str) -> Result<&'static Rule, Fault> {
    RULES.iter().copied().find(|rule| rule.id == id).ok_or_else(|| {
        let remedy = match nearest(id, RULES.iter().map(|rule| rule.id)) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => "take the id that stands in brackets beside the finding".to_owned(),
        };
        Fault::new("rule", format!("there is no rule \"{id}\""), remedy)
    })
}

/// What would settle a rule. `text` is the enquiry as it is written, `files` reaches what it names, and `settled` is what it
/// comes to.
#[must_use]
pub fn of(text: &str, files: Files<'_>, settled: &Settled, demo: &Range, rule: &Rule) -> Vec<Remedy> {
    let settings = settled.job.enquiry.settings.as_ref();
    remedies(settled, demo, rule, &|keys| changed(text, files, settings, keys))
}

/// A settled enquiry, the rule, and what would settle that.
pub struct Found {
    /// The enquiry as it stands, settled.
    pub settled: Settled,
    /// The rule.
    pub rule: &'static Rule,
    /// What would settle it.
    pub remedies: Vec<Remedy>,
}

/// The same of an enquiry on disk.
///
/// # Errors
/// [`Trouble`] when the enquiry cannot be read or is refused, or there is no such rule.
pub fn of_file(path: &Path, settings: Option<&Path>, id: &str) -> Result<Found, Trouble> {
    let refused = |fault| Trouble::Refused(vec![fault]);
    let rule = rule(id).map_err(refused)?;
    let demo = jobs::demo_range();
    let opened = files::open(path, settings)?;
    let settled = files::judged(&opened.enquiry, &demo).map_err(refused)?;
    let folder = if path.is_dir() { path } else { path.parent().unwrap_or(Path::new("")) };
    let remedies = of(&opened.taken.text, &|name| files::read(&folder.join(name)).ok(), &settled, &demo, rule);
    Ok(Found { settled, rule, remedies })
}

/// The enquiry with keys set; `None` where they cannot be, or where it is refused then.
fn changed(
    text: &str,
    files: Files<'_>,
    settings: Option<&Arc<Settings>>,
    keys: &[(String, String)],
) -> Option<Enquiry> {
    let mut text = text.to_owned();
    for (path, value) in keys {
        let action = Action::Set { path: path.parse().ok()?, value: value.clone(), from: None };
        text = apply(&text, &action).ok()?;
    }
    read_enquiry_under(&text, files, settings).ok()
}

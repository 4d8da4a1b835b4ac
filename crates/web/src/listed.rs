//! The enquiries of the folder, each with due day, state and what it comes to.

use crate::answer::Refusal;
use crate::desk::Desk;
use stillrise_documents::glance::{Glance, glance};

/// One enquiry in the list.
pub struct Listed {
    /// Its name in the folder.
    pub name: String,
    /// Its title; its name where it has none.
    pub title: String,
    /// Who asks.
    pub client: Option<String>,
    /// When the answer is due.
    pub due: Option<String>,
    /// Its state in a word; empty where it cannot be read.
    pub status: &'static str,
    /// How many faults keep it from being worked; `None` where it cannot be read.
    pub faults: Option<usize>,
    /// What it comes to, where it can be worked.
    pub glance: Option<Glance>,
}

/// All enquiries of the folder, each settled.
///
/// # Errors
/// [`Refusal`] when the folder cannot be read.
pub fn listed(desk: &Desk) -> Result<Vec<Listed>, Refusal> {
    Ok(desk.folder.list()?.into_iter().map(|place| one(desk, place.name)).collect())
}

fn one(desk: &Desk, name: String) -> Listed {
    let bare = |name: String, status, faults| Listed {
        title: name.clone(),
        name,
        client: None,
        due: None,
        status,
        faults,
        glance: None,
    };
    let Ok(sheet) = desk.sheet(&name) else { return bare(name, "", None) };
    let state = sheet.now();
    let Some(settled) = &state.outcome.settled else { return bare(name, "draft", Some(state.outcome.faults.len())) };
    let head = &settled.job.enquiry.head;
    Listed {
        title: head.title.0.clone().unwrap_or_else(|| name.clone()),
        client: head.client.0.clone(),
        due: head.due.0.map(|day| day.to_string()),
        status: head.status.0.map_or("preliminary", |status| status.word()),
        faults: Some(0),
        glance: Some(glance(settled)),
        name,
    }
}

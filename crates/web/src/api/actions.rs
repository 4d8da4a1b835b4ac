//! What can be done to a sheet: the same for a page, which takes pieces, and a program, which takes JSON.

use super::taken::{Asks, At, Bodies, Body};
use crate::answer::{Refusal, wants_html};
use crate::desk::Desk;
use crate::parts::{self, View};
use crate::sheet::{Change, State, apart};
use axum::Json;
use axum::extract::State as Shared;
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;
use stillrise_documents::glance::{glance, glance_json};
use stillrise_edit::Action;

/// One action as it comes.
#[derive(Debug, Deserialize)]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Asked {
    /// Writes the value of a key, in place of all that was said of it.
    Set {
        /// The key.
        path: String,
        /// As typed.
        value: String,
        /// Who says so.
        #[serde(default)]
        from: Option<String>,
    },
    /// Adds a claim beside what was said of a key.
    Claim {
        /// The key.
        path: String,
        /// As typed.
        value: String,
        /// Who says so.
        #[serde(default)]
        from: Option<String>,
    },
    /// Chooses among claims that contradict.
    Choose {
        /// The key.
        path: String,
        /// Which claim, from 0.
        nth: usize,
        /// Why.
        because: String,
    },
    /// Takes a claim back.
    Withdraw {
        /// The key.
        path: String,
        /// Which claim, from 0.
        nth: usize,
    },
    /// Takes back all that was said of a key.
    Unset {
        /// The key.
        path: String,
    },
    /// Adds a block.
    Add {
        /// What kind of block.
        block: String,
        /// Its keys and their values, as typed.
        keys: Vec<(String, String)>,
    },
    /// Removes a block.
    Remove {
        /// Which, as the program calls it.
        place: String,
    },
    /// Decides about a finding.
    Decide {
        /// The rule.
        rule: String,
        /// The word.
        decision: String,
        /// Why.
        because: String,
        /// Who.
        #[serde(default)]
        who: Option<String>,
        /// On which day, as he states it.
        #[serde(default)]
        date: Option<String>,
    },
    /// Takes a decision back.
    Undecide {
        /// The rule.
        rule: String,
    },
}

impl Asked {
    /// As an action on the text.
    fn action(self) -> Result<Action, Refusal> {
        Ok(match self {
            Asked::Set { path, value, from } => Action::Set { path: path.parse()?, value, from },
            Asked::Claim { path, value, from } => Action::Claim { path: path.parse()?, value, from },
            Asked::Choose { path, nth, because } => Action::Choose { path: path.parse()?, nth, because },
            Asked::Withdraw { path, nth } => Action::Withdraw { path: path.parse()?, nth },
            Asked::Unset { path } => Action::Unset { path: path.parse()? },
            Asked::Add { block, keys } => Action::AddBlock { block, keys },
            Asked::Remove { place } => Action::RemoveBlock { heading: place.parse()? },
            Asked::Decide { rule, decision, because, who, date } => {
                Action::Decide { rule, decision, because, who, date }
            }
            Asked::Undecide { rule } => Action::Undecide { rule },
        })
    }
}

/// A whole new text.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NewText {
    text: String,
    /// The version that it was written over.
    over: u64,
}

pub(super) async fn act(
    desk: Shared<Arc<Desk>>,
    name: At<String>,
    view: Asks<View>,
    headers: HeaderMap,
    Bodies(asked): Bodies<Asked>,
) -> Response {
    let actions: Result<Vec<Action>, Refusal> = asked.into_iter().map(Asked::action).collect();
    match actions {
        Ok(actions) => changed(desk, name, view, headers, Change::Keys(actions)).await,
        Err(refusal) => refusal.answer(&headers),
    }
}

pub(super) async fn undo(desk: Shared<Arc<Desk>>, name: At<String>, view: Asks<View>, headers: HeaderMap) -> Response {
    changed(desk, name, view, headers, Change::Undo).await
}

pub(super) async fn redo(desk: Shared<Arc<Desk>>, name: At<String>, view: Asks<View>, headers: HeaderMap) -> Response {
    changed(desk, name, view, headers, Change::Redo).await
}

pub(super) async fn text(
    desk: Shared<Arc<Desk>>,
    name: At<String>,
    view: Asks<View>,
    headers: HeaderMap,
    Body(NewText { text, over }): Body<NewText>,
) -> Response {
    changed(desk, name, view, headers, Change::Text { text, over }).await
}

/// Changes a sheet, and answers with it as it stands then.
async fn changed(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    Asks(view): Asks<View>,
    headers: HeaderMap,
    change: Change,
) -> Response {
    let html = wants_html(&headers);
    let made = apart(move || {
        let state = desk.sheet(&name)?.change(&desk, &change)?;
        Ok(if html { parts::all(&state, &view).into_response() } else { Json(told(&state)).into_response() })
    });
    made.await.unwrap_or_else(|refusal| refusal.answer(&headers))
}

/// The customer's text.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NewMail {
    mail: String,
}

pub(super) async fn mail(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    Asks(view): Asks<View>,
    headers: HeaderMap,
    Body(NewMail { mail }): Body<NewMail>,
) -> Response {
    let html = wants_html(&headers);
    let made = apart(move || {
        let state = desk.sheet(&name)?.keep_mail(&desk, &mail)?;
        Ok(if html { parts::all(&state, &view).into_response() } else { Json(told(&state)).into_response() })
    });
    made.await.unwrap_or_else(|refusal| refusal.answer(&headers))
}

/// A sheet as it stands, for a program.
pub(super) fn told(state: &State) -> Value {
    json!({
        "version": state.version,
        "undo": state.back, "redo": state.again, "note": state.note,
        "glance": state.outcome.settled.as_ref().map(|settled| glance_json(&glance(settled))),
        "faults": state.outcome.faults.iter().map(crate::answer::fault).collect::<Vec<_>>(),
    })
}

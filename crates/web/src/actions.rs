//! What can be done to a sheet: the same for a page, which takes pieces, and a program, which takes JSON.

use crate::answer::{Refusal, wants_html};
use crate::desk::Desk;
use crate::parts::{self, View};
use crate::sheet::{Change, State, apart};
use axum::extract::{Path, Query, State as Shared};
use axum::http::HeaderMap;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post, put};
use axum::{Json, Router};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;
use stillrise_desk::folder::{ENQUIRY, is_name};
use stillrise_desk::jobs::JOBS;
use stillrise_documents::Edition;
use stillrise_documents::glance::{glance, glance_json};
use stillrise_edit::{Action, apply};

/// The ways to all that changes something.
pub fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/api/sheets/{name}/actions", post(act))
        .route("/api/sheets/{name}/undo", post(undo))
        .route("/api/sheets/{name}/redo", post(redo))
        .route("/api/sheets/{name}/text", get(written).put(text))
        .route("/api/sheets/{name}/mail", put(mail))
        .route("/api/sheets/{name}/version", get(version))
        .route("/api/sheets/{name}/remedies/{rule}", get(settles))
        .route("/api/sheets/{name}", get(result))
        .route("/api/sheets", get(list).post(begin))
}

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
            Asked::Decide { rule, decision, because, who } => Action::Decide { rule, decision, because, who },
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

async fn act(
    desk: Shared<Arc<Desk>>,
    name: Path<String>,
    view: Query<View>,
    headers: HeaderMap,
    Json(asked): Json<Vec<Asked>>,
) -> Response {
    let actions: Result<Vec<Action>, Refusal> = asked.into_iter().map(Asked::action).collect();
    match actions {
        Ok(actions) => changed(desk, name, view, headers, Change::Keys(actions)).await,
        Err(refusal) => refusal.answer(&headers),
    }
}

async fn undo(desk: Shared<Arc<Desk>>, name: Path<String>, view: Query<View>, headers: HeaderMap) -> Response {
    changed(desk, name, view, headers, Change::Undo).await
}

async fn redo(desk: Shared<Arc<Desk>>, name: Path<String>, view: Query<View>, headers: HeaderMap) -> Response {
    changed(desk, name, view, headers, Change::Redo).await
}

async fn text(
    desk: Shared<Arc<Desk>>,
    name: Path<String>,
    view: Query<View>,
    headers: HeaderMap,
    Json(NewText { text, over }): Json<NewText>,
) -> Response {
    changed(desk, name, view, headers, Change::Text { text, over }).await
}

/// Changes a sheet, and answers with it as it stands then.
async fn changed(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
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

async fn mail(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
    headers: HeaderMap,
    Json(NewMail { mail }): Json<NewMail>,
) -> Response {
    let html = wants_html(&headers);
    let made = apart(move || {
        let state = desk.sheet(&name)?.keep_mail(&desk, &mail)?;
        Ok(if html { parts::all(&state, &view).into_response() } else { Json(told(&state)).into_response() })
    });
    made.await.unwrap_or_else(|refusal| refusal.answer(&headers))
}

/// What a sheet is asked for by a program.
async fn asked(
    desk: Arc<Desk>,
    name: String,
    headers: HeaderMap,
    what: impl FnOnce(&State) -> Result<Value, Refusal> + Send + 'static,
) -> Response {
    match apart(move || what(&desk.sheet(&name)?.now())).await {
        Ok(value) => Json(value).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

async fn written(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |state| Ok(json!({ "version": state.version, "text": state.text }))).await
}

async fn version(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |state| Ok(json!({ "version": state.version }))).await
}

async fn result(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |state| match &state.outcome.settled {
        Some(settled) => Ok(stillrise_documents::result::result(settled, Edition::Us)),
        None => Err(Refusal::Faults(state.outcome.faults.clone())),
    })
    .await
}

async fn settles(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, rule)): Path<(String, String)>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || {
        let sheet = desk.sheet(&name)?;
        parts::remedy::told(&desk, &sheet, &rule)
    });
    match made.await {
        Ok(value) => Json(value).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

async fn list(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let places = desk.folder.list()?;
        Ok(places.into_iter().map(|place| json!({ "name": place.name })).collect::<Vec<_>>())
    });
    match made.await {
        Ok(list) => Json(list).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

/// How a new enquiry begins.
#[derive(Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Beginning {
    /// Its name; one is found where none is given.
    name: Option<String>,
    /// The worked job that it is a copy of.
    like: Option<String>,
    /// The customer's text that it begins with.
    mail: Option<String>,
}

async fn begin(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap, Json(how): Json<Beginning>) -> Response {
    let made = apart(move || {
        let name = begun(&desk, &how)?;
        Ok(json!({ "address": crate::pages::sheet::address(&name), "name": name }))
    });
    match made.await {
        Ok(told) => (StatusCode::CREATED, Json(told)).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

/// Puts a new enquiry into the folder.
fn begun(desk: &Desk, how: &Beginning) -> Result<String, Refusal> {
    let said = how.name.as_deref().map(str::trim).filter(|name| !name.is_empty());
    if let Some(like) = &how.like {
        let job = JOBS
            .iter()
            .find(|job| job.name == like)
            .ok_or_else(|| Refusal::missing(format!("There is no worked job \"{like}\".")))?;
        let files: Vec<(&str, &[u8])> = job.files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
        let name = said.map_or_else(|| desk.folder.free_name(job.name), str::to_owned);
        return Ok(desk.folder.create(&name, &files)?.name);
    }
    let mail = how.mail.as_deref().filter(|mail| !mail.trim().is_empty());
    let title = said.unwrap_or("New enquiry");
    let text = apply(
        "",
        &Action::AddBlock { block: "enquiry".to_owned(), keys: vec![("title".to_owned(), title.to_owned())] },
    )?;
    let name = said.filter(|name| is_name(name)).map_or_else(|| desk.folder.free_name(title), str::to_owned);
    let mut files: Vec<(&str, &[u8])> = vec![(ENQUIRY, text.as_bytes())];
    files.extend(mail.map(|mail| ("mail.txt", mail.as_bytes())));
    Ok(desk.folder.create(&name, &files)?.name)
}

/// A sheet as it stands, for a program.
fn told(state: &State) -> Value {
    json!({
        "version": state.version,
        "undo": state.back, "redo": state.again, "note": state.note,
        "glance": state.outcome.settled.as_ref().map(|settled| glance_json(&glance(settled))),
        "faults": state.outcome.faults.iter().map(crate::answer::fault).collect::<Vec<_>>(),
    })
}

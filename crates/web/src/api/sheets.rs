//! Enquiries for programs: which there are, what is said in them, and how one begins.

use super::taken::{At, Body};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::inputs::{Group, Input, groups};
use crate::listed::listed;
use crate::sheet::{State, apart};
use axum::Json;
use axum::extract::State as Shared;
use axum::http::StatusCode;
use axum::http::header::HeaderMap;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;
use stillrise_desk::folder::{ENQUIRY, is_name};
use stillrise_desk::jobs::JOBS;
use stillrise_documents::glance::glance_json;
use stillrise_documents::reading::read_json;
use stillrise_edit::{Action, apply};
use stillrise_mail::read_mail;
use stillrise_units::parse::{Gallon, Reading};

/// What a sheet is asked for by a program.
pub async fn asked(
    desk: Arc<Desk>,
    name: String,
    headers: HeaderMap,
    what: impl FnOnce(&Desk, &State) -> Result<Value, Refusal> + Send + 'static,
) -> Response {
    match apart(move || what(&desk, &desk.sheet(&name)?.now())).await {
        Ok(value) => Json(value).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

pub(super) async fn list(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap) -> Response {
    let made =
        apart(move || {
            let all = listed(&desk)?;
            Ok(all.iter().map(|one| json!({
            "name": one.name, "title": one.title, "client": one.client, "due": one.due, "status": one.status,
            "faults": one.faults, "glance": one.glance.as_ref().map(glance_json),
        })).collect::<Vec<_>>())
        });
    match made.await {
        Ok(list) => Json(list).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

pub(super) async fn jobs() -> Json<Vec<&'static str>> {
    Json(JOBS.iter().map(|job| job.name).collect())
}

pub(super) async fn written(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| Ok(json!({ "version": state.version, "text": state.text }))).await
}

pub(super) async fn version(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| Ok(json!({ "version": state.version }))).await
}

pub(super) async fn mail(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| {
        Ok(json!({ "version": state.version, "mail": state.mail.as_ref().map(|mail| &mail.text) }))
    })
    .await
}

pub(super) async fn inputs(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| {
        Ok(json!({ "version": state.version, "blocks": groups(state).iter().map(block).collect::<Vec<_>>() }))
    })
    .await
}

/// A block with its keys.
fn block(group: &Group) -> Value {
    json!({
        "block": group.head, "says": group.block.doc, "stands": group.stands, "many": group.many,
        "inputs": group.inputs.iter().map(input).collect::<Vec<_>>(),
    })
}

/// One key.
fn input(input: &Input) -> Value {
    let claims: Vec<Value> = input
        .said
        .iter()
        .flat_map(|said| &said.claims)
        .map(|claim| {
            json!({
                "value": claim.value, "from": claim.from, "chosen": claim.chosen, "because": claim.because,
                "low": claim.low, "high": claim.high, "distribution": claim.distribution,
            })
        })
        .collect();
    json!({
        "path": input.path, "says": input.key.doc, "needed": input.key.needed, "like": input.key.like.trim_matches('"'),
        "kind": input.kind(), "units": input.units(), "words": input.words(),
        "bounds": input.key.bounds.map(|(low, high)| [low.to_string(), high.to_string()]),
        "said": claims,
        "taken": input.taken.as_ref().map(|taken| json!({
            "value": taken.value, "low": taken.range.0, "high": taken.range.1, "source": taken.source, "entry": taken.node,
        })),
        "settings": input.settings,
    })
}

pub(super) async fn settings(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| {
        let held = &state.outcome.held;
        let enquiry = state.outcome.enquiry.as_ref();
        let says = enquiry.map(|enquiry| enquiry.from_settings()).unwrap_or_default();
        Ok(json!({
            "file": held.file.as_ref().map(|file| file.display().to_string()), "text": held.text,
            "faults": held.faults.iter().map(|f| json!({ "place": f.place, "reason": f.reason, "remedy": f.remedy })).collect::<Vec<_>>(),
            "says": says.iter().map(|one| json!({
                "key": one.key, "what": one.what, "value": one.value, "above": one.above, "instead": one.instead,
            })).collect::<Vec<_>>(),
        }))
    })
    .await
}

/// A customer's text that is read.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Customer {
    text: String,
    /// Which gallon is meant, where the text does not say.
    #[serde(default)]
    gallon: Option<WhichGallon>,
}

#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum WhichGallon {
    Us,
    Imperial,
}

pub(super) async fn read(headers: HeaderMap, Body(Customer { text, gallon }): Body<Customer>) -> Response {
    let gallon = gallon.map(|which| match which {
        WhichGallon::Us => Gallon::Us,
        WhichGallon::Imperial => Gallon::Imperial,
    });
    match apart(move || Ok(read_json(&text, &read_mail(&text, &Reading { gallon })))).await {
        Ok(found) => Json(found).into_response(),
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

pub(super) async fn begin(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap, Body(how): Body<Beginning>) -> Response {
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

//! Packages of documents for programs and for the page: made in the background, looked at, downloaded and saved.

use super::taken::{At, Body};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::pages::documents::progress;
use crate::sheet::apart;
use crate::work::{Files, Stand};
use axum::Json;
use axum::extract::State as Shared;
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE, HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::io::{Cursor, Write};
use std::sync::Arc;
use stillrise_documents::Edition;
use zip::write::{SimpleFileOptions, ZipWriter};

/// Editions that can be made, and what is kept of this enquiry.
pub(super) async fn list(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    super::sheets::asked(desk, name.clone(), headers, move |desk, _| {
        let editions: Vec<Value> = Edition::ALL.iter().map(|one| json!({ "edition": one.word(), "name": one.name() })).collect();
        let kept: Vec<Value> = desk.packages.of(&name).iter().map(|(number, package)| {
            let (done, of) = package.steps();
            json!({ "package": number, "version": package.version, "edition": package.edition.word(), "stand": told(&package.stand(), done, of) })
        }).collect();
        Ok(json!({ "editions": editions, "packages": kept }))
    })
    .await
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Wish {
    edition: String,
}

pub(super) async fn begin(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    headers: HeaderMap,
    Body(wish): Body<Wish>,
) -> Response {
    let made = apart(move || {
        let edition = Edition::ALL.into_iter().find(|edition| edition.word() == wish.edition);
        let edition = edition.ok_or_else(|| Refusal::missing(format!("There is no edition \"{}\".", wish.edition)))?;
        let open = desk.sheet(&name)?;
        let state = open.now();
        if !state.outcome.faults.is_empty() {
            return Err(Refusal::Faults(state.outcome.faults.clone()));
        }
        desk.packages.begin(&desk, open.place.clone(), state.version, state.text.clone(), edition)
    });
    match made.await {
        Ok(number) => (StatusCode::ACCEPTED, Json(json!({ "package": number }))).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

pub(super) async fn stand(Shared(desk): Shared<Arc<Desk>>, At(number): At<u64>, headers: HeaderMap) -> Response {
    let package = match desk.packages.find(number) {
        Ok(package) => package,
        Err(refusal) => return refusal.answer(&headers),
    };
    let (done, of) = package.steps();
    let stand = package.stand();
    if crate::answer::wants_html(&headers) {
        return progress(number, &stand, done, of).into_response();
    }
    Json(json!({ "package": number, "sheet": package.sheet, "version": package.version, "edition": package.edition.word(), "stand": told(&stand, done, of) })).into_response()
}

/// How a package stands, for a program.
fn told(stand: &Stand, done: usize, of: usize) -> Value {
    match stand {
        Stand::Making(step) => json!({ "stands": "making", "step": step, "done": done, "of": of }),
        Stand::Stopped => json!({ "stands": "stopped" }),
        Stand::Failed(reason) => json!({ "stands": "failed", "reason": reason }),
        Stand::Done(files) => json!({
            "stands": "done",
            "files": files.iter().map(|(name, bytes)| json!({ "name": name, "bytes": bytes.len() })).collect::<Vec<_>>(),
        }),
    }
}

pub(super) async fn stop(Shared(desk): Shared<Arc<Desk>>, At(number): At<u64>, headers: HeaderMap) -> Response {
    match desk.packages.find(number) {
        Ok(package) => {
            package.stop();
            StatusCode::NO_CONTENT.into_response()
        }
        Err(refusal) => refusal.answer(&headers),
    }
}

/// The documents of a package that is made.
fn made(desk: &Desk, number: u64) -> Result<Arc<Files>, Refusal> {
    match desk.packages.find(number)?.stand() {
        Stand::Done(files) => Ok(files),
        _ => Err(Refusal::missing("This package is not made yet.")),
    }
}

pub(super) async fn one(
    Shared(desk): Shared<Arc<Desk>>,
    At((number, file)): At<(u64, String)>,
    headers: HeaderMap,
) -> Response {
    let files = match made(&desk, number) {
        Ok(files) => files,
        Err(refusal) => return refusal.answer(&headers),
    };
    let Some((name, bytes)) = files.iter().find(|(name, _)| *name == file) else {
        return Refusal::missing("The package has no such document.").answer(&headers);
    };
    let kind = match name.rsplit('.').next() {
        Some("pdf") => "application/pdf",
        Some("svg") => "image/svg+xml",
        Some("json") => "application/json",
        _ => "text/plain; charset=utf-8",
    };
    let last = name.rsplit('/').next().unwrap_or(name);
    let mut answer = ([(CONTENT_TYPE, kind)], bytes.clone()).into_response();
    if let Ok(shown) = HeaderValue::from_str(&format!("inline; filename=\"{}\"", last.replace(['"', '\\'], "_"))) {
        answer.headers_mut().insert(CONTENT_DISPOSITION, shown);
    }
    answer
}

pub(super) async fn all(Shared(desk): Shared<Arc<Desk>>, At(number): At<u64>, headers: HeaderMap) -> Response {
    let packed = apart(move || {
        let package = desk.packages.find(number)?;
        let files = made(&desk, number)?;
        let bytes =
            packed(&files).map_err(|error| Refusal::Machine(format!("the documents could not be packed: {error}")))?;
        Ok((format!("{}-{}.zip", package.sheet, package.edition.word()), bytes))
    });
    match packed.await {
        Ok((name, bytes)) => {
            let mut answer = ([(CONTENT_TYPE, "application/zip")], bytes).into_response();
            let plain: String = name
                .chars()
                .map(|c| if c.is_ascii_alphanumeric() || matches!(c, '-' | '.') { c } else { '_' })
                .collect();
            if let Ok(kept) = HeaderValue::from_str(&format!("attachment; filename=\"{plain}\"")) {
                answer.headers_mut().insert(CONTENT_DISPOSITION, kept);
            }
            answer
        }
        Err(refusal) => refusal.answer(&headers),
    }
}

/// Files in one, without a date: the same files give the same bytes.
fn packed(files: &Files) -> zip::result::ZipResult<Vec<u8>> {
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default();
    for (name, bytes) in files {
        writer.start_file(name.as_str(), options)?;
        writer.write_all(bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

pub(super) async fn save(Shared(desk): Shared<Arc<Desk>>, At(number): At<u64>, headers: HeaderMap) -> Response {
    let saved = apart(move || {
        let package = desk.packages.find(number)?;
        let files = made(&desk, number)?;
        let place = desk.folder.find(&package.sheet)?;
        let title =
            desk.sheet(&package.sheet)?.now().outcome.settled.as_ref().and_then(|s| s.job.enquiry.head.title.0.clone());
        let folder = format!(
            "{}-{}",
            if place.file.ends_with("enquiry.toml") { "package".to_owned() } else { format!("{}-package", place.name) },
            package.edition.word()
        );
        stillrise_desk::packages::write_folder(&place.home.join(&folder), title.as_deref(), &files)?;
        Ok(folder)
    });
    match saved.await {
        Ok(folder) => Json(json!({ "folder": folder })).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

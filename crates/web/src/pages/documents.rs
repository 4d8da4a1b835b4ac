//! The documents of an enquiry: the reply as text, and the package made in the background, looked at in the page and
//! downloaded, one or all.

use super::{Page, cautions, page, refused, sheet};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::sheet::apart;
use crate::work::{Files, Stand};
use axum::extract::{Path, State as Shared};
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE, HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use std::io::{Cursor, Write};
use std::sync::Arc;
use stillrise_documents::Edition;
use stillrise_documents::reply::reply;
use zip::write::{SimpleFileOptions, ZipWriter};

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/sheet/{name}/documents", get(show))
        .route("/api/sheets/{name}/packages", post(begin))
        .route("/api/packages/{number}", get(stand).delete(stop))
        .route("/api/packages/{number}/all.zip", get(all))
        .route("/api/packages/{number}/files/{*file}", get(one))
        .route("/api/packages/{number}/save", post(save))
        .route("/api/sheets/{name}/reply", get(words))
}

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let answer = state.outcome.whole(&desk).map(reply);
        Ok(whole(&name, answer.as_deref()))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn whole(name: &str, answer: Option<&str>) -> Markup {
    let body = html! {
        main #main.page {
            h1 { "Documents" }
            @match answer {
                None => p { "The enquiry as it stands cannot be worked; the sheet says what is missing." },
                Some(answer) => {
                    section {
                        h2 { "The package" }
                        p { "Calculation report, long section to scale, trail of all values, result for programs, and a list with hashes." }
                        form data-package=(name) {
                            label { "For " select name="edition" { @for edition in Edition::ALL { option value=(edition.word()) { (edition.name()) } } } } " "
                            button.main type="submit" { "Make it" }
                        }
                        div #package data-patch aria-live="polite" {}
                    }
                    section {
                        h2 { "The reply" }
                        p { "The first answer as the text of a mail. " button type="button" data-copy="reply" { "Copy it" } }
                        pre.reply #reply tabindex="0" { (answer) }
                    }
                }
            }
        }
        (cautions())
    };
    page(&Page { title: "Documents", sheet: Some(name), class: "page", bar: sheet::bar(name, "documents"), body })
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Wish {
    edition: String,
}

async fn begin(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    headers: HeaderMap,
    Json(wish): Json<Wish>,
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

async fn stand(Shared(desk): Shared<Arc<Desk>>, Path(number): Path<u64>, headers: HeaderMap) -> Response {
    let package = match desk.packages.find(number) {
        Ok(package) => package,
        Err(refusal) => return refusal.answer(&headers),
    };
    let (done, of) = package.steps();
    let stand = package.stand();
    if crate::answer::wants_html(&headers) {
        return progress(number, &stand, done, of).into_response();
    }
    let told: Value = match &stand {
        Stand::Making(step) => json!({ "stands": "making", "step": step, "done": done, "of": of }),
        Stand::Stopped => json!({ "stands": "stopped" }),
        Stand::Failed(reason) => json!({ "stands": "failed", "reason": reason }),
        Stand::Done(files) => json!({
            "stands": "done",
            "files": files.iter().map(|(name, bytes)| json!({ "name": name, "bytes": bytes.len() })).collect::<Vec<_>>(),
        }),
    };
    Json(json!({ "package": number, "sheet": package.sheet, "version": package.version, "edition": package.edition.word(), "stand": told })).into_response()
}

/// How a package stands, as a piece of the page.
fn progress(number: u64, stand: &Stand, done: usize, of: usize) -> Markup {
    html! {
        div #package data-patch aria-live="polite" data-number=(number) data-making[matches!(stand, Stand::Making(_))] {
            @match stand {
                Stand::Making(step) => {
                    p { progress max=(of) value=(done) { (done) " of " (of) } " " (step) " " button type="button" data-stop=(number) { "Stop" } }
                }
                Stand::Stopped => p { "Stopped; nothing was kept of it." },
                Stand::Failed(reason) => p { span.word.bad { "Not made: " } (reason) },
                Stand::Done(files) => {
                    p { a href=(format!("/api/packages/{number}/all.zip")) download { "Download all" } " "
                        button type="button" data-save=(number) { "Save beside the enquiry" } }
                    ul.documents { @for (name, bytes) in files.iter() {
                        @let at = format!("/api/packages/{number}/files/{name}");
                        li { button.plain type="button" data-look=(at) { (name) } " " span.small { (bytes.len().div_ceil(1000)) " kB" } " " a href=(at) download { "download" } }
                    } }
                    iframe #look title="The document" hidden {}
                }
            }
        }
    }
}

async fn stop(Shared(desk): Shared<Arc<Desk>>, Path(number): Path<u64>, headers: HeaderMap) -> Response {
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

async fn one(
    Shared(desk): Shared<Arc<Desk>>,
    Path((number, file)): Path<(u64, String)>,
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

async fn all(Shared(desk): Shared<Arc<Desk>>, Path(number): Path<u64>, headers: HeaderMap) -> Response {
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

async fn save(Shared(desk): Shared<Arc<Desk>>, Path(number): Path<u64>, headers: HeaderMap) -> Response {
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

async fn words(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        match state.outcome.whole(&desk) {
            Some(settled) => Ok(json!({ "reply": reply(settled) })),
            None => Err(Refusal::Faults(state.outcome.faults.clone())),
        }
    });
    match made.await {
        Ok(value) => Json(value).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

//! The sheet of one enquiry.

use super::{Page, cautions, page, refused};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::parts::{self, View};
use crate::sheet::{State, apart};
use axum::Router;
use axum::extract::{Path, Query, State as Shared};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}", get(show))
}

pub(super) fn pieces_routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/pieces", get(pieces))
}

/// The address of a sheet.
#[must_use]
pub fn address(name: &str) -> String {
    format!("/sheet/{}", encoded(name))
}

/// A name as a part of an address.
#[must_use]
pub fn encoded(name: &str) -> String {
    let plain = |byte: &u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'.');
    name.bytes().map(|byte| if plain(&byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}

async fn show(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        Ok(whole(&name, &state, &view))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

async fn pieces(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || -> Result<Markup, Refusal> {
        let state = desk.sheet(&name)?.now();
        Ok(parts::all(&state, &view))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

fn whole(name: &str, state: &State, view: &View) -> Markup {
    let title = state
        .outcome
        .settled
        .as_ref()
        .and_then(|settled| settled.job.enquiry.head.title.0.clone())
        .unwrap_or_else(|| name.to_owned());
    let bar = bar(name, "sheet");
    let body = html! {
        div.table {
            aside #beside hidden aria-label="Beside the sheet" {}
            main #main.sheet {
                h1.unseen { (title) }
                (parts::all(state, view))
            }
        }
        aside #panel hidden aria-label="What is pointed at" {}
        (cautions())
    };
    page(&Page { title: &title, sheet: Some(name), class: "sheet", bar, body })
}

/// The ways to the views of an enquiry.
pub fn bar(name: &str, here: &str) -> Markup {
    let current = |view: &str| (view == here).then_some("page");
    let sheet = address(name);
    html! {
        nav aria-label="Views" {
            a href=(sheet) aria-current=[current("sheet")] { "Sheet" }
            @if here == "sheet" {
                @for (which, title) in [("mail", "Mail"), ("inputs", "Inputs"), ("text", "Text")] {
                    button type="button" data-beside=(which) aria-expanded="false" aria-controls="beside" { (title) }
                }
            }
            @for (view, title) in [("basis", "Basis"), ("units", "Units"), ("study", "How sure"), ("rating", "Rating"), ("drawing", "Drawing"), ("documents", "Documents"), ("settings", "Settings")] {
                a href=(format!("{sheet}/{view}")) aria-current=[current(view)] { (title) }
            }
            a href="/manual" { "Manual" }
        }
    }
}

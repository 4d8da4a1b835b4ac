//! The drawing sheets: the long section with its schedules, plan and cross section; on the screen and, printed, at its scale.

use super::{Page, cautions, page, refused, sheet};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::sheet::apart;
use axum::Router;
use axum::extract::{Path, State as Shared};
use axum::http::header::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{PreEscaped, html};
use std::sync::Arc;
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, set};
use stillrise_units::System;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/drawing", get(show))
}

/// The sheets of an enquiry, and its units of print.
///
/// # Errors
/// [`Refusal`] when the enquiry cannot be worked.
pub fn drawn(desk: &Desk, name: &str) -> Result<(Vec<Drawing>, System), Refusal> {
    let state = desk.sheet(name)?.now();
    match &state.outcome.settled {
        Some(settled) => Ok((set(settled, Edition::Us), settled.job.enquiry.system())),
        None => Err(Refusal::Faults(state.outcome.faults.clone())),
    }
}

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let (drawings, system) = drawn(&desk, &name)?;
        let body = html! {
            main #main.drawing {
                h1.unseen { "Drawings" }
                @if drawings.is_empty() { p { "No unit is laid out, so there is nothing to draw; the sheet says why." } }
                @for drawing in &drawings { div.paper { (PreEscaped(&drawing.svg)) } }
            }
            (cautions())
        };
        let class = if system == System::Us { "ansi" } else { "iso" };
        Ok(page(&Page { title: "Drawing", sheet: Some(&name), class, bar: sheet::bar(&name, "drawing"), body }))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

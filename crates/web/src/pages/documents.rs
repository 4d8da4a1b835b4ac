//! The documents of an enquiry: the reply as text, and the package made in the background, looked at in the page and
//! downloaded, one or all.

use super::{Page, cautions, page, refused, sheet};
use crate::desk::Desk;
use crate::sheet::apart;
use crate::work::Stand;
use axum::Router;
use axum::extract::{Path, State as Shared};
use axum::http::header::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;
use stillrise_documents::Edition;
use stillrise_documents::contents::{Document, all};
use stillrise_documents::reply::reply;
use stillrise_search::Settled;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/documents", get(show))
}

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let settled = state.outcome.whole(&desk);
        let answer = settled.map(reply);
        Ok(whole(&name, settled, answer.as_deref()))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn whole(name: &str, settled: Option<&Settled>, answer: Option<&str>) -> Markup {
    let body = html! {
        main #main.page {
            h1 { "Documents" }
            @match answer {
                None => p { "The enquiry as it stands cannot be worked; the sheet says what is missing." },
                Some(answer) => {
                    section {
                        h2 { "The package" }
                        form data-package=(name) {
                            label { "For " select name="edition" { @for edition in Edition::ALL { option value=(edition.word()) { (edition.name()) } } } } " "
                            button.main type="submit" { "Make it" }
                        }
                        div #package data-patch aria-live="polite" {}
                        (listed(settled))
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

/// What a package of this job consists of, and what it does not give.
fn listed(settled: Option<&Settled>) -> Markup {
    let (given, lacking): (Vec<Document>, Vec<Document>) =
        all().into_iter().partition(|one| settled.is_none_or(|settled| one.lacks(settled).is_none()));
    html! {
        div.scroll { table.list {
            thead { tr { th scope="col" { "Document" } th scope="col" { "Who uses it for what" } @for edition in Edition::ALL { th scope="col" { (capital(edition.word())) } } } }
            tbody { @for one in &given { tr {
                th scope="row" { (one.title) }
                td { (one.about) }
                @for edition in Edition::ALL { td { @if one.editions.contains(&edition) { "yes" } @else { "no" } } }
            } } }
        } }
        @if let (false, Some(settled)) = (lacking.is_empty(), settled) {
            p { "This job does not give:" }
            ul { @for one in &lacking { li { (one.title) ": " (one.lacks(settled).unwrap_or_default()) "." } } }
        }
    }
}

/// With a capital at the beginning.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// How a package stands, as a piece of the page.
pub fn progress(number: u64, stand: &Stand, done: usize, of: usize) -> Markup {
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

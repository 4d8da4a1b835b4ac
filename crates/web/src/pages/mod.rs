//! Whole pages. What changes on them stands in `parts`.

mod asides;
mod basis;
pub mod documents;
pub mod drawing;
mod folder;
mod manual;
mod programs;
mod rating;
mod settings;
pub mod sheet;
mod study;
pub mod units;

use crate::answer::{Refusal, wants_html};
use crate::desk::Desk;
use axum::Router;
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use maud::{DOCTYPE, Markup, html};
use std::sync::Arc;

/// The ways to all pages.
pub fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .merge(folder::routes())
        .merge(sheet::routes())
        .merge(basis::routes())
        .merge(documents::routes())
        .merge(drawing::routes())
        .merge(manual::routes())
        .merge(programs::routes())
        .merge(rating::routes())
        .merge(settings::routes())
        .merge(study::routes())
        .merge(units::routes())
}

/// The ways to pieces of a sheet, which a page asks for again and again.
pub fn pieces() -> Router<Arc<Desk>> {
    Router::new().merge(asides::routes()).merge(sheet::pieces_routes())
}

/// One page.
pub struct Page<'a> {
    /// What it is called in the browser's own lists.
    pub title: &'a str,
    /// The sheet that it belongs to.
    pub sheet: Option<&'a str>,
    /// What it shows, for the style sheet.
    pub class: &'a str,
    /// Beside the name of the program in the bar.
    pub bar: Markup,
    /// All below the bar.
    pub body: Markup,
}

/// Where a page finds what it is shown with.
pub struct Frame<'a> {
    /// What leads to style, scripts and icon.
    pub assets: &'a str,
    /// What the program's name in the bar leads to.
    pub home: &'a str,
    /// The scripts.
    pub scripts: Markup,
}

/// A page that the program serves.
#[must_use]
pub fn page(page: &Page<'_>) -> Markup {
    let scripts = html! {
        script src="/assets/light.js" {}
        script type="module" src="/assets/sheet.js" {}
    };
    framed(page, &Frame { assets: "/assets/", home: "/", scripts })
}

/// The frame that all pages stand in.
#[must_use]
pub fn framed(page: &Page<'_>, frame: &Frame<'_>) -> Markup {
    let Frame { assets, home, scripts } = frame;
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (page.title) " - Stillrise" }
                link rel="icon" href=(format!("{assets}icon.svg")) type="image/svg+xml";
                link rel="stylesheet" href=(format!("{assets}sheet.css"));
                (scripts)
            }
            body class=(page.class) data-sheet=[page.sheet] {
                a.skip href="#main" { "To the content" }
                header.bar {
                    a.name href=(home) { "Stillrise" }
                    (page.bar)
                    button.light type="button" data-light { "Light or dark" }
                }
                (page.body)
                div #trouble role="alert" {}
                div #told role="status" aria-live="polite" {}
            }
        }
    }
}

/// The sentence that stands on every page that somebody could act on.
pub fn cautions() -> Markup {
    html! { footer.cautions { p { (stillrise_documents::summary::CAUTION) } } }
}

/// A page that says why there is no other.
pub fn refused(refusal: &Refusal, headers: &HeaderMap) -> Response {
    if !wants_html(headers) {
        return refusal.answer(headers);
    }
    let answer = refusal.answer(headers);
    let body =
        html! { main #main.plain { h1 { "Not to be had" } (refusal.html()) p { a href="/" { "To the enquiries" } } } };
    let whole = page(&Page { title: "Not to be had", sheet: None, class: "plain", bar: html! {}, body });
    (answer.status(), whole).into_response()
}

/// Where no page is.
pub async fn nothing_there(headers: HeaderMap) -> Response {
    if wants_html(&headers) {
        refused(&Refusal::missing("There is no such page."), &headers)
    } else {
        Refusal::missing("There is nothing here; /openapi.json lists all ways for programs.").answer(&headers)
    }
}

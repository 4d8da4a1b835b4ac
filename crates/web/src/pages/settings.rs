//! The company's settings that hold for an enquiry, or for the folder: where they lie, what comes from them, and their text. They
//! are changed in the file, which several people share.

use super::{Page, cautions, page, refused, sheet};
use crate::answer::{Refusal, said};
use crate::desk::Desk;
use crate::sheet::apart;
use axum::Router;
use axum::extract::{Path, State as Shared};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::settings::{FromSettings, SETTINGS};
use stillrise_desk::settings::Held;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/settings", get(of_folder))
        .route("/sheet/{name}/settings", get(of_sheet))
        .route("/logo", get(logo_of_folder))
        .route("/sheet/{name}/logo", get(logo_of_sheet))
}

async fn logo_of_folder(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap) -> Response {
    logo(apart(move || Ok(desk.folder.own_settings())).await, &headers)
}

async fn logo_of_sheet(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    logo(apart(move || Ok(desk.sheet(&name)?.now().outcome.held.clone())).await, &headers)
}

/// The logo as a picture: a page of this server loads nothing but files of it.
fn logo(held: Result<Held, Refusal>, headers: &HeaderMap) -> Response {
    let logo = held.map(|held| held.settings.and_then(|settings| settings.logo.clone()));
    match logo {
        Ok(Some(logo)) => ([(CONTENT_TYPE, logo.kind())], logo.bytes).into_response(),
        Ok(None) => Refusal::missing("The settings name no logo.").answer(headers),
        Err(refusal) => refusal.answer(headers),
    }
}

async fn of_folder(Shared(desk): Shared<Arc<Desk>>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let held = desk.folder.own_settings();
        let says = Enquiry { settings: held.settings.clone(), ..Enquiry::default() }.from_settings();
        let body = whole(&held, &says, &desk.folder.root().display().to_string(), "/logo");
        let bar = html! { nav { a href="/" { "Enquiries" } a href="/manual" { "Manual" } } };
        Ok(page(&Page { title: "Company's settings", sheet: None, class: "page", bar, body }))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

async fn of_sheet(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let says = state.outcome.enquiry.as_ref().map(|enquiry| enquiry.from_settings()).unwrap_or_default();
        let body = whole(
            &state.outcome.held,
            &says,
            &desk.folder.root().display().to_string(),
            &format!("{}/logo", sheet::address(&name)),
        );
        let bar = sheet::bar(&name, "settings");
        Ok(page(&Page { title: "Company's settings", sheet: Some(&name), class: "page", bar, body }))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn whole(held: &Held, says: &[FromSettings], root: &str, logo: &str) -> Markup {
    html! {
        main #main.page {
            h1 { "Company's settings" }
            p { "What the company says once for all its enquiries. It stands below what an enquiry states and above defaults." }
            @match &held.file {
                None => p { "There are none: " code { (SETTINGS) } " would hold beside an enquiry, or for all of them in " code { (root) } ". `stillrise new --settings` writes one with every key explained." },
                Some(file) => p { "They stand in " code { (file.display()) } ", and are changed there; the sheet follows as soon as the file is saved." },
            }
            @if !held.faults.is_empty() {
                p { span.word.bad { "Refused" } ": until this is mended, no enquiry under them can be worked." }
                ul.faults { @for fault in &held.faults { li { (said(fault)) } } }
            }
            @if held.settings.as_ref().is_some_and(|settings| settings.logo.is_some()) {
                p { img.logo src=(logo) alt="Logo" height="48"; }
            }
            @if !says.is_empty() {
                div.scroll { table.list {
                    thead { tr { th scope="col" { "What" } th scope="col" { "Key" } th scope="col" { "By the settings" } th scope="col" { "The enquiry says instead" } } }
                    tbody { @for one in says { tr {
                        th scope="row" { (one.what) } td { code { (one.key) } } td { (one.value) } td { (one.instead.as_deref().unwrap_or_default()) }
                    } } }
                } }
            }
            @if !held.text.is_empty() {
                h2 { "Text of the file" }
                pre.reply tabindex="0" { (held.text) }
            }
        }
        (cautions())
    }
}

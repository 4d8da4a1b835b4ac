//! How sure the prediction is: bands, the chance to keep each limit, and which inputs carry the doubt.

use super::{Page, cautions, page, refused, sheet};
use crate::desk::Desk;
use crate::sheet::apart;
use axum::Router;
use axum::extract::{Path, State as Shared};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, PreEscaped, html};
use std::sync::Arc;
use stillrise_documents::charts::{charts, plain};
use stillrise_documents::risk::{method, risk_text, sentences};
use stillrise_search::Settled;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/study", get(show))
}

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let inner = match state.outcome.studied(&desk) {
            Some(settled) => studied(settled),
            None => html! { p { "The enquiry as it stands cannot be worked; the sheet says what is missing." } },
        };
        let body = html! { main #main.page { h1 { "How sure it is" } (inner) } (cautions()) };
        Ok(page(&Page {
            title: "How sure it is",
            sheet: Some(&name),
            class: "page",
            bar: sheet::bar(&name, "study"),
            body,
        }))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn studied(settled: &Settled) -> Markup {
    let Some(risk) = &settled.risk else {
        return html! { p { "There is no prediction to study." } };
    };
    html! {
        @for sentence in sentences(settled, risk) { p { (sentence) } }
        div.charts2 { @for chart in charts(settled) {
            figure.chart { figcaption { (chart.title) } (PreEscaped(chart.svg)) p.small { (chart.says) } }
        } }
        @for (_, says) in plain(settled) { p { (says) } }
        details { summary { "All of it, as the terminal prints it" } pre tabindex="0" { (risk_text(settled, risk, 110)) } }
        p.small { (method(settled, risk)) }
    }
}

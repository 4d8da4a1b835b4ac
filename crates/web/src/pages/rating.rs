//! A unit that stands: what it should do, what was observed on a time line, what explains it, and what to test next.

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
use stillrise_documents::charts::time_line;
use stillrise_documents::profile::Paper;
use stillrise_documents::rating::words::{changes, no_worse, nothing_fits, outs, samples_first, step, together};
use stillrise_documents::rating::{SHOWN, causes, larger, part_of, rating_text};
use stillrise_documents::render::svg::{Options, svg};
use stillrise_documents::risk::percent;
use stillrise_documents::summary::headline;
use stillrise_search::Settled;
use stillrise_search::diagnosis::Diagnosis;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/rating", get(show))
}

/// Paper of the drawing that shows where they act.
const PAPER: Paper = Paper { width: 240.0, height: 96.0 };

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let inner = match state.outcome.whole(&desk) {
            Some(settled) => match &settled.diagnosis {
                Some(diagnosis) => rated(settled, diagnosis),
                None => html! {
                    p { "A rating needs a unit that stands, by its model or its dimensions, and what was observed at it: add them to the inputs beside the sheet." }
                },
            },
            None => html! { p { "The enquiry as it stands cannot be worked; the sheet says what is missing." } },
        };
        let body = html! { main #main.page { h1 { "Rating" } (inner) } (cautions()) };
        Ok(page(&Page { title: "Rating", sheet: Some(&name), class: "page", bar: sheet::bar(&name, "rating"), body }))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn rated(settled: &Settled, d: &Diagnosis) -> Markup {
    html! {
        h2 { "What it should do" }
        @for text in headline(settled) { p { (text) } }
        @if let Some(chart) = time_line(settled) {
            h2 { "What was observed" }
            figure.chart { (PreEscaped(chart.svg)) }
        }
        @for text in changes(settled, d) { p { (text) } }
        h2 { "What explains it" }
        @if let Some(scene) = causes(settled, d, PAPER) {
            figure.causes { (PreEscaped(svg(&scene, &Options { id: "causes".to_owned(), background: false, sized: false, pointed: false, ..Options::default() }))) }
        }
        @for text in no_worse(d).into_iter().chain(nothing_fits(d)).chain(samples_first(d)) { p { (text) } }
        ol.explanations {
            @for (k, e) in d.explanations.iter().take(SHOWN).enumerate() {
                li {
                    span.balloon { "C" (k + 1) } b { (percent(e.weight)) } " " (together(settled, e))
                    @let parts: Vec<&str> = { let mut all: Vec<&str> = e.causes.iter().map(|sized| part_of(sized.cause)).collect(); all.dedup(); all };
                    @if !parts.is_empty() { span.small { " At: " (parts.join(", ")) "." } }
                    @let then = outs(d, e);
                    @if !then.is_empty() { p.small { "It would give " (then.join(", ")) " mg/L where oil was measured." } }
                    @for sized in &e.causes { p.small { b { (sized.cause.title) } ": " (sized.cause.how) " " i { (sized.cause.remedy) } } }
                }
            }
        }
        h2 { "What to test next" }
        ol { @for one in &d.steps { li { (step(settled, d, one)) } } }
        h2 { "Would a larger unit help?" }
        @for text in larger(settled, d) { p { (text) } }
        details { summary { "All of it, as the terminal prints it" } pre tabindex="0" { (rating_text(settled, d, 110)) } }
    }
}

//! The basis at a glance: what arrives by case, what it carries, what was contradictory and what was chosen; and the trains
//! that would do beside the one asked for.

use super::{Page, cautions, page, refused, sheet};
use crate::desk::Desk;
use crate::parts::glance::word;
use crate::sheet::{State, apart};
use axum::Router;
use axum::extract::{Path, State as Shared};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, PreEscaped, html};
use std::sync::Arc;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::provenance::{Chooser, Node, Origin, Val};
use stillrise_documents::alternatives::{Beside, beside};
use stillrise_documents::charts::arrivals;
use stillrise_documents::regulation::{self, sheets};
use stillrise_documents::summary::governs;
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/basis", get(show))
}

async fn show(Shared(desk): Shared<Arc<Desk>>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let whole = state.outcome.whole(&desk);
        Ok(basis_page(&name, &state, whole))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

fn basis_page(name: &str, state: &State, settled: Option<&Settled>) -> Markup {
    let body = html! {
        main #main.page {
            h1 { "Basis of design" }
            @match settled {
                Some(settled) => (basis(settled)),
                None => p { "The enquiry as it stands cannot be worked; the sheet says what is missing." },
            }
        }
        aside #panel hidden aria-label="What is pointed at" {}
        (cautions())
    };
    let bar = sheet::bar(name, "basis");
    let _ = state;
    page(&Page { title: "Basis", sheet: Some(name), class: "page", bar, body })
}

/// A number that tells where it comes from.
pub fn number(at: Node, shown: String) -> Markup {
    html! { @match at.index() {
        Some(index) => button.plain.number type="button" data-trail=(index) { (shown) },
        None => span.number { (shown) },
    } }
}

fn basis(settled: &Settled) -> Markup {
    let Some(basis) = &settled.job.design.basis else {
        return html! { p { "No basis could be found; the sheet says what stopped it." } };
    };
    let unit = settled.job.enquiry.system().pick(FLOW_UNITS);
    let governed = governs(settled);
    let mg = |v: Val<Concentration>| number(v.at, print::digits(MG_L.from_si(v.q.si()), 3));
    html! {
        @if let Some(chart) = arrivals(settled) {
            figure.chart { figcaption { (chart.title) } (PreEscaped(chart.svg)) p.small { (chart.says) } }
        }
        h2 { "Cases" }
        div.scroll { table.list { thead { tr {
            th { "Case" } th { "Waters" } th { "Arrives, " (unit.symbol) } th { "To the unit, " (unit.symbol) } th { "Free oil, mg/L" } th { "Emulsified" } th { "Dissolved" } th { "Solids" } th { "Governs" }
        } } tbody {
            @for (k, case) in basis.cases.iter().enumerate() {
                tr {
                    th scope="row" { (case.name) } td { (case.parts.join(" + ")) }
                    td { (number(case.inflow.at, print::digits(unit.from_si(case.inflow.q.si()), 4))) }
                    td { (number(case.feed.at, print::digits(unit.from_si(case.feed.q.si()), 4))) }
                    @match &case.content {
                        Some(c) => { td { (mg(c.free)) } td { (mg(c.emulsified)) } td { (mg(c.dissolved)) } td { (mg(c.solids)) } }
                        None => { td { "-" } td { "-" } td { "-" } td { "-" } }
                    }
                    td { (governed.iter().filter(|(_, place)| *place == k).map(|(what, _)| *what).collect::<Vec<_>>().join(", ")) }
                }
            }
        } } }
        p.small { "Each case in the coldest and the warmest water, clean and at the end of the interval between pump-outs. A click on a number tells where it comes from." }
        (methods(&sheets(settled)))
        (contradictions(settled))
        (trains(&beside(settled)))
    }
}

/// The methods that an authority asks for: what each asks, and what the units have; nothing where none is asked for.
fn methods(all: &[regulation::Sheet]) -> Markup {
    html! { @if let Some(first) = all.first() {
        h2 { "Methods that the authority asks for" }
        div.scroll { table.list { thead { tr { th { "Method" } th { "Asks for" } th { "By the method" } th { "Units" } th { "" } } } tbody {
            @for sheet in all { @for (k, row) in sheet.beside.iter().enumerate() { tr {
                th scope="row" { @if k == 0 { (sheet.title) } }
                td { (row.what) } td { (row.asked) } td { (row.has) }
                td { @if row.holds == Some(false) { span.word.bad { (row.word()) } } @else { (row.word()) } }
            } } }
        } } }
        @for sheet in all { @for remark in &sheet.remarks { p.small { b { (sheet.title) } ": " (remark) } } }
        p.small { (first.confirm) }
    } }
}

/// What was claimed differently, and what was taken.
fn contradictions(settled: &Settled) -> Markup {
    let system = settled.job.enquiry.system();
    let mut chosen: Vec<_> = settled
        .job
        .ledger
        .entries
        .iter()
        .enumerate()
        .filter(|(_, entry)| {
            matches!(&entry.origin, Origin::Chosen { by: Chooser::Person | Chooser::Nobody, .. })
                || matches!(&entry.origin, Origin::Assumed(a) if a.contradiction)
        })
        .collect();
    // What several calculations took up is told once.
    let mut told: Vec<(&str, String)> = Vec::new();
    chosen.retain(|(_, entry)| {
        let own = (entry.label.as_str(), entry.shown(system));
        let is_new = !told.contains(&own);
        if is_new {
            told.push(own);
        }
        is_new
    });
    html! {
        h2 { "What was said differently" }
        @if chosen.is_empty() { p { "Nothing." } } @else {
            ul { @for (index, entry) in chosen {
                li { (entry.label) ": " button.plain.number type="button" data-trail=(index) { (entry.shown(system)) }
                    @if let Origin::Chosen { among, because, .. } = &entry.origin { " taken, among " (among) ": " (because) }
                    @if let Origin::Assumed(a) = &entry.origin { " taken; " (a.source) }
                }
            } }
        }
    }
}

/// Trains side by side.
fn trains(all: &[Beside]) -> Markup {
    let dash = |text: &Option<String>| text.clone().unwrap_or_else(|| "-".to_owned());
    html! {
        h2 { "Other ways to do it" }
        div.scroll { table.list { thead { tr { th { "Train" } th { "Unit" } th { "Largest flow" } th { "Held back ahead" } th { "Oil that leaves, mg/L" } th { "Limits" } th { "Needed beside it" } th { "Price by the range" } } }
        tbody { @for train in all { tr {
            th scope="row" { (train.change) }
            td { @match (&train.unit, &train.nearest) { (Some(unit), _) => b { (unit) }, (None, Some(near)) => { span.word.bad { "nothing does" } " " span.small { (near) } }, _ => span.word.bad { "nothing does" } } }
            td { (dash(&train.flow)) } td { (dash(&train.held)) } td { (dash(&train.leaves)) }
            td { @for (limit, at) in &train.words { span.pair { (limit) ": " (word(*at)) } } }
            td { (train.needed.join(", ")) } td { (dash(&train.price)) }
        } } } } }
    }
}

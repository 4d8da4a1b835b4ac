//! The manual as the program serves it: its pages, with formulas worked as the reader asks, and a search over all of them.

use super::{Page, cautions, page, refused};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::manual::{self, Shelf, Ways, address, contents, search, shelves};
use crate::sheet::apart;
use axum::Router;
use axum::extract::{Path, Query};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use serde::Deserialize;
use std::sync::Arc;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/manual", get(whole)).route("/manual/{shelf}/{id}", get(one))
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Search {
    q: String,
}

/// A page of the manual.
pub(super) fn of_manual(title: &str, inner: &Markup) -> Markup {
    framed(title, "", inner)
}

/// The same with what is looked for in its field.
fn framed(title: &str, now: &str, inner: &Markup) -> Markup {
    let bar = html! { nav aria-label="Views" { a href="/" { "Enquiries" } a href="/manual" aria-current="page" { "Manual" } } };
    let body = html! { main #main.page.manual { (finder(now)) (shelves(Ways::Served)) (inner) } (cautions()) };
    page(&Page { title, sheet: None, class: "page", bar, body })
}

/// The field by which everything is found.
fn finder(now: &str) -> Markup {
    html! {
        form.finder action="/manual" method="get" role="search" {
            label.unseen for="q" { "Find in the manual" }
            input #q type="search" name="q" value=(now) placeholder="rise of a droplet, diesel, short circuit" autocomplete="off";
            button type="submit" { "Find" }
        }
    }
}

async fn whole(Query(Search { q }): Query<Search>) -> Markup {
    if q.trim().is_empty() { of_manual("Manual", &contents(Ways::Served)) } else { framed("Manual", &q, &hits(&q)) }
}

/// Most that a search shows.
const SHOWN: usize = 40;

fn hits(query: &str) -> Markup {
    let hits = search(query);
    html! {
        h1 { (hits.len()) " found for \u{201c}" (query) "\u{201d}" }
        @if hits.is_empty() { p { "Nothing of the manual holds these words. Try another word of the trade, or a part of one." } }
        ol.hits { @for hit in hits.iter().take(SHOWN) {
            li { span.small { (hit.entry.kind.word()) } " " a href=(address(hit.entry, Ways::Served)) { (hit.entry.title) } @let excerpt = hit.excerpt(query); @if !excerpt.is_empty() { p.small { (excerpt) } } }
        } }
        @if hits.len() > SHOWN { p.small { (hits.len() - SHOWN) " more; another word narrows it." } }
    }
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Given {
    /// Arguments of a formula as typed, `d=60 um`, parted by semicolons.
    with: String,
}

async fn one(
    Path((shelf, id)): Path<(String, String)>,
    Query(Given { with }): Query<Given>,
    headers: HeaderMap,
) -> Response {
    // Pictures of the guide are drawn from worked jobs when they are first asked for.
    let made = apart(move || {
        let none = || Refusal::missing(format!("The manual holds no {shelf} \"{id}\"."));
        let known = Shelf::named(&shelf).ok_or_else(none)?;
        let title = manual::title(known, &id).ok_or_else(none)?;
        Ok((title, known.body(&id, Ways::Served, &with).ok_or_else(none)?))
    });
    match made.await {
        Ok((title, body)) => of_manual(&title, &body).into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

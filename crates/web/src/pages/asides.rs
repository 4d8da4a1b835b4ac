//! The pieces that open beside a sheet: what is pointed at, where a number comes from, what a mark could answer, and what
//! stands in the column to its left.

use crate::answer::Refusal;
use crate::desk::Desk;
use crate::parts::{self, View, beside, mail, panel, remedy, trail, way};
use crate::sheet::{State, apart};
use axum::Router;
use axum::extract::{Path, Query, State as Shared};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::Markup;
use std::sync::Arc;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/sheet/{name}/part/{id}", get(part))
        .route("/sheet/{name}/trail/{nth}", get(line))
        .route("/sheet/{name}/find/{nth}", get(find))
        .route("/sheet/{name}/remedy/{rule}", get(settles))
        .route("/sheet/{name}/beside/{which}", get(aside))
        .route("/sheet/{name}/way", get(charts))
        .route("/sheet/{name}/later", get(later))
}

/// A piece of a sheet as it stands, or that there is none.
async fn made(
    desk: Arc<Desk>,
    name: String,
    headers: HeaderMap,
    piece: impl FnOnce(&State) -> Option<Markup> + Send + 'static,
) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        piece(&state).ok_or_else(|| Refusal::missing("There is no such thing on the sheet as it stands now."))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

async fn part(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, id)): Path<(String, String)>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    made(desk, name, headers, move |state| panel::piece(state, &id, &view)).await
}

async fn line(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, nth)): Path<(String, usize)>,
    headers: HeaderMap,
) -> Response {
    made(desk, name, headers, move |state| trail::piece(state, nth)).await
}

async fn find(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, nth)): Path<(String, usize)>,
    headers: HeaderMap,
) -> Response {
    made(desk, name, headers, move |state| mail::offers(state, nth)).await
}

async fn charts(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    let own = Arc::clone(&desk);
    let piece = move |state: &State| {
        if view.study {
            let _ = state.outcome.studied(&own);
        }
        Some(way::piece(state, &view))
    };
    made(desk, name, headers, piece).await
}

async fn later(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    made(desk, name, headers, move |state| Some(parts::later(state, &view))).await
}

async fn settles(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, rule)): Path<(String, String)>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || {
        let sheet = desk.sheet(&name)?;
        remedy::piece(&desk, &sheet, &rule)
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

async fn aside(
    Shared(desk): Shared<Arc<Desk>>,
    Path((name, which)): Path<(String, String)>,
    Query(view): Query<View>,
    headers: HeaderMap,
) -> Response {
    made(desk, name, headers, move |state| beside::piece(state, &which, &view)).await
}

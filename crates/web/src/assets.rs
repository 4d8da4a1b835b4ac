//! Style, script and icon: part of the program, nothing is loaded from elsewhere.

use crate::desk::Desk;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use axum::routing::get;
use std::sync::Arc;

/// The ways to them.
pub fn routes() -> Router<Arc<Desk>> {
    let file = |kind: &'static str, text: &'static str| {
        get(move || async move { ([(CONTENT_TYPE, kind), (CACHE_CONTROL, "no-cache")], text).into_response() })
    };
    Router::new()
        .route("/assets/sheet.css", file("text/css; charset=utf-8", include_str!("../assets/sheet.css")))
        .route("/assets/sheet.js", file("text/javascript; charset=utf-8", include_str!("../assets/sheet.js")))
        .route("/assets/light.js", file("text/javascript; charset=utf-8", include_str!("../assets/light.js")))
        .route("/assets/icon.svg", file("image/svg+xml", include_str!("../assets/icon.svg")))
}

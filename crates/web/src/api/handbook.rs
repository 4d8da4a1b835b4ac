//! The manual for programs.

use super::taken::{Asks, At};
use crate::answer::Refusal;
use crate::manual::search as found;
use axum::Json;
use axum::http::header::HeaderMap;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use stillrise_handbook::manual::{Variable, formula as shown, named};

/// Most that a search answers.
const SHOWN: usize = 40;

/// What is looked for.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Words {
    q: String,
}

pub(super) async fn search(Asks(Words { q }): Asks<Words>) -> Json<Value> {
    let hits = found(&q);
    Json(json!({ "count": hits.len(), "hits": hits.iter().take(SHOWN).map(|hit| json!({
        "kind": hit.entry.kind.word(), "id": hit.entry.id, "title": hit.entry.title, "excerpt": hit.excerpt(&q),
    })).collect::<Vec<_>>() }))
}

pub(super) async fn formula(At(id): At<String>, headers: HeaderMap) -> Response {
    let Ok(page) = named(&id) else {
        return Refusal::missing(format!("There is no formula \"{id}\".")).answer(&headers);
    };
    let f = shown(page);
    Json(json!({
        "id": page.id, "title": page.title, "area": f.area.map(|area| area.title), "says": f.says, "equations": f.plain,
        "arguments": f.arguments.iter().map(variable).collect::<Vec<_>>(), "result": variable(&f.result),
        "constants": f.constants.iter().map(|(name, value)| json!({ "symbol": name, "value": value })).collect::<Vec<_>>(),
        "sources": page.sources.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "checks": f.checks.iter().map(|check| json!({
            "given": check.given, "expected": check.expected, "found": check.obtained, "evidence": check.evidence, "holds": check.holds,
        })).collect::<Vec<_>>(),
    }))
    .into_response()
}

/// A symbol of a formula.
fn variable(v: &Variable) -> Value {
    let ends = |ends: Option<(f64, f64)>| ends.map(|(low, high)| [low, high]);
    json!({ "name": v.name, "meaning": v.meaning, "takes": v.takes.to_string(), "trusted_si": ends(v.range), "answers_si": ends(v.domain) })
}

//! What an enquiry comes to, for programs.

use super::actions::told;
use super::sheets::asked;
use super::taken::{Asks, At};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::pages::drawing::drawn;
use crate::pages::units::{EACH_WAY, changed, compared};
use crate::sheet::{State, apart};
use axum::Json;
use axum::extract::State as Shared;
use axum::http::header::{CONTENT_TYPE, HeaderMap};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;
use stillrise_design::performance::limit::Word;
use stillrise_design::provenance::Entry;
use stillrise_documents::Edition;
use stillrise_documents::alternatives::beside;
use stillrise_documents::compare::compare_json;
use stillrise_documents::issue::changes_json;
use stillrise_documents::rating::rating_json;
use stillrise_documents::risk::risk_json;
use stillrise_documents::sizes::cards;
use stillrise_documents::summary::{moves, that_matter};
use stillrise_documents::trail::{equations, origin};
use stillrise_documents::with_range::{lines, with_range_json};
use stillrise_search::Settled;
use stillrise_search::sizes::{every, sizes};

/// Why an enquiry cannot be worked.
fn faults(state: &State) -> Refusal {
    Refusal::Faults(state.outcome.faults.clone())
}

fn settled(state: &State) -> Result<&Settled, Refusal> {
    state.outcome.settled.as_ref().ok_or_else(|| faults(state))
}

pub(super) async fn result(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| Ok(stillrise_documents::result::result(settled(state)?, Edition::Us))).await
}

pub(super) async fn glance(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| Ok(told(state))).await
}

pub(super) async fn risk(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = state.outcome.studied(desk).ok_or_else(|| faults(state))?;
        let risk = settled.risk.as_ref().ok_or_else(|| Refusal::missing("There is no prediction to study."))?;
        Ok(risk_json(settled, risk))
    })
    .await
}

pub(super) async fn rating(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = state.outcome.whole(desk).ok_or_else(|| faults(state))?;
        let found = settled.diagnosis.as_ref();
        let found =
            found.ok_or_else(|| Refusal::missing("A rating needs a unit that stands and what was observed at it."))?;
        Ok(rating_json(settled, found))
    })
    .await
}

/// What is held beside.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct With {
    with: String,
}

pub(super) async fn compare(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    Asks(With { with }): Asks<With>,
    headers: HeaderMap,
) -> Response {
    match apart(move || compared(&desk, &name, &with)).await {
        Ok(comparison) => Json(compare_json(&comparison)).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

/// Since which revision.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Since {
    since: String,
}

pub(super) async fn changes(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    Asks(Since { since }): Asks<Since>,
    headers: HeaderMap,
) -> Response {
    let revision = move || Some(since.trim().to_owned()).filter(|since| !since.is_empty());
    match apart(move || changed(&desk, &name, revision().as_deref())).await {
        Ok(found) => Json(changes_json(&found)).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

/// Limits with their words.
fn words(all: &[(String, Word)]) -> Value {
    all.iter().map(|(limit, word)| json!({ "limit": limit, "word": word.text() })).collect()
}

pub(super) async fn units(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = settled(state)?;
        let all = cards(settled, &sizes(settled, &desk.demo, EACH_WAY));
        Ok(json!({ "units": all.iter().map(|card| json!({
            "name": card.name, "model": card.model, "taken": card.taken, "limits": words(&card.words),
            "facts": card.facts.iter().map(|(what, value)| json!({ "what": what, "value": value })).collect::<Vec<_>>(),
            "barred": card.barred.iter().map(|(rule, says)| json!({ "rule": rule, "says": says })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>() }))
    })
    .await
}

pub(super) async fn range(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = settled(state)?;
        Ok(with_range_json(&lines(settled, &every(settled, &desk.demo))))
    })
    .await
}

pub(super) async fn alternatives(
    Shared(desk): Shared<Arc<Desk>>,
    At(name): At<String>,
    headers: HeaderMap,
) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = state.outcome.whole(desk).ok_or_else(|| faults(state))?;
        Ok(json!({ "trains": beside(settled).iter().map(|train| json!({
            "change": train.change, "unit": train.unit, "nearest": train.nearest, "flow": train.flow, "held_back": train.held,
            "leaves_mg_l": train.leaves, "limits": words(&train.words), "needed": train.needed, "price": train.price,
        })).collect::<Vec<_>>() }))
    })
    .await
}

pub(super) async fn remedies(
    Shared(desk): Shared<Arc<Desk>>,
    At((name, rule)): At<(String, String)>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || {
        let sheet = desk.sheet(&name)?;
        crate::parts::remedy::told(&desk, &sheet, &rule)
    });
    match made.await {
        Ok(value) => Json(value).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

pub(super) async fn questions(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |_, state| {
        let settled = settled(state)?;
        Ok(json!({ "questions": that_matter(settled).into_iter().map(|question| json!({
            "key": question.key, "question": question.text, "now": question.now, "low": question.range.0, "high": question.range.1,
            "source": question.source, "contradiction": question.contradiction, "moves": moves(settled, question),
        })).collect::<Vec<_>>() }))
    })
    .await
}

pub(super) async fn trail(
    Shared(desk): Shared<Arc<Desk>>,
    At((name, at)): At<(String, usize)>,
    headers: HeaderMap,
) -> Response {
    asked(desk, name, headers, move |_, state| {
        let settled = settled(state)?;
        let entry =
            settled.job.ledger.entries.get(at).ok_or_else(|| Refusal::missing("The trail has no such line."))?;
        Ok(line(settled, at, entry))
    })
    .await
}

/// A line of the trail with the lines that it rests on.
fn line(settled: &Settled, at: usize, entry: &Entry) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let inputs: Vec<Value> = entry
        .origin
        .inputs()
        .filter_map(|node| Some((node.index()?, ledger.entry(node)?)))
        .map(|(at, input)| json!({ "entry": at, "label": input.label, "value": input.shown(system), "origin": origin(input, system) }))
        .collect();
    json!({
        "entry": at, "section": entry.section.to_string(), "label": entry.label, "value": entry.shown(system), "origin": origin(entry, system),
        "worked": equations(ledger, entry), "notes": entry.notes.iter().map(ToString::to_string).collect::<Vec<_>>(), "inputs": inputs,
    })
}

pub(super) async fn reply(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    asked(desk, name, headers, |desk, state| {
        let settled = state.outcome.whole(desk).ok_or_else(|| faults(state))?;
        Ok(json!({ "reply": stillrise_documents::reply::reply(settled) }))
    })
    .await
}

pub(super) async fn drawing(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    sheet_of(desk, name, headers, 0).await
}

pub(super) async fn views(Shared(desk): Shared<Arc<Desk>>, At(name): At<String>, headers: HeaderMap) -> Response {
    sheet_of(desk, name, headers, 1).await
}

/// One of the drawing sheets, by its place among them.
async fn sheet_of(desk: Arc<Desk>, name: String, headers: HeaderMap, nth: usize) -> Response {
    let missing = || Refusal::missing("No unit is laid out.");
    match apart(move || drawn(&desk, &name)?.0.into_iter().nth(nth).ok_or_else(missing)).await {
        Ok(drawing) => ([(CONTENT_TYPE, "image/svg+xml")], drawing.svg).into_response(),
        Err(refusal) => refusal.answer(&headers),
    }
}

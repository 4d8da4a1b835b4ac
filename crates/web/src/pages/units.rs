//! Units of the range side by side: sections to one scale with verdicts, what each fails, footprint, weight, price; one can be
//! taken and pinned. And other sheets or revisions beside this one.

use super::{Page, cautions, page, refused, sheet};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::parts::glance::word;
use crate::sheet::{State, apart};
use axum::Router;
use axum::extract::{Path, Query, State as Shared};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use serde_json::json;
use std::path::PathBuf;
use std::sync::Arc;
use stillrise_design::job::Design;
use stillrise_desk::frozen::{again, since};
use stillrise_documents::compare::{Comparison, Line, compare};
use stillrise_documents::issue::{By, Changes, Number};
use stillrise_documents::section::small;
use stillrise_documents::sizes::{Card, cards};
use stillrise_documents::with_range::{Line as Unit, in_short, lines};
use stillrise_search::sizes::{every, sizes};

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/sheet/{name}/units", get(show))
}

/// Paper of each section, mm.
const PAPER: (f64, f64) = (78.0, 44.0);
/// Sizes that are shown on either side of the one taken.
pub const EACH_WAY: usize = 2;

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct With {
    /// The enquiry that is held beside, or with `issued ` before it an issued revision of this one.
    with: String,
}

async fn show(
    Shared(desk): Shared<Arc<Desk>>,
    Path(name): Path<String>,
    Query(With { with }): Query<With>,
    headers: HeaderMap,
) -> Response {
    let made = apart(move || {
        let state = desk.sheet(&name)?.now();
        let issued = desk.folder.revisions(&desk.folder.find(&name)?).into_iter().map(|one| format!("{ISSUED}{one}"));
        let enquiries = desk.folder.list()?.into_iter().map(|place| place.name).filter(|other| *other != name);
        let others: Vec<String> = issued.chain(enquiries).collect();
        let beside = match with.strip_prefix(ISSUED) {
            _ if with.is_empty() => html! {},
            Some(revision) => changes(&changed(&desk, &name, Some(revision))?),
            None => table(&compared(&desk, &name, &with)?),
        };
        let all = match &state.outcome.settled {
            Some(settled) => {
                let sizes = sizes(settled, &desk.demo, EACH_WAY);
                let designs: Vec<&Design> = sizes.iter().map(|size| &size.design).collect();
                let drawn = small(settled, &designs, PAPER);
                cards(settled, &sizes).into_iter().zip(drawn).collect()
            }
            None => Vec::new(),
        };
        let range = state.outcome.settled.as_ref().map_or_else(Vec::new, |s| lines(s, &every(s, &desk.demo)));
        Ok(whole(&name, &state, &all, &others, &with, &whole_range(&range, state.is_locked()), &beside))
    });
    match made.await {
        Ok(markup) => markup.into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

/// What stands before the name of a revision where it is held beside its enquiry.
const ISSUED: &str = "issued ";

/// Two enquiries side by side, or one beside a revision of it that was issued.
///
/// # Errors
/// [`Refusal`] when one cannot be worked, or no such revision was kept.
pub fn compared(desk: &Desk, name: &str, with: &str) -> Result<Comparison, Refusal> {
    let one = Arc::clone(&desk.sheet(name)?.now().outcome);
    let other = match with.strip_prefix(ISSUED) {
        Some(revision) => {
            let now = one.settled.as_ref().ok_or_else(|| Refusal::Faults(one.faults.clone()))?;
            let then = again(&issued_file(desk, name, revision)?, revision, now, &one.taken, &desk.demo)?;
            return Ok(compare(&[(name.to_owned(), now), (with.to_owned(), &then)]));
        }
        None => Arc::clone(&desk.sheet(with)?.now().outcome),
    };
    match (&one.settled, &other.settled) {
        (Some(a), Some(b)) => Ok(compare(&[(name.to_owned(), a), (with.to_owned(), b)])),
        _ => Err(Refusal::Faults(one.faults.iter().chain(&other.faults).cloned().collect())),
    }
}

/// The file of an enquiry of which a revision was issued.
fn issued_file(desk: &Desk, name: &str, revision: &str) -> Result<PathBuf, Refusal> {
    let place = desk.folder.find(name)?;
    let is_there = desk.folder.revisions(&place).iter().any(|one| one == revision);
    is_there
        .then_some(place.file)
        .ok_or_else(|| Refusal::missing(format!("No revision {revision} was kept beside it.")))
}

/// What has changed since a revision of an enquiry was issued.
///
/// # Errors
/// [`Refusal`] when it cannot be worked, or no such revision was kept.
pub fn changed(desk: &Desk, name: &str, revision: Option<&str>) -> Result<Changes, Refusal> {
    let one = Arc::clone(&desk.sheet(name)?.now().outcome);
    let file = match revision {
        Some(revision) => issued_file(desk, name, revision)?,
        None => {
            let place = desk.folder.find(name)?;
            if desk.folder.revisions(&place).is_empty() {
                return Err(Refusal::missing("No revision of it was issued yet."));
            }
            place.file
        }
    };
    let now = one.settled.as_ref().ok_or_else(|| Refusal::Faults(one.faults.clone()))?;
    Ok(since(&file, revision, now, &one.taken, &desk.demo)?)
}

fn whole(
    name: &str,
    state: &State,
    all: &[(Card, Option<String>)],
    others: &[String],
    with: &str,
    range: &Markup,
    beside: &Markup,
) -> Markup {
    let (locked, settled) = (state.is_locked(), state.outcome.settled.as_ref());
    let pinned = !locked && settled.is_some_and(|settled| settled.job.enquiry.unit.model.0.is_some());
    let fails = settled.map_or(0, |settled| settled.verdicts.iter().filter(|judged| judged.stands_failed()).count());
    let body = html! {
        main #main.page {
            h1 { "Units of the range" }
            @if all.is_empty() { p { "No row of the range is taken, so none stands beside it." } }
            @if pinned { p { "The model is pinned. " button type="button" data-act-away=(json!([{ "do": "unset", "path": "unit.model" }])) { "Let it be chosen again" } } }
            div.cards { @for (card, drawn) in all { (one(card, drawn.as_deref(), locked, fails)) } }
            (range)
            h2 { "Another sheet, or an issued revision, beside this one" }
            @if others.is_empty() { p { "The folder holds no other enquiry, and no revision of this one was issued yet." } } @else {
                form.finder method="get" {
                    label.unseen for="with" { "Enquiry" }
                    select #with name="with" { @for other in others { option value=(other) selected[other == with] { (other) } } }
                    button type="submit" { "Compare" }
                }
            }
            (beside)
        }
        (cautions())
    };
    page(&Page { title: "Units", sheet: Some(name), class: "page", bar: sheet::bar(name, "units"), body })
}

fn one(card: &Card, drawn: Option<&str>, locked: bool, fails: usize) -> Markup {
    html! {
        section.card.taken[card.taken] {
            h2 { (card.name) @if card.taken { " " span.word.good { "taken" } } }
            @if let Some(drawn) = drawn { div.small-section { (PreEscaped(drawn)) } }
            dl { @for (what, value) in &card.facts { div { dt { (what) } dd.number { (value) } } } }
            @for (limit, at) in &card.words { p { (limit) ": " (word(*at)) } }
            @if card.barred.is_empty() { p { "No rule bars it from being taken." @if card.taken && fails > 0 { " On the sheet " (fails) @if fails == 1 { " rule fails." } @else { " rules fail." } } } }
            @else { ul { @for (rule, says) in &card.barred { li { b { (rule) } ": " (says) } } } }
            @if !locked { p { button type="button" data-act-away=(json!([{ "do": "set", "path": "unit.model", "value": card.model }])) { "Take and pin it" } } }
        }
    }
}

/// Every unit of the range, a line each; one can be taken and pinned.
fn whole_range(lines: &[Unit], locked: bool) -> Markup {
    if lines.is_empty() {
        return html! {};
    }
    let or = |text: &Option<String>| text.clone().unwrap_or_else(|| "-".to_owned());
    html! {
        h2 { "Every unit of the range" }
        p { (in_short(lines)) " Oil out is the largest mean of all cases at the end of the interval; the words are those that would stand, everything heard." }
        div.scroll { table.list #range {
            thead { tr { @for head in ["Unit", "Arrangement", "Oil out, mg/L", "Limits", "What bars it", "Rules that fail", "Cannot judge", "Empty", "Price"] { th scope="col" { (head) } } } }
            tbody { @for line in lines { tr.differs[line.taken] {
                th scope="row" { (line.unit) @if line.taken { " " span.word.good { "taken" } }
                    @else if !locked { " " button type="button" data-act-away=(json!([{ "do": "set", "path": "unit.model", "value": line.model }])) aria-label=(format!("Take and pin {}", line.model)) { "Take" } } }
                td { (line.arrangement) }
                td.number { (or(&line.leaves)) }
                td { @for (limit, word) in &line.words { div { (limit) ": " b { (word) } } } }
                td { @if line.barred.is_empty() { "nothing" } @else { details { summary { (line.barred.len()) @if line.barred.len() == 1 { " rule" } @else { " rules" } }
                    ul { @for (_, title, says) in &line.barred { li { b { (title) } ": " (says) } } } } } }
                td.number { (line.fail) }
                td.number { (line.cannot_judge) }
                td.number { (or(&line.weight)) }
                td.number { (or(&line.price)) }
            } } }
        } }
    }
}

fn table(comparison: &Comparison) -> Markup {
    let part = |title: &str, lines: &[Line]| {
        html! {
            @if !lines.is_empty() {
                tr { th colspan=(comparison.names.len() + 1) { (title) } }
                @for line in lines { tr.differs[line.differs()] {
                    th scope="row" { (line.what) }
                    @for value in &line.values { td { (value.as_deref().unwrap_or("-")) } }
                } }
            }
        }
    };
    html! {
        div.scroll { table.list.compare { thead { tr { th { "" } @for name in &comparison.names { th { (name) } } } }
            tbody { (part("What it comes to", &comparison.results)) (part("What was said that differs", &comparison.said)) (part("What rules say", &comparison.rules)) } } }
    }
}

/// Numbers of the trail that are listed before a click.
const LISTED: usize = 40;

/// What has changed since a revision was issued: in a sentence, then thing by thing.
fn changes(found: &Changes) -> Markup {
    let texts = |value: Option<&Option<String>>| value.cloned().flatten().unwrap_or_else(|| "-".to_owned());
    let head = |what: &str| {
        html! { thead { tr { th scope="col" { (what) } th scope="col" { "As issued" } th scope="col" { "Issued inputs, this tool" } th scope="col" { "Now" } th scope="col" { "By" } } } }
    };
    let rows = |numbers: &[Number]| {
        html! { @for n in numbers { tr.differs {
            th scope="row" { (n.what) }
            @for value in [&n.issued, &n.again, &n.now] { td { (value.as_deref().unwrap_or("-")) } }
            td { (by(n.by)) }
        } } }
    };
    let near = found.numbers.len().min(LISTED);
    html! {
        section #changes {
            h3 { "Since revision " (found.revision) " was issued" }
            p { (found.says()) }
            @for fault in &found.faults { p { (fault.to_string()) } }
            @if !found.inputs.is_empty() {
                h4 { "Inputs that differ" }
                ul { @for (name, was, is) in &found.inputs { li { (name) ": " @match (was, is) { (Some(_), None) => "no longer read", (None, Some(_)) => "was not read then", _ => "another content" } } } }
            }
            @if !found.said.is_empty() {
                h4 { "What was said that differs" }
                div.scroll { table.list.compare { thead { tr { th scope="col" { "Key" } th scope="col" { "As issued" } th scope="col" { "Now" } } } tbody {
                    @for line in &found.said { tr.differs { th scope="row" { (line.what) } td { (texts(line.values.first())) } td { (texts(line.values.get(1))) } } }
                } } }
            }
            @for (title, numbers) in [("What it comes to", &found.results), ("What rules say", &found.rules)] {
                @if !numbers.is_empty() { div.scroll { table.list.compare { (head(title)) tbody { (rows(numbers)) } } } }
            }
            @if let Some((first, rest)) = found.numbers.split_at_checked(near) {
                @if !first.is_empty() { div.scroll { table.list.compare { (head("Number")) tbody { (rows(first)) } } } }
                @if !rest.is_empty() { details { summary { (rest.len()) " more numbers" } div.scroll { table.list.compare { (head("Number")) tbody { (rows(rest)) } } } } }
            }
        }
    }
}

/// What made something differ, in a word.
fn by(by: By) -> &'static str {
    match by {
        By::Inputs => "inputs",
        By::Tool => "the tool",
        By::Both => "both",
    }
}

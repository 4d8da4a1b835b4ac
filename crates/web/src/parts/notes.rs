//! The notes column: findings by severity, tied to the balloons on the drawing, each with reason, source and what to do; then
//! what rules cannot judge, and the open questions with a field for each answer.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, html};
use serde_json::json;
use stillrise_checks::{Grade, Judged};
use stillrise_documents::Edition;
use stillrise_documents::decisions::told;
use stillrise_documents::profile::findings;
use stillrise_documents::summary::{is_proposed, moves, that_matter};
use stillrise_edit::Path;
use stillrise_search::Settled;
use stillrise_units::System;

/// Questions that are shown at once.
const SHOWN: usize = 8;

/// The column.
#[must_use]
pub fn piece(state: &State, view: &View) -> Markup {
    html! {
        section #notes data-patch aria-label="Notes" {
            @if let Some(settled) = &state.outcome.settled { (notes(settled, state.is_locked(), view)) }
        }
    }
}

fn notes(settled: &Settled, locked: bool, view: &View) -> Markup {
    let system = settled.job.enquiry.system();
    let finding = |judged: &Judged, mark: &str| leaf(view, finding(judged, mark, system, locked));
    let marks = findings(settled);
    let mark = |judged: &Judged| {
        let group = marks.iter().find(|group| group.part == judged.rule.part);
        group.map_or_else(String::new, |group| group.mark.clone())
    };
    let of = |grade: Grade| {
        settled.verdicts.iter().filter(move |j| j.grade() == grade && !j.is_settled() && !is_proposed(j))
    };
    let decided: Vec<&Judged> = settled
        .verdicts
        .iter()
        .filter(|j| j.is_settled() && !matches!(j.grade(), Grade::Passes | Grade::NotApplicable))
        .collect();
    let proposed: Vec<&Judged> = settled.verdicts.iter().filter(|judged| is_proposed(judged)).collect();
    let (stopped, asked): (Vec<&Judged>, Vec<&Judged>) =
        of(Grade::CannotJudge).partition(|judged| judged.verdict.stopped_ahead());
    let passed = of(Grade::Passes).count();
    html! {
        @for (grade, title) in [(Grade::Fails, "Fails"), (Grade::Warns, "Warns")] {
            @let all: Vec<&Judged> = of(grade).collect();
            @if !all.is_empty() {
                h2 { (title) span.count { (all.len()) } }
                ol.findings { @for judged in all { (finding(judged, &mark(judged))) } }
            }
        }
        // What stays away leaves what the page has in its place.
        @if view.questions_later { section #questions data-kept="" {} } @else { (questions(settled, locked, view)) }
        @if !asked.is_empty() {
            details.group { summary { h2 { "Cannot be judged" span.count { (asked.len()) } } }
                ol.findings { @for judged in &asked { (finding(judged, &mark(judged))) } } }
        }
        @if !stopped.is_empty() {
            p.small { (stopped.len()) " more rules look at what was not found: the chain of results stopped ahead of it." }
        }
        @if !proposed.is_empty() {
            h2 { "To be agreed by the client" span.count { (proposed.len()) } }
            ol.findings { @for judged in &proposed { (finding(judged, &mark(judged))) } }
        }
        @if !decided.is_empty() {
            h2 { "Decided" span.count { (decided.len()) } }
            ol.findings { @for judged in &decided { (finding(judged, &mark(judged))) } }
        }
        @if !settled.job.enquiry.notes.is_empty() {
            details { summary { "How the enquiry was read" }
                ul { @for (place, note) in &settled.job.enquiry.notes { li { b { (place) } ": " (note) } } } }
        }
        p.small { (passed) " rules pass." }
    }
}

/// One finding, closed: its title and what it says; open: why it matters, what to do, where it comes from, a decision.
fn finding(judged: &Judged, mark: &str, system: System, locked: bool) -> Markup {
    let rule = judged.rule;
    let class = match judged.grade() {
        Grade::Fails => "fails",
        Grade::Warns => "warns",
        _ => "asks",
    };
    html! {
        li.finding.(class) id=(format!("rule-{}", rule.id)) data-mark=(mark) {
            details {
                summary {
                    @if !mark.is_empty() && judged.verdict.is_finding() { span.balloon.(class) { (mark) } }
                    b { (rule.title) } ": " (judged.verdict.says())
                }
                dl.about {
                    dt { "Why it matters" } dd { (rule.matters) }
                    dt { "What to do" } dd { (rule.remedy) }
                    dt { "Source" } dd { (rule.source.to(system)) }
                    dt { "Limits" } dd { (rule.limits.to(system)) }
                }
                @if let Some(node) = judged.verdict.at().and_then(|node| node.index()) {
                    p { button.plain type="button" data-trail=(node) { "Where does the number come from?" } }
                }
                @if !judged.is_settled() && !judged.verdict.stopped_ahead() {
                    p { button.plain type="button" data-remedy=(rule.id) { "What would settle it?" } }
                }
                @for ask in judged.verdict.asks() {
                    p { (ask.question) }
                    @if let Some(key) = &ask.key { (answer(key, "", locked)) }
                }
                @if let Some(told) = told(judged, Edition::Us) {
                    p { "Decided: " (told) "." }
                    @if judged.is_by_company() { @if !locked { (decide(rule.id)) } }
                    @else if !locked { p { button.plain type="button" data-act=(json!([{ "do": "undecide", "rule": rule.id }])) { "Take the decision back" } } }
                } @else if !locked { (decide(rule.id)) }
            }
        }
    }
}

/// The form by which somebody accepts a finding or gives it to others, with reason and name.
fn decide(rule: &str) -> Markup {
    html! {
        form.decide data-decide=(rule) {
            p {
                label { "Decision " select #(format!("decision-{rule}")) name="decision" { option value="accepted" { "accepted" } option value="by others" { "by others" } option value="open" { "open" } } }
                label { " because " input #(format!("because-{rule}")) name="because" required maxlength="300" autocomplete="off"; }
                label { " by " input #(format!("who-{rule}")) name="who" required maxlength="80" autocomplete="name"; }
                label { " on " input #(format!("date-{rule}")) name="date" type="date" required data-today; }
                button type="submit" { "Decide" }
            }
        }
    }
}

/// A field that answers a key; nothing where the key is one of the range and not of the enquiry.
fn answer(key: &str, now: &str, locked: bool) -> Markup {
    let Ok(path) = key.parse::<Path>() else { return html! {} };
    let id = format!("answer-{}", slug(key));
    html! {
        @if !locked {
            form.answer data-set=(path.to_string()) {
                label.unseen for=(id) { "Answer for " (key) }
                input #(id) name="value" placeholder=(now) autocomplete="off" data-key=(key);
                button type="submit" { "Set" }
            }
        }
    }
}

/// An id made of a key.
#[must_use]
pub fn slug(key: &str) -> String {
    key.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect()
}

/// The open questions by themselves.
#[must_use]
pub fn questions_piece(state: &State, view: &View) -> Markup {
    html! { @if let Some(settled) = &state.outcome.settled { (questions(settled, state.is_locked(), view)) } }
}

/// What the customer is asked, what moves the result most first.
fn questions(settled: &Settled, locked: bool, view: &View) -> Markup {
    let matter = that_matter(settled);
    let more = matter.len().saturating_sub(SHOWN);
    html! {
        section #questions data-patch {
            @if !matter.is_empty() {
                h2 { "Open questions" span.count { (matter.len()) } }
                ol.questions {
                    @for question in matter.iter().take(SHOWN) {
                        (leaf(view, html! { li {
                            p { (question.text) }
                            p.small { "Taken: " (question.now) ", plausibly " (question.range.0) " to " (question.range.1) ". " (moves(settled, question)) }
                            (answer(&question.key, &question.now, locked))
                        } }))
                    }
                }
                @if more > 0 { p.small { (more) " more move the result, each by less; the inputs beside the sheet hold them." } }
            }
        }
    }
}

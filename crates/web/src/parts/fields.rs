//! Fields for the keys of a block, wherever they are filled in.

use super::notes::slug;
use crate::inputs::{Group, Input};
use maud::{Markup, html};
use serde_json::json;

/// A block with its fields: those first of which something is said or taken, the others behind a click.
#[must_use]
pub fn block(group: &Group, locked: bool) -> Markup {
    let (near, far): (Vec<&Input>, Vec<&Input>) = group.inputs.iter().partition(|input| {
        input.said.is_some() || input.taken.is_some() || input.settings.is_some() || input.key.needed
    });
    html! {
        section.group data-block=(group.head) {
            h3 { (group.head)
                @if group.many && !locked {
                    " " button.plain type="button" data-act=(json!([{ "do": "remove", "place": group.head }])) { "remove" }
                }
            }
            p.small { (group.block.doc) }
            @if !near.is_empty() { (rows(&near, locked)) }
            @if !far.is_empty() {
                details { summary { (far.len()) " more keys" } (rows(&far, locked)) }
            }
        }
    }
}

/// Keys as rows: name, field, and what stands in or contradicts.
#[must_use]
pub fn rows(inputs: &[&Input], locked: bool) -> Markup {
    html! {
        table.inputs {
            tbody {
                @for input in inputs {
                    tr.said[input.said.is_some()].differs[input.is_contradicted()] {
                        th scope="row" { label for=(id(input)) title=(input.help()) { (input.name) } }
                        td { (field(input, locked)) @if let Some(value) = value(input) { (copy(&value)) } (beside(input, locked)) }
                    }
                }
            }
        }
    }
}

/// What stands of a key: as it was said, else what was taken.
fn value(input: &Input) -> Option<String> {
    match &input.said {
        Some(said) => said.claims.first().filter(|_| said.claims.len() == 1).map(|claim| claim.value.clone()),
        None => input.settings.clone().or(input.taken.as_ref().map(|taken| taken.value.clone())),
    }
}

/// The button that copies a value with its unit.
#[must_use]
pub fn copy(value: &str) -> Markup {
    html! { button.copy type="button" data-copied=(value) aria-label=(format!("Copy {value}")) title="Copy with its unit" { "copy" } }
}

fn id(input: &Input) -> String {
    format!("key-{}", slug(&input.path))
}

/// The field of one key.
fn field(input: &Input, locked: bool) -> Markup {
    let (typed, words) = (input.typed(), input.words());
    let stands = input.settings.clone().or(input.taken.as_ref().map(|taken| taken.value.clone()));
    let hint = stands.clone().unwrap_or_else(|| input.key.like.trim_matches('"').to_owned());
    let several = input.said.as_ref().is_some_and(|said| said.claims.len() > 1);
    html! {
        @if several {
            // Claims that differ are chosen among below; typing here would drop all of them.
        } @else if !words.is_empty() && words.len() <= 12 && (typed.is_empty() || words.contains(&typed)) {
            select #(id(input)) data-set=(input.path) disabled[locked] {
                option value="" selected[typed.is_empty()] { @if stands.is_some() { (hint) " (taken)" } @else { "not said" } }
                @for word in &words { option value=(word) selected[*word == typed] { (word) } }
            }
        } @else if !words.is_empty() {
            @let list = format!("list-{}", slug(&input.path));
            input #(id(input)) data-set=(input.path) value=(typed) placeholder=(hint) list=(list) autocomplete="off" disabled[locked];
            datalist #(list) { @for word in &words { option value=(word) {} } }
        } @else {
            input #(id(input)) data-set=(input.path) value=(typed) placeholder=(hint) autocomplete="off" disabled[locked];
        }
    }
}

/// What stands in for an answer, who said what, or which claims differ.
fn beside(input: &Input, locked: bool) -> Markup {
    html! {
        @if let Some(value) = &input.settings {
            span.taken { @if input.said.is_some() { "the company's settings say " (value) } @else { "from the company's settings: " (value) } }
        }
        @match &input.said {
            Some(said) if said.claims.len() > 1 => {
                ul.claims #(id(input)) {
                    @if input.is_contradicted() { li { span.word.poor { "claims differ; the safe one is taken" } } }
                    @for (nth, claim) in said.claims.iter().enumerate() {
                        li {
                            b { (claim.value) } @if let Some(from) = &claim.from { ", " (from) }
                            @if claim.chosen { " " span.word.good { "chosen" } @if let Some(because) = &claim.because { ", " (because) } }
                            @else if !locked {
                                " " button.plain type="button" data-act=(json!([{ "do": "choose", "path": input.path, "nth": nth, "because": "chosen on the sheet" }])) { "choose" }
                            }
                            @if !locked { " " button.plain type="button" data-act=(json!([{ "do": "withdraw", "path": input.path, "nth": nth }])) { "drop" } }
                        }
                    }
                }
            }
            Some(said) => @if let Some(from) = said.claims.first().and_then(|claim| claim.from.as_ref()) { span.taken { (from) } },
            None => @if let Some(taken) = &input.taken {
                span.taken {
                    "taken: " (taken.value)
                    @if taken.range.0 != taken.range.1 { ", plausibly " (taken.range.0) " to " (taken.range.1) }
                    " " button.plain type="button" data-trail=(taken.node) title=(taken.source) { "why" }
                }
            },
        }
    }
}

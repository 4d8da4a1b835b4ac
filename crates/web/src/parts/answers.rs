//! Answers to our questions in the customer's text: each with its question, its words, and a click that makes it a claim.

use crate::sheet::State;
use maud::{Markup, html};
use serde_json::json;
use stillrise_documents::reply::posed;
use stillrise_edit::Said;
use stillrise_mail::Mail;
use stillrise_mail::answers::{Answer, Asked, answers, unnamed};
use stillrise_units::parse::Reading;

/// Letters of the words that a claim keeps as its source.
const LONGEST: usize = 300;

/// The list; nothing where the text answers none of the questions.
pub fn piece(state: &State, (text, mail): (&str, &Mail), reading: &Reading, claims: &[Said]) -> Markup {
    let Some(settled) = state.outcome.settled.as_ref().filter(|_| answers_us(text)) else { return html! {} };
    let asked: Vec<Asked> =
        posed(settled).into_iter().map(|q| Asked { number: q.number, text: q.text, keys: q.keys }).collect();
    let found = answers(text, mail, &asked, reading);
    if found.is_empty() {
        return html! {};
    }
    html! {
        section.answers aria-label="Answers to our questions" {
            h3 { "Answers to our questions" }
            ol { @for answer in &found { @if let Some(question) = asked.get(answer.question) {
                li value=(question.number) {
                    p { (question.text) }
                    blockquote { (answer.said) }
                    @let keys = alike(answer, &question.keys);
                    @if keys.is_empty() || answer.value.is_none() {
                        p.small { "Its words give no value that a key takes; the inputs beside the sheet do." }
                    } @else {
                        @for key in keys { (taken(answer, key, claims, state.is_locked())) }
                    }
                }
            } } }
        }
    }
}

/// Whether a text can hold answers to us: it quotes, it numbers, or it stands under one that came before. A first mail does none of it.
fn answers_us(text: &str) -> bool {
    let numbers = |line: &str| {
        let digits = line.chars().take_while(char::is_ascii_digit).count();
        digits > 0 && line[digits..].starts_with(['.', ')', ':'])
    };
    text.contains("\n----\n") || text.lines().map(str::trim_start).any(|line| line.starts_with('>') || numbers(line))
}

/// The keys that a value may answer: what several waters were asked alike is answered for each by a click of its own.
fn alike<'a>(answer: &Answer, keys: &'a [String]) -> Vec<&'a String> {
    let path = answer.key.as_deref().map(unnamed);
    keys.iter().filter(|key| path.as_ref() == Some(&unnamed(key))).collect()
}

fn taken(answer: &Answer, key: &str, claims: &[Said], locked: bool) -> Markup {
    let from: String = answer.said.chars().take(LONGEST).collect();
    let value = answer.value.as_deref().unwrap_or_default();
    let is_used = claims.iter().any(|said| {
        said.path.to_string() == key && said.claims.iter().any(|claim| claim.from.as_deref() == Some(from.as_str()))
    });
    let act = json!([{ "do": "claim", "path": key, "value": value, "from": from }]);
    html! {
        @if is_used { p.small { code { (key) } " has taken it." } }
        @else if locked { p { code { (key) " = " (value) } } }
        @else { p { button type="button" data-act=(act) { code { (key) " = " (value) } } } }
    }
}

//! The line above the sheet: gravity duty or not, unit, each limit's word clean and at the end, what governs.

use crate::answer::said;
use crate::sheet::State;
use maud::{Markup, html};
use stillrise_design::performance::limit::Word;
use stillrise_documents::glance::{Duty, Glance, LimitAtAGlance, glance};

/// The line.
#[must_use]
pub fn piece(state: &State) -> Markup {
    html! {
        section #glance data-patch aria-label="At a glance" {
            @match &state.outcome.settled {
                Some(settled) => (line(&glance(settled))),
                None => (unread(state)),
            }
        }
    }
}

/// What stands in for the line while the text is refused.
fn unread(state: &State) -> Markup {
    html! {
        p { span.word.open { "not complete" } " The enquiry as it stands cannot be worked:" }
        ul.faults { @for fault in &state.outcome.faults { li { (said(fault)) } } }
    }
}

fn line(glance: &Glance) -> Markup {
    html! {
        dl {
            div { dt { "Duty" } dd { (duty(glance.duty)) } }
            div {
                dt { "Unit" }
                dd { @match &glance.unit { Some(unit) => b { (unit) }, None => span.word.bad { "none fits" } } }
            }
            @if let Some(flow) = &glance.flow { div { dt { "Largest flow" } dd { (told(flow, glance.flow_at)) } } }
            @for limit in &glance.limits { div { dt { (limit.title) } dd { (words(limit)) } } }
            @if let Some((clean, end)) = &glance.leaves {
                div { dt { "Oil that leaves, mg/L" } dd { (told(clean, glance.leaves_at.0)) " clean, " (told(end, glance.leaves_at.1)) " at the end" } }
            }
            @for (case, what) in governing(glance) { div { dt { "Governs " (what.join(", ")) } dd { (case) } } }
        }
        @if !glance.why.is_empty() { ul.why { @for why in &glance.why { li { (why) } } } }
    }
}

/// A number that tells where it comes from.
fn told(shown: &str, line: Option<usize>) -> Markup {
    html! { @match line {
        Some(line) => button.plain.number type="button" data-trail=(line) { (shown) },
        None => (shown),
    } }
}

/// The cases that govern, each with what it governs.
fn governing(glance: &Glance) -> Vec<(&str, Vec<&'static str>)> {
    let mut all: Vec<(&str, Vec<&'static str>)> = Vec::new();
    for (what, case) in &glance.governs {
        match all.iter_mut().find(|(known, _)| known == case) {
            Some((_, whats)) => whats.push(what),
            None => all.push((case, vec![what])),
        }
    }
    all
}

fn duty(duty: Duty) -> Markup {
    let class = match duty {
        Duty::Gravity => "good",
        Duty::AsFarAsSaid => "fair",
        Duty::NotAsItStands => "bad",
        Duty::NotKnown => "open",
    };
    html! { span.word.(class) { (duty.text()) } }
}

/// The words on a limit: clean, where that is another, and at the end of the interval.
fn words(limit: &LimitAtAGlance) -> Markup {
    html! {
        @match (limit.clean, limit.word) {
            (Some(clean), Some(end)) if clean != end => { (word(clean)) " clean, " (word(end)) " at the end" }
            (Some(_), Some(both)) => { (word(both)) " clean and at the end" }
            (None, Some(end)) => (word(end)),
            (_, None) => span.word.open { "cannot be judged" },
        }
        @if !limit.statistic.is_empty() { span.small { ", " (limit.statistic) } }
    }
}

/// One of the four words, with the colour of its meaning.
#[must_use]
pub fn word(word: Word) -> Markup {
    let class = match word {
        Word::Kept => "good",
        Word::Likely => "fair",
        Word::NotShown => "poor",
        Word::NotByGravity => "bad",
    };
    html! { span.word.(class) { (word.text()) } }
}

/// The same for a list: the unit, and the words on the limits.
#[must_use]
pub fn words_in_short(glance: &Glance) -> Markup {
    html! {
        @if !matches!(glance.duty, Duty::Gravity | Duty::AsFarAsSaid) { (duty(glance.duty)) " " }
        @match &glance.unit { Some(unit) => b { (unit) }, None => span.word.bad { "no unit fits" } }
        @for limit in &glance.limits {
            " " span.pair { (limit.title) ": " @match limit.word { Some(at) => (word(at)), None => span.word.open { "cannot be judged" } } }
        }
        @if glance.fail > 0 { " " span.pair { (glance.fail) @if glance.fail == 1 { " rule fails" } @else { " rules fail" } } }
    }
}

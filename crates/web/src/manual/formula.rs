//! A formula: its equation, symbols, sources and check values, worked before the reader's eyes.

use super::{Shelf, Ways, guide};
use maud::{Markup, PreEscaped, html};
use stillrise_handbook::equation::{Style, symbol_math};
use stillrise_handbook::evidence::Outcome;
use stillrise_handbook::manual::{Formula, Variable, formula, named, span, work};
use stillrise_handbook::page::Page;
use stillrise_units::System;
use stillrise_units::print::digits;

/// Check values that are shown at once, the strongest evidence first.
const CHECKS: usize = 12;

/// What the page says; `with` are arguments as typed, `d=60 um`, parted by semicolons.
pub(super) fn body(page: &'static Page, ways: Ways, with: &str) -> Markup {
    let f = &formula(page);
    html! {
        @if let Some(area) = f.area { p.small { (area.title) } }
        h1 { (page.title) }
        @for paragraph in &f.says { p { (prose(paragraph, ways)) } }
        div.equation tabindex="0" role="group" aria-label="Equation" { (PreEscaped(&f.math)) }
        h2 { "Symbols" }
        div.scroll { table.list { thead { tr { th scope="col" { "Symbol" } th scope="col" { "Name" } th scope="col" { "Meaning" } th scope="col" { "Takes" } th scope="col" { "Trusted" } th scope="col" { "Answers" } } }
            tbody { @for v in f.arguments.iter().chain([&f.result]) { (symbol(v)) } } } }
        @if !f.constants.is_empty() { p { "Constants: " @for (name, value) in &f.constants { (PreEscaped(symbol_math(name))) " = " (digits(*value, 6)) "; " } } }
        @for helper in f.functions { p { code { (helper.name) } ": " (helper.meaning) } }
        (worked(f, ways, with))
        h2 { "Sources" }
        ul { @for source in page.sources { li { (source) } } }
        (checks(&f.checks, ways))
        @if !f.names.is_empty() || !f.named_by.is_empty() {
            h2 { "Beside it" }
            ul { @for page in f.names.iter().chain(&f.named_by) { li { a href=(ways.to(Shelf::Formula, page.id)) { (page.title) } } } }
        }
        (guide::to_correct(page.file, "correct-a-formula", ways))
    }
}

/// Text in which ids of pages stand between backticks.
pub(super) fn prose(text: &str, ways: Ways) -> Markup {
    let pieces = text.split('`').enumerate();
    html! { @for (k, piece) in pieces {
        @if k % 2 == 0 { (piece) } @else if named(piece).is_ok() { a href=(ways.to(Shelf::Formula, piece)) { (piece) } } @else { code { (piece) } }
    } }
}

fn symbol(v: &Variable) -> Markup {
    let both = |ends: Option<(f64, f64)>| -> String {
        match (ends, v.units) {
            (Some(ends), Some(units)) => span(ends, units, System::Si),
            _ => String::new(),
        }
    };
    html! {
        tr {
            td { @for part in v.math.split('|') { (PreEscaped(symbol_math(part))) " " } }
            th scope="row" { code { (v.name) } }
            td { (v.meaning) }
            td { (v.takes) @for (word, meaning) in v.words { " " span.pair { code { (word) } ": " (meaning) } } }
            td.number { (both(v.range)) } td.number { (both(v.domain)) }
        }
    }
}

/// The formula worked: with what the reader gives or the way to give it, in a folder with the arguments of a check value.
fn worked(f: &Formula, ways: Ways, with: &str) -> Markup {
    let example: Vec<String> = f.example.iter().map(|(name, value)| format!("{name}={value}")).collect();
    let joined = example.join("; ");
    let typed = if with.trim().is_empty() { joined.as_str() } else { with };
    let given: Vec<&str> = typed.split(';').map(str::trim).filter(|part| !part.is_empty()).collect();
    html! {
        @if ways.is_served() {
            h2 { "Work it" }
            form.finder method="get" { label.unseen for="with" { "Arguments" } input #with name="with" value=(typed) autocomplete="off"; button type="submit" { "Work it" } }
        } @else if !example.is_empty() {
            h2 { "Worked" }
            p.small { "With " @for (k, one) in example.iter().enumerate() { @if k > 0 { ", " } code { (one) } } "; with other numbers on the sheet, or on the terminal by " code { "stillrise work " (f.page.id) } "." }
        }
        @if !given.is_empty() {
            @match work(f.page, &given) {
                Ok(done) => {
                    @for (line, unit) in done.lines(Style::Plain) {
                        p.number { (line.symbol) " = " (line.equation) @if !line.numbers.is_empty() { " = " (line.numbers) } " = " (digits(line.value, 6)) " " (unit) }
                    }
                    p { b { (done.result_shown()) } }
                    @for note in done.notes() { p.small { "Note: " (note) } }
                }
                Err(faults) => ul.faults { @for fault in &faults { li { (crate::answer::said(fault)) } } },
            }
        }
    }
}

fn checks(all: &[Outcome], ways: Ways) -> Markup {
    let kept = all.iter().filter(|check| check.holds).count();
    let (first, rest) = all.split_at(all.len().min(CHECKS));
    let when = if ways.is_served() { "run now" } else { "run when this was written" };
    html! {
        h2 { "Check values, " (when) ": " (kept) " of " (all.len()) " hold" }
        (checked(first))
        @if !rest.is_empty() { details { summary { (rest.len()) " more" } (checked(rest)) } }
    }
}

fn checked(some: &[Outcome]) -> Markup {
    html! {
        div.scroll { table.list { thead { tr { th scope="col" { "Given" } th scope="col" { "Expected" } th scope="col" { "Found" } th scope="col" { "Evidence" } } }
            tbody { @for check in some { tr {
                td.number { (check.given) } td.number { (check.expected) } td.number { (check.obtained) @if !check.holds { " " span.word.bad { "differs" } } }
                td { (check.evidence) }
            } } } } }
    }
}

//! The manual: formulas with their equations, sources and check values run before the reader's eyes, published data, rules,
//! cautions; searchable.

use super::{Page, cautions, page, refused};
use crate::answer::Refusal;
use crate::desk::Desk;
use axum::Router;
use axum::extract::{Path, Query};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use std::sync::Arc;
use stillrise_checks::manual::search;
use stillrise_checks::{RULES, Rule};
use stillrise_handbook::equation::symbol_math;
use stillrise_handbook::evidence::Outcome;
use stillrise_handbook::manual::search::{Entry, Kind};
use stillrise_handbook::manual::words::{WORDS, symbols};
use stillrise_handbook::manual::{AREAS, Formula, Table, Variable, formula, named, span, tables, work};
use stillrise_units::System;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/manual", get(contents))
        .route("/manual/formula/{id}", get(one_formula))
        .route("/manual/data/{id}", get(one_table))
        .route("/manual/rule/{id}", get(one_rule))
        .route("/manual/words", get(glossary))
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Search {
    q: String,
}

/// A page of the manual.
pub(super) fn of_manual(title: &str, inner: &Markup) -> Markup {
    let bar = html! { nav aria-label="Views" { a href="/" { "Enquiries" } a href="/manual" aria-current="page" { "Manual" } } };
    let body = html! { main #main.page.manual { (finder("")) (inner) } (cautions()) };
    page(&Page { title, sheet: None, class: "page", bar, body })
}

/// The field by which everything is found.
fn finder(now: &str) -> Markup {
    html! {
        form.finder action="/manual" method="get" role="search" {
            label.unseen for="q" { "Find in the manual" }
            input #q type="search" name="q" value=(now) placeholder="rise of a droplet, diesel, short circuit" autocomplete="off";
            button type="submit" { "Find" }
        }
    }
}

async fn contents(Query(Search { q }): Query<Search>) -> Markup {
    if !q.trim().is_empty() {
        return found(&q);
    }
    let inner = html! {
        h1 { "Manual" }
        p { "Every formula that the calculation uses, with its source and its check values; the published data behind it; every rule that looks at a job. The same pages drive the calculation: what is printed here is what runs." }
        h2 { "Formulas" }
        div.areas { @for area in AREAS {
            section { h3 { (area.title) } p.small { (area.about) }
                ul { @for page in area.pages() { li { a href=(format!("/manual/formula/{}", page.id)) { (page.title) } } } } }
        } }
        h2 { "Published data" }
        ul { @for table in tables() { li { a href=(format!("/manual/data/{}", table.id)) { (table.title) } " " span.small { (table.about) } } } }
        h2 { "Rules" }
        ul { @for rule in RULES { li { a href=(format!("/manual/rule/{}", rule.id)) { (rule.title) } } } }
        h2 { "Words" }
        p { a href="/manual/words" { "What the words and symbols of the documents mean" } }
        h2 { "For programs" }
        p { a href="/manual/programs" { "All that the sheet does, as an interface for programs" } }
        h2 { "Cautions" }
        p { (stillrise_documents::summary::CAUTION) }
        p { "Fill a separator with clean water before oil reaches it." }
    };
    of_manual("Manual", &inner)
}

/// The address of what was found.
fn address(entry: &Entry) -> String {
    match entry.kind {
        Kind::Formula => format!("/manual/formula/{}", entry.id),
        Kind::Rule => format!("/manual/rule/{}", entry.id),
        Kind::Word => format!("/manual/words#{}", super::sheet::encoded(&entry.id)),
        Kind::Data => {
            let (table, row) = entry.id.split_once('/').unwrap_or((&entry.id, ""));
            format!("/manual/data/{}#{}", super::sheet::encoded(table), super::sheet::encoded(row))
        }
    }
}

/// Check values that are shown at once, the strongest evidence first.
const CHECKS: usize = 12;
/// Most that a search shows.
const SHOWN: usize = 40;

fn found(query: &str) -> Markup {
    let hits = search(query);
    let bar = html! { nav aria-label="Views" { a href="/" { "Enquiries" } a href="/manual" aria-current="page" { "Manual" } } };
    let body = html! {
        main #main.page.manual {
            (finder(query))
            h1 { (hits.len()) " found for \u{201c}" (query) "\u{201d}" }
            @if hits.is_empty() { p { "Nothing of the manual holds these words. Try another word of the trade, or a part of one." } }
            ol.hits { @for hit in hits.iter().take(SHOWN) {
                li { span.small { (hit.entry.kind.word()) } " " a href=(address(hit.entry)) { (hit.entry.title) } @let excerpt = hit.excerpt(query); @if !excerpt.is_empty() { p.small { (excerpt) } } }
            } }
            @if hits.len() > SHOWN { p.small { (hits.len() - SHOWN) " more; another word narrows it." } }
        }
        (cautions())
    };
    page(&Page { title: "Manual", sheet: None, class: "page", bar, body })
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Given {
    /// Arguments as typed, `d=60 um`, parted by semicolons.
    with: String,
}

async fn one_formula(Path(id): Path<String>, Query(Given { with }): Query<Given>, headers: HeaderMap) -> Response {
    match named(&id) {
        Ok(page) => of_manual(page.title, &shown(&formula(page), &with)).into_response(),
        Err(_) => refused(&Refusal::missing(format!("There is no formula \"{id}\".")), &headers),
    }
}

/// Text in which ids of pages stand between backticks.
fn prose(text: &str) -> Markup {
    let pieces = text.split('`').enumerate();
    html! { @for (k, piece) in pieces {
        @if k % 2 == 0 { (piece) } @else if named(piece).is_ok() { a href=(format!("/manual/formula/{piece}")) { (piece) } } @else { code { (piece) } }
    } }
}

fn shown(f: &Formula, with: &str) -> Markup {
    html! {
        @if let Some(area) = f.area { p.small { (area.title) } }
        h1 { (f.page.title) }
        @for paragraph in &f.says { p { (prose(paragraph)) } }
        div.equation { (PreEscaped(&f.math)) }
        h2 { "Symbols" }
        div.scroll { table.list { thead { tr { th { "Symbol" } th { "Name" } th { "Meaning" } th { "Takes" } th { "Trusted" } th { "Answers" } } }
            tbody { @for v in f.arguments.iter().chain([&f.result]) { (symbol(v)) } } } }
        @if !f.constants.is_empty() { p { "Constants: " @for (name, value) in &f.constants { (PreEscaped(symbol_math(name))) " = " (stillrise_units::print::digits(*value, 6)) "; " } } }
        @for helper in f.functions { p { code { (helper.name) } ": " (helper.meaning) } }
        (worked(f, with))
        h2 { "Sources" }
        ul { @for source in f.page.sources { li { (source) } } }
        (checks(&f.checks))
        @if !f.names.is_empty() || !f.named_by.is_empty() {
            h2 { "Beside it" }
            ul { @for page in f.names.iter().chain(&f.named_by) { li { a href=(format!("/manual/formula/{}", page.id)) { (page.title) } } } }
        }
        p.small { "To correct it: " code { (f.page.file) } }
    }
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

/// The formula worked with what the reader gives, or the way to give it.
fn worked(f: &Formula, with: &str) -> Markup {
    let example: Vec<String> = f.example.iter().map(|(name, value)| format!("{name}={value}")).collect();
    let example = example.join("; ");
    let typed = if with.trim().is_empty() { example.as_str() } else { with };
    let given: Vec<&str> = typed.split(';').map(str::trim).filter(|part| !part.is_empty()).collect();
    html! {
        h2 { "Work it" }
        form.finder method="get" { label.unseen for="with" { "Arguments" } input #with name="with" value=(typed) autocomplete="off"; button type="submit" { "Work it" } }
        @if !given.is_empty() {
            @match work(f.page, &given) {
                Ok(done) => {
                    @for (line, unit) in done.lines(stillrise_handbook::equation::Style::Plain) {
                        p.number { (line.symbol) " = " (line.equation) @if !line.numbers.is_empty() { " = " (line.numbers) } " = " (stillrise_units::print::digits(line.value, 6)) " " (unit) }
                    }
                    p { b { (done.result_shown()) } }
                    @for note in done.notes() { p.small { "Note: " (note) } }
                }
                Err(faults) => ul.faults { @for fault in &faults { li { (crate::answer::said(fault)) } } },
            }
        }
    }
}

fn checks(all: &[Outcome]) -> Markup {
    let kept = all.iter().filter(|check| check.holds).count();
    let (first, rest) = all.split_at(all.len().min(CHECKS));
    html! {
        h2 { "Check values, run now: " (kept) " of " (all.len()) " hold" }
        (checked(first))
        @if !rest.is_empty() { details { summary { (rest.len()) " more" } (checked(rest)) } }
    }
}

fn checked(some: &[Outcome]) -> Markup {
    html! {
        div.scroll { table.list { thead { tr { th { "Given" } th { "Expected" } th { "Found" } th { "Evidence" } } }
            tbody { @for check in some { tr {
                td.number { (check.given) } td.number { (check.expected) } td.number { (check.obtained) @if !check.holds { " " span.word.bad { "differs" } } }
                td { (check.evidence) }
            } } } } }
    }
}

async fn one_table(Path(id): Path<String>, headers: HeaderMap) -> Response {
    match tables().into_iter().find(|table| table.id == id) {
        Some(table) => of_manual(table.title, &data(&table)).into_response(),
        None => refused(&Refusal::missing(format!("There is no table \"{id}\".")), &headers),
    }
}

fn data(table: &Table) -> Markup {
    html! {
        h1 { (table.title) }
        p { (table.about) }
        div.scroll { table.list { thead { tr { th { "" } @for column in &table.columns { th { (column.head(System::Si)) @if column.units.is_some_and(|(us, si)| us != si) { " (US: " (column.head(System::Us).rsplit(", ").next().unwrap_or_default()) ")" } } } } }
            tbody { @for row in &table.rows { tr #(super::sheet::encoded(&row.word)) {
                th scope="row" { (row.title) @if !row.also.is_empty() { " " span.small { (row.also.join(", ")) } } }
                @for (cell, column) in row.cells.iter().zip(&table.columns) {
                    td title=(cell.note) { (cell.shown(column, System::Si)) @if column.units.is_some_and(|(us, si)| us != si) && !cell.shown(column, System::Us).is_empty() { " " span.small { "(" (cell.shown(column, System::Us)) ")" } } }
                }
            } } } } }
        h2 { "Sources" }
        ul { @for source in table.sources() { li { (source) } } }
    }
}

/// Words and symbols, each once.
async fn glossary() -> Markup {
    of_manual(
        "Words",
        &html! {
            h1 { "Words and symbols" }
            p { "The words that the documents use, each in a sentence; then the symbols of the formulas, as their pages have them." }
            dl.about { @for w in WORDS {
                dt #(super::sheet::encoded(&w.id())) { (w.word) }
                dd { (w.says) @if let Some(source) = w.source { " " span.small { (source) } } }
            } }
            h2 { "Symbols" }
            div.scroll { table.list { thead { tr { th { "Symbol" } th { "What it is" } th { "Formulas" } } }
                tbody { @for s in symbols() { tr {
                    td { (PreEscaped(symbol_math(s.math))) }
                    td { (s.meaning) }
                    td { @for (k, page) in s.pages.iter().enumerate() { @if k > 0 { ", " } a href=(format!("/manual/formula/{}", page.id)) { (page.title) } } }
                } } } } }
        },
    )
}

async fn one_rule(Path(id): Path<String>, headers: HeaderMap) -> Response {
    match RULES.iter().find(|rule| rule.id == id) {
        Some(rule) => of_manual(rule.title, &law(rule)).into_response(),
        None => refused(&Refusal::missing(format!("There is no rule \"{id}\".")), &headers),
    }
}

fn law(rule: &Rule) -> Markup {
    html! {
        h1 { (rule.title) }
        dl.about {
            dt { "What it looks for" } dd { (rule.looks.in_both()) }
            dt { "Why it matters" } dd { (rule.matters) }
            dt { "What to do" } dd { (rule.remedy) }
            dt { "Source" } dd { (rule.source.in_both()) }
            dt { "Limits" } dd { (rule.limits.in_both()) }
        }
        @if rule.bars_pick { p { "A unit that fails it is not picked from a range." } }
        p.small { "To correct it: " code { (rule.file) } }
    }
}

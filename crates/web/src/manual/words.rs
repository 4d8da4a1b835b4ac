//! The glossary: words of the documents, and the symbols of the formulas as their pages have them.

use super::{Shelf, Ways};
use crate::pages::sheet::encoded;
use maud::{Markup, PreEscaped, html};
use stillrise_handbook::equation::symbol_math;
use stillrise_handbook::manual::words::{WORDS, symbols};

/// A page of the glossary.
pub(super) struct Part {
    pub(super) id: &'static str,
    pub(super) title: &'static str,
    pub(super) body: fn(Ways) -> Markup,
}

/// Its pages.
pub(super) const PARTS: [Part; 2] = [
    Part { id: WORD, title: "Words of the documents", body: words },
    Part { id: "symbols", title: "Symbols of the formulas", body: all_symbols },
];

/// The page that holds the words, each under its name.
pub(super) const WORD: &str = "words";

fn words(_: Ways) -> Markup {
    html! {
        h1 { "Words of the documents" }
        p { "The words that the documents use, each in a sentence; with its source where a standard or a publication defines it." }
        dl.about { @for w in WORDS {
            dt #(encoded(&w.id())) { (w.word) }
            dd { (w.says) @if let Some(source) = w.source { " " span.small { (source) } } }
        } }
    }
}

fn all_symbols(ways: Ways) -> Markup {
    html! {
        h1 { "Symbols of the formulas" }
        p { "Each as the pages of the formulas have it." }
        div.scroll { table.list { thead { tr { th scope="col" { "Symbol" } th scope="col" { "What it is" } th scope="col" { "Formulas" } } }
            tbody { @for s in symbols() { tr {
                td { (PreEscaped(symbol_math(s.math))) }
                td { (s.meaning) }
                td { @for (k, page) in s.pages.iter().enumerate() { @if k > 0 { ", " } a href=(ways.to(Shelf::Formula, page.id)) { (page.title) } } }
            } } } } }
    }
}

//! A method that an authority asks for.

use super::{Shelf, Ways, guide};
use maud::{Markup, html};
use stillrise_design::enquiry::blocks::Regulator;
use stillrise_design::regulation::about;

/// Its title.
pub(super) fn title(method: Regulator) -> &'static str {
    about::title(method)
}

/// What the page says.
pub(super) fn body(method: Regulator, ways: Ways) -> Markup {
    html! {
        h1 { (about::title(method)) }
        p { "Worked where an enquiry names it, and held against the unit by a rule; it sizes no unit. It stands for: " (method.meaning()) "." }
        pre tabindex="0" { "[regulation]\nmethods = [\"" (method.word()) "\"]" }
        p { a href=(ways.to(Shelf::Keys, "enquiry-regulation")) { "All keys of this block" } }
        h2 { "What it leaves out" }
        ul { @for sentence in about::leaves_out(method) { li { (sentence) } } }
        h2 { "Sources" }
        @if let Some(standing) = about::standing(method) { p { (standing) } }
        ul { @for source in about::sources(method) { li { (source) } } }
        (guide::how("add-an-authoritys-method", ways))
    }
}

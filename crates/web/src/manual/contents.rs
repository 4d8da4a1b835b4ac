//! The contents of the manual, and the way from every page to its parts.

use super::{Leaf, Shelf, Ways, keys};
use maud::{Markup, html};
use stillrise_handbook::manual::AREAS;

/// The ways to all parts.
#[must_use]
pub fn shelves(ways: Ways) -> Markup {
    html! {
        nav.shelves aria-label="Parts of the manual" {
            @for shelf in Shelf::ALL { a href=(ways.shelf(shelf)) { (shelf.title()) } }
        }
    }
}

/// All pages of the manual.
#[must_use]
pub fn contents(ways: Ways) -> Markup {
    html! {
        h1 { "Manual" }
        p { "Every formula that the calculation uses, with its source and its check values; the published data behind it; every rule that looks at a job; every key of the files. The same pages drive the calculation: what is printed here is what runs." }
        @for shelf in Shelf::ALL {
            section #(shelf.folder()) {
                h2 { (shelf.title()) }
                p.small { (shelf.about()) }
                (pages(shelf, ways))
            }
        }
        @if ways.is_served() {
            h2 { "For programs" }
            p { a href="/manual/programs" { "All that the sheet does, as an interface for programs" } }
        }
        h2 { "Cautions" }
        p { (stillrise_documents::summary::CAUTION) }
        p { "Fill a separator with clean water before oil reaches it." }
    }
}

fn pages(shelf: Shelf, ways: Ways) -> Markup {
    let leaves = shelf.leaves();
    let one = |leaf: &Leaf| html! { li { a href=(ways.to(shelf, &leaf.id)) { (leaf.title) } } };
    match shelf {
        Shelf::Formula => html! {
            div.areas { @for area in AREAS {
                section { h3 { (area.title) } p.small { (area.about) }
                    ul { @for page in area.pages() { li { a href=(ways.to(shelf, page.id)) { (page.title) } } } } }
            } }
        },
        Shelf::Keys => html! {
            div.areas { @for file in &keys::FILES {
                section { h3 { (file.title) } p.small { (file.about) }
                    ul { @for leaf in leaves.iter().filter(|leaf| leaf.id.starts_with(file.id)) { (one(leaf)) } } }
            } }
        },
        _ => html! { ul.columns { @for leaf in &leaves { (one(leaf)) } } },
    }
}

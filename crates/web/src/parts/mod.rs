//! The pieces of a sheet that change: each is one element with an id and `data-patch`, and takes the place of the one of its
//! id that stands on the page.

pub mod answers;
pub mod bar;
pub mod beside;
pub mod fields;
pub mod glance;
pub mod leaf;
pub mod mail;
pub mod notes;
pub mod panel;
pub mod picture;
pub mod remedy;
pub mod starter;
pub mod title;
pub mod trail;
pub mod way;

use crate::server::STACK;
use crate::sheet::State;
use maud::{Markup, html};
use serde::Deserialize;
use std::thread;

/// What of the sheet whoever asks has before his eyes.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
pub struct View {
    /// Width of the drawing, in millimetres of paper at the size at which it is read.
    pub wide: Option<f64>,
    /// What stands beside the sheet: `mail`, `text` or `inputs`.
    pub beside: Option<String>,
    /// What is pointed at: the id of a part.
    pub part: Option<String>,
    /// Whether the charts are to show what a study finds.
    pub study: bool,
    /// Whether plan and cross section are shown under the drawing.
    pub views: bool,
    /// Whether the charts are out of sight: then they are asked for by themselves, once the drawing stands.
    pub charts_later: bool,
    /// Whether the open questions are asked for by themselves too: to rank them, each answer is worked through.
    pub questions_later: bool,
    /// Hashes of the leaves that the page has, with points between them.
    pub has: String,
}

/// All pieces of a sheet as it stands, with what is open beside it.
#[must_use]
pub fn all(state: &State, view: &View) -> Markup {
    // The drawing takes the longest, and all else meanwhile.
    let rest = || Rest {
        notes: notes::piece(state, view),
        way: (!view.charts_later).then(|| way::piece(state, view)),
        beside: view.beside.as_ref().and_then(|which| beside::piece(state, which, view)),
        panel: view.part.as_ref().and_then(|id| panel::piece(state, id, view)),
    };
    let (picture, Rest { notes, way, beside, panel }) = both(|| picture::piece(state, view), rest);
    html! {
        (bar::piece(state))
        (glance::piece(state))
        (picture)
        (notes)
        @if let Some(way) = way { (way) }
        (title::piece(state))
        @if let Some(beside) = beside { (beside) }
        @if let Some(panel) = panel { (panel) }
        @if let Some(note) = &state.note { div #told data-patch role="status" aria-live="polite" { (note) } }
        span hidden data-version=(state.version) {}
    }
}

/// What stands around the drawing.
struct Rest {
    notes: Markup,
    way: Option<Markup>,
    beside: Option<Markup>,
    panel: Option<Markup>,
}

/// What was left for later, once the drawing stands.
#[must_use]
pub fn later(state: &State, view: &View) -> Markup {
    html! {
        (notes::questions_piece(state, view))
        @if view.charts_later { (way::piece(state, view)) }
        span hidden data-later="" data-version=(state.version) {}
    }
}

/// Does two things at a time; one after the other where no thread can be had.
fn both<A, B: Send>(one: impl FnOnce() -> A, other: impl Fn() -> B + Sync) -> (A, B) {
    thread::scope(|scope| {
        let begun = thread::Builder::new().stack_size(STACK).spawn_scoped(scope, &other);
        let one = one();
        let other = begun.ok().and_then(|thread| thread.join().ok()).unwrap_or_else(&other);
        (one, other)
    })
}

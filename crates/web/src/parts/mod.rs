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
    /// Hashes of the leaves that the page has, with points between them.
    pub has: String,
}

/// All pieces of a sheet as it stands, with what is open beside it.
#[must_use]
pub fn all(state: &State, view: &View) -> Markup {
    // The drawing and the charts take the longest, so they are made side by side.
    let charts = || (!view.charts_later).then(|| way::piece(state, view));
    let (picture, way) = both(|| picture::piece(state, view), charts);
    html! {
        (bar::piece(state))
        (glance::piece(state))
        (picture)
        (notes::piece(state, view))
        @if let Some(way) = way { (way) }
        (title::piece(state))
        @if let Some(open) = view.beside.as_ref().and_then(|which| beside::piece(state, which, view)) { (open) }
        @if let Some(open) = view.part.as_ref().and_then(|id| panel::piece(state, id, view)) { (open) }
        @if let Some(note) = &state.note { div #told data-patch role="status" aria-live="polite" { (note) } }
        span hidden data-version=(state.version) {}
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

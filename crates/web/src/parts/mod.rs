//! The pieces of a sheet that change: each is one element with an id and `data-patch`, and takes the place of the one of its
//! id that stands on the page.

pub mod answers;
pub mod bar;
pub mod beside;
pub mod fields;
pub mod glance;
pub mod mail;
pub mod notes;
pub mod panel;
pub mod picture;
pub mod remedy;
pub mod starter;
pub mod title;
pub mod trail;
pub mod way;

use crate::sheet::State;
use maud::{Markup, html};
use serde::Deserialize;

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
}

/// All pieces of a sheet as it stands, with what is open beside it.
#[must_use]
pub fn all(state: &State, view: &View) -> Markup {
    html! {
        (bar::piece(state))
        (glance::piece(state))
        (picture::piece(state, view))
        (notes::piece(state))
        (way::piece(state))
        (title::piece(state))
        @if let Some(open) = view.beside.as_ref().and_then(|which| beside::piece(state, which)) { (open) }
        @if let Some(open) = view.part.as_ref().and_then(|id| panel::piece(state, id, view)) { (open) }
        @if let Some(note) = &state.note { div #told data-patch role="status" aria-live="polite" { (note) } }
        span hidden data-version=(state.version) {}
    }
}

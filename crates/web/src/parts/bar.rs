//! What can be undone and done again, and the state of the revision.

use crate::sheet::State;
use maud::{Markup, html};

/// The two buttons.
#[must_use]
pub fn piece(state: &State) -> Markup {
    html! {
        span #steps data-patch {
            button type="button" data-step="undo" disabled[state.back.is_none()]
                title=(state.back.as_ref().map_or("Nothing to undo".to_owned(), |what| format!("Undo: {what}"))) { "Undo" }
            button type="button" data-step="redo" disabled[state.again.is_none()]
                title=(state.again.as_ref().map_or("Nothing to do again".to_owned(), |what| format!("Do again: {what}"))) { "Redo" }
            @if state.is_locked() { span.word.open { "issued, locked" } }
        }
    }
}

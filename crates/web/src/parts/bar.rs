//! What can be undone and done again, and the state of the revision.

use crate::sheet::State;
use maud::{Markup, html};
use serde_json::json;
use stillrise_units::System;

/// The two buttons.
#[must_use]
pub fn piece(state: &State) -> Markup {
    html! {
        span #steps data-patch {
            button type="button" data-step="undo" disabled[state.back.is_none()]
                title=(state.back.as_ref().map_or("Nothing to undo".to_owned(), |what| format!("Undo: {what}"))) { "Undo" }
            button type="button" data-step="redo" disabled[state.again.is_none()]
                title=(state.again.as_ref().map_or("Nothing to do again".to_owned(), |what| format!("Do again: {what}"))) { "Redo" }
            (units(state))
            @if state.is_locked() { span.word.open { "issued, locked" } }
        }
    }
}

/// The switch between US and SI.
fn units(state: &State) -> Markup {
    let now = state.outcome.settled.as_ref().map(|settled| settled.job.enquiry.system());
    html! {
        @if let Some(now) = now {
            span.switch role="group" aria-label="Units of print" {
                @for (system, word, shown) in [(System::Us, "us", "US"), (System::Si, "si", "SI")] {
                    button type="button" aria-pressed=(if system == now { "true" } else { "false" }) disabled[state.is_locked()]
                        data-act=(json!([{ "do": "set", "path": "enquiry.print", "value": word }])) { (shown) }
                }
            }
        }
    }
}

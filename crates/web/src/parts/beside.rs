//! What stands beside the sheet: the customer's text, all inputs in one table, or the text of the enquiry.

use super::leaf::leaf;
use super::{View, fields, mail};
use crate::answer::said;
use crate::inputs::{Group, groups};
use crate::sheet::State;
use maud::{Markup, html};
use stillrise_design::enquiry::blocks;
use stillrise_edit::mark;

/// One of the three; nothing where there is none of the name.
#[must_use]
pub fn piece(state: &State, which: &str, view: &View) -> Option<Markup> {
    let inner = match which {
        "mail" => mail::piece(state, view),
        "inputs" => inputs(state, view),
        "text" => text(state),
        _ => return None,
    };
    Some(html! {
        aside #beside data-patch data-which=(which) aria-label="Beside the sheet" {
            button.close type="button" data-beside=(which) { "Close" }
            (inner)
        }
    })
}

/// All inputs in one dense table.
fn inputs(state: &State, view: &View) -> Markup {
    let all = groups(state);
    let locked = state.is_locked();
    let (stand, others): (Vec<&Group>, Vec<&Group>) = all.iter().partition(|group| {
        group.stands || group.inputs.iter().any(|input| input.taken.is_some() || input.settings.is_some())
    });
    html! {
        h2 { "Inputs" }
        p.small { "A value is saved as soon as its field is left. Numbers have units; any that the trade uses will do." }
        @for group in &stand { (leaf(view, fields::block(group, locked))) }
        @if !locked { (leaf(view, another())) }
        details { summary { "Blocks of which nobody said anything" } @for group in &others { (leaf(view, fields::block(group, locked))) } }
    }
}

/// Forms that add a block of which there may be several.
fn another() -> Markup {
    html! { section {
        h3 { "Add" }
        @for (block, _) in blocks().filter(|(block, many)| *many && !matches!(block.name, "decision" | "change" | "observed" | "samples")) {
            details { summary { (block.name) } p.small { (block.doc) }
                form data-add=(block.name) {
                    table.inputs { tbody {
                        @for key in block.keys().into_iter().filter(|key| is_first(key.name) || key.needed) {
                            tr { th { label for=(format!("add-{}-{}", block.name, key.name)) { (key.name.replace('_', " ")) } }
                                td { input id=(format!("add-{}-{}", block.name, key.name)) name=(key.name) placeholder=(key.like.trim_matches('"')) autocomplete="off"; } }
                        }
                    } }
                    button type="submit" { "Add " (block.name) }
                }
            }
        }
    } }
}

/// Whether a key is one of those without which a new block says little.
fn is_first(name: &str) -> bool {
    matches!(
        name,
        "name"
            | "area"
            | "kind"
            | "flow"
            | "hoses"
            | "volume"
            | "volume_per_day"
            | "product"
            | "pollutant"
            | "value"
            | "statistic"
            | "authority"
            | "oil"
            | "per_week"
            | "into"
    )
}

/// The text of the enquiry, with what is wrong with it at its place.
fn text(state: &State) -> Markup {
    let faults = &state.outcome.faults;
    html! {
        h2 { "Text of the enquiry" }
        p.small { "The file as it stands on the disk. Comments and layout are yours and stay; what is typed in the fields of the sheet is written here too." }
        @if !faults.is_empty() {
            ul.faults { @for fault in faults { li { (said(fault)) @if let Some(at) = mark(&state.text, &fault.place) { " " span.small { "line " (line(&state.text, at.start)) } } } } }
        }
        form data-text="" {
            input type="hidden" name="over" value=(state.version);
            label.unseen for="enquiry-text" { "Text of the enquiry" }
            textarea #enquiry-text name="text" rows="32" spellcheck="false" wrap="off" readonly[state.is_locked()] { "\n" (state.text) }
            @if !state.is_locked() { p { button.main type="submit" { "Save the text" } } }
        }
    }
}

/// The line of a byte, from 1.
fn line(text: &str, at: usize) -> usize {
    1 + text.bytes().take(at).filter(|byte| *byte == b'\n').count()
}

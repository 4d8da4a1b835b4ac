//! Where a number comes from: its line of the trail, its equation with the numbers in it, and the lines it rests on, down to
//! the customer's sentence or a publication.

use super::fields::copy;
use crate::manual::{Shelf, Ways};
use crate::sheet::State;
use maud::{Markup, PreEscaped, html};
use stillrise_design::provenance::{Entry, Origin};
use stillrise_documents::trail::{equations, mathml, origin};
use stillrise_search::Settled;

/// The panel of one line of the trail.
#[must_use]
pub fn piece(state: &State, index: usize) -> Option<Markup> {
    let settled = state.outcome.settled.as_ref()?;
    let entry = settled.job.ledger.entries.get(index)?;
    let system = settled.job.enquiry.system();
    Some(html! {
        aside #panel data-patch aria-label="Where a number comes from" {
            button.close type="button" data-close="panel" { "Close" }
            h2 tabindex="-1" { (entry.label) " = " (entry.shown(system)) " " (copy(&entry.shown(system))) }
            p.small { "Line " (index + 1) " of the trail, " (entry.section) }
            (comes(settled, entry))
            @for note in &entry.notes { p.small { "Note: " (note) } }
        }
    })
}

fn comes(settled: &Settled, entry: &Entry) -> Markup {
    let ledger = &settled.job.ledger;
    let system = settled.job.enquiry.system();
    let inputs: Vec<(usize, &Entry)> =
        entry.origin.inputs().filter_map(|node| Some((node.index()?, ledger.entry(node)?))).collect();
    html! {
        @match &entry.origin {
            Origin::Derived { page, .. } => {
                p { "By the formula " a href=(Ways::Served.to(Shelf::Formula, page.id)) { (page.title) } ":" }
                @for line in mathml(ledger, entry) { div.equation { (PreEscaped(line)) } }
            }
            Origin::Reckoned { .. } => {
                p { "Reckoned:" }
                @for line in equations(ledger, entry) { p.number { (line) } }
            }
            _ => p { (origin(entry, system)) },
        }
        @if !inputs.is_empty() {
            h3 { "It rests on" }
            ul.rests { @for (index, input) in &inputs {
                li { button.plain type="button" data-trail=(index) { (input.label) " = " (input.shown(system)) } " " span.small { (kind(input)) } }
            } }
        }
    }
}

/// What kind of line it is, in a word or two.
fn kind(entry: &Entry) -> String {
    match &entry.origin {
        Origin::Given { source, .. } => format!("given: {source}"),
        Origin::Assumed(_) => "assumed".to_owned(),
        Origin::Chosen { .. } => "chosen".to_owned(),
        Origin::Derived { page, .. } => format!("by {}", page.id),
        Origin::Reckoned { .. } => "reckoned".to_owned(),
        Origin::Gathered { .. } => "gathered".to_owned(),
    }
}

//! The water's way: what of the free oil is left behind each internal, by droplet size, and how that moves with flow, temperature and droplets.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, PreEscaped, html};
use stillrise_documents::charts::{Drawn, charts, plain};
use stillrise_search::risk::SAMPLES;

/// The charts of what was found.
#[must_use]
pub fn piece(state: &State, view: &View) -> Markup {
    let settled = state.outcome.as_far();
    let drawn = settled.map(charts).unwrap_or_default();
    // What does not move has a sentence in place of a curve.
    let stays = settled.map(plain).unwrap_or_default();
    let open = settled.is_some_and(|settled| settled.risk.is_none()) && !drawn.is_empty();
    // The one that follows the water comes first.
    let (first, rest): (Vec<Drawn>, Vec<Drawn>) = drawn.into_iter().partition(|chart| chart.name == "stages");
    html! {
        section #way data-patch aria-label="The water's way" {
            @for chart in first.iter().chain(&rest) { (leaf(view, figure(chart))) }
            @for (_, says) in &stays { p.small { (says) } }
            @if open { p { button type="button" data-study="" { "Show what it is most sensitive to" } " " span.small { "works the job " (SAMPLES) " times, for a second or two" } } }
        }
    }
}

fn figure(chart: &Drawn) -> Markup {
    html! {
        figure.chart {
            figcaption { (chart.title) }
            (PreEscaped(&chart.svg))
            @if !chart.says.is_empty() { p.small { (chart.says) } }
        }
    }
}

//! The water's way: what of the free oil is left behind each internal, by droplet size, and how that moves with flow, temperature and droplets.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, PreEscaped, html};
use stillrise_documents::charts::{Drawn, charts};

/// The charts of what was found.
#[must_use]
pub fn piece(state: &State, view: &View) -> Markup {
    let drawn = state.outcome.settled.as_ref().map(charts).unwrap_or_default();
    // The one that follows the water comes first.
    let (first, rest): (Vec<Drawn>, Vec<Drawn>) = drawn.into_iter().partition(|chart| chart.name == "stages");
    html! {
        section #way data-patch aria-label="The water's way" {
            @for chart in first.iter().chain(&rest) { (leaf(view, figure(chart))) }
        }
    }
}

fn figure(chart: &Drawn) -> Markup {
    html! {
        figure.chart {
            figcaption { (chart.title) }
            (PreEscaped(&chart.svg))
        }
    }
}

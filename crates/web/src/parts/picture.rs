//! The drawing: the way of the water across the site, with the unit to scale.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, PreEscaped, html};
use stillrise_documents::profile::{Paper, Profile, profile};
use stillrise_documents::render::scene::Scene;
use stillrise_documents::render::svg::{Options, svg_by_groups};
use stillrise_documents::views::bare;

/// Narrowest and widest paper that is drawn on, mm.
const WIDTHS: (f64, f64) = (190.0, 460.0);
/// The usual one.
const USUAL: f64 = 300.0;
/// Height over width of the paper.
const SHAPE: f64 = 0.42;

/// The paper for a view: widths in steps, so that two windows of much the same size get the same drawing.
#[must_use]
pub fn paper(view: &View) -> Paper {
    let asked = view.wide.filter(|wide| wide.is_finite()).unwrap_or(USUAL);
    let width = (asked.clamp(WIDTHS.0, WIDTHS.1) / 10.0).round() * 10.0;
    Paper { width, height: (width * SHAPE).clamp(100.0, 180.0) }
}

/// The drawing, and its stations as buttons for whoever does not point; while the job cannot be worked, what it lacks.
#[must_use]
pub fn piece(state: &State, view: &View) -> Markup {
    html! {
        section #picture data-patch aria-label="The way of the water" {
            @if let Some(settled) = &state.outcome.settled {
                @let Profile { scene, stations, .. } = profile(settled, paper(view));
                div.drawing { (group(&scene, view, "profile")) }
                nav.stations aria-label="Stations of the water" {
                    @for station in &stations {
                        button type="button" data-point=(station.id) title=(station.says.join("; ")) { (station.title) }
                    }
                    @if settled.job.design.train.is_some() {
                        button.plain type="button" data-views="" aria-expanded=(view.views.to_string()) { "Plan and cross section" }
                    }
                }
                @if let Some(views) = view.views.then(|| bare(settled, paper(view))).flatten() { div.drawing { (group(&views, view, "views")) } }
            } @else {
                (super::starter::piece(state))
            }
        }
    }
}

/// A drawing, its groups as leaves.
fn group(scene: &Scene, view: &View, id: &str) -> Markup {
    let options =
        Options { id: id.to_owned(), background: false, sized: false, pointed: id == "profile", ..Options::default() };
    PreEscaped(svg_by_groups(scene, &options, &|group| leaf(view, PreEscaped(group)).into_string()))
}

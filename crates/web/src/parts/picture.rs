//! The drawing: the way of the water across the site, with the unit to scale.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, PreEscaped, html};
use stillrise_documents::profile::{Paper, Profile, profile};
use stillrise_documents::render::scene::Scene;
use stillrise_documents::render::svg::{Options, svg_by_groups};

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
                @let Profile { scene, stations } = profile(settled, paper(view));
                div.drawing { (drawn(&scene, view)) }
                nav.stations aria-label="Stations of the water" {
                    @for station in &stations {
                        button type="button" data-point=(station.id) title=(station.says.join("; ")) { (station.title) }
                    }
                }
            } @else {
                (super::starter::piece(state))
            }
        }
    }
}

/// The drawing, its groups as leaves.
fn drawn(scene: &Scene, view: &View) -> Markup {
    let options = Options { id: "profile".to_owned(), background: false, sized: false, pointed: true };
    PreEscaped(svg_by_groups(scene, &options, &|group| leaf(view, PreEscaped(group)).into_string()))
}

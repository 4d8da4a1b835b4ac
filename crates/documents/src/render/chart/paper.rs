//! The paper of a chart: its size, its title, and what stands there when there is nothing to draw.

use super::label::{LINE, fold, letters};
use super::{Chart, TITLE};
use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::Anchor;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// The size of a chart on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paper {
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// Whether the title is lettered on the chart; otherwise the page does it.
    pub titled: bool,
}

/// The smallest chart whose lettering has room, mm.
const SMALLEST: (f64, f64) = (100.0, 34.0);
/// Larger than any sheet, mm.
const LARGEST: f64 = 2000.0;
/// White border, mm.
const BORDER: f64 = 1.5;

impl Default for Paper {
    fn default() -> Paper {
        Paper { width: 160.0, height: 90.0, titled: true }
    }
}

/// An empty chart with its title, and the room left for drawing.
pub(super) fn begin(chart: &dyn Chart, paper: &Paper) -> (Scene, Rect) {
    let size = |asked: f64, least: f64| if asked > least { math::min(asked, LARGEST) } else { least };
    let (wide, high) = (size(paper.width, SMALLEST.0), size(paper.height, SMALLEST.1));
    let mut scene = Scene::new(chart.title(), &chart.description(), wide, high);
    let mut body = Rect::new(0.0, 0.0, wide, high).grown(-BORDER);
    if paper.titled && !scene.title.is_empty() {
        scene.on(Layer::Note);
        let rows = fold(&scene.title.clone(), 0.88 * body.width(), TITLE, 2);
        for line in &rows {
            body.y0 += TITLE;
            scene.text(letters(pt(body.x0, body.y0), line).sized(TITLE).bold());
            body.y0 += 1.4;
        }
        body.y0 += 2.2;
    }
    (scene, body)
}

/// A chart without anything to draw: it says so, and why.
pub(super) fn empty(chart: &dyn Chart, paper: &Paper, why: &str) -> Scene {
    let (mut scene, body) = begin(chart, paper);
    let area = body.grown(-1.0);
    scene.on(Layer::Ground).rect(&area, Some(Pen::Thin), Fill::None);
    let rows = fold(why, area.width() - 16.0, super::label::SMALL, 3);
    let mut y = area.centre().y - 0.5 * LINE * f64::from(u8::try_from(rows.len()).unwrap_or(3) - 1);
    scene.on(Layer::Note);
    for row in &rows {
        scene.text(letters(pt(area.centre().x, y + 0.5 * super::label::SMALL), row).anchored(Anchor::Middle));
        y += LINE;
    }
    scene
}

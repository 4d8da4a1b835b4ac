//! Vents of the spaces of vapour: drawn at places that are nominal, each with its mark.

use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::manways;
use crate::section::place::{Section, zero};

/// Width and height on paper, mm; nominal.
const SIZE: (f64, f64) = (1.8, 4.5);

/// In a view from the side: a pipe on cover or crown.
pub fn along(s: &Section, scene: &mut Scene) {
    for x in s.vents() {
        let foot = s.at(x, s.unit().shape.height());
        let foot = if s.unit().body.is_open() { foot.by(0.0, -1.0) } else { foot.by(0.0, -s.wall()) };
        scene.part("vent", "Vents, places nominal", |scene| {
            let pipe = Rect { x0: foot.x - 0.5 * SIZE.0, y0: foot.y - SIZE.1, x1: foot.x + 0.5 * SIZE.0, y1: foot.y };
            scene.on(Layer::Piping).rect(&pipe, Some(Pen::Medium), Fill::Paper);
            let flange = Rect { x0: pipe.x0 - 0.9, x1: pipe.x1 + 0.9, y1: pipe.y0 + 0.9, ..pipe };
            scene.rect(&flange, Some(Pen::Medium), Fill::Paper);
            let word = Text::new(pipe.centre(), "V").sized(CAPTION);
            let (low, high) = (pipe.y1 - 1.0, pipe.y0 + 1.2);
            // Away from a manway that stands near.
            let (left, right) = (pipe.x0 - 3.2, pipe.x1 + 1.6);
            let (first, second) = if crowded(s, pipe.x0) { (right, left) } else { (left, right) };
            let beside = [(first, high), (second, high), (first, low), (second, low)];
            let over = [(pipe.x0 + 0.2, pipe.y0 - 0.9)];
            let places: Vec<(Point, Anchor)> =
                beside.into_iter().chain(over).map(|(x, y)| (pt(x, y), word.anchor)).collect();
            scene.on(Layer::Note).label(&word, &places);
        });
    }
}

/// Whether a riser of a manway stands close at the left of a place on paper.
fn crowded(s: &Section, x: f64) -> bool {
    let half = s.unit().access.as_ref().map_or(0.0, |access| 0.5 * s.view.scale.mm(access.opening.q));
    let edges = manways(s).into_iter().map(|at| s.at(at, zero()).x + half);
    edges.into_iter().any(|edge| edge < x && x - edge < 6.0)
}

/// In a view from above.
pub fn above(s: &Section, scene: &mut Scene) {
    for x in s.vents() {
        let at = s.at(x, s.broad() * 0.3);
        scene.part("vent", "Vents, places nominal", |scene| {
            scene.on(Layer::Piping).circle(at, 0.5 * SIZE.0, Some(Pen::Phantom), Fill::None);
        });
    }
}

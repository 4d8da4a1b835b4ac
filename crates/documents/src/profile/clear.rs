//! Where there is room: places on a drawing that no lettering, no line and no edge of the paper takes.

use crate::render::geometry::{Point, Rect};
use crate::render::item::{Fill, Item, Shape};
use crate::render::scene::Scene;

/// Room kept around lettering, mm.
const AROUND: f64 = 0.35;

/// What stood on a drawing when it was looked at.
pub struct Clear {
    paper: Rect,
    texts: Vec<Rect>,
    lines: Vec<(Point, Point)>,
}

impl Clear {
    /// Of a drawing as it stands.
    pub fn of(scene: &Scene) -> Clear {
        Clear {
            paper: Rect::new(0.0, 0.0, scene.width, scene.height).grown(-0.5),
            texts: scene.text_boxes().into_iter().map(|(_, area)| area).collect(),
            lines: scene.items().iter().flat_map(|placed| edges(&placed.item)).collect(),
        }
    }

    /// Whether an area lies on the paper and holds no lettering.
    pub fn is_blank(&self, area: &Rect) -> bool {
        self.paper.holds(area) && self.texts.iter().all(|text| text.overlap(area) <= 0.0)
    }

    /// How many lines pass through an area.
    pub fn crossings(&self, area: &Rect) -> usize {
        self.lines.iter().filter(|(a, b)| area.crossed_by(*a, *b)).count()
    }

    /// Whether an area holds neither lettering nor line.
    pub fn is_free(&self, area: &Rect) -> bool {
        let area = area.grown(AROUND);
        self.is_blank(&area) && self.crossings(&area) == 0
    }

    /// Whether a line runs through no lettering.
    pub fn passes(&self, a: Point, b: Point) -> bool {
        !self.texts.iter().any(|text| text.grown(AROUND).crossed_by(a, b))
    }

    /// How many lines a line strikes, but at its beginning.
    pub fn struck(&self, from: Point, to: Point) -> usize {
        let from = from.toward(to, 0.3);
        let side = |a: Point, b: Point, p: Point| (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
        let apart = |u: f64, v: f64| u * v < 0.0;
        let strikes = |(a, b): &&(Point, Point)| {
            apart(side(from, to, *a), side(from, to, *b)) && apart(side(*a, *b, from), side(*a, *b, to))
        };
        self.lines.iter().filter(strikes).count()
    }

    /// Whether the lettering of an item stands free, and none of its lines runs through other lettering.
    pub fn takes(&self, item: &Item) -> bool {
        item.text_boxes().iter().all(|(_, area)| self.is_free(area))
            && item.lines().into_iter().all(|(a, b)| self.passes(a, b))
    }
}

/// The lines of an item, and the edges of what is filled with ink.
fn edges(item: &Item) -> Vec<(Point, Point)> {
    let mut all = item.lines();
    if let Item::Shape(Shape::Path { rings, pen: None, fill: Fill::Ink, .. }) = item {
        for ring in rings {
            all.extend(ring.iter().copied().zip(ring.iter().skip(1).chain(ring.first()).copied()));
        }
    }
    all
}

/// Adds the first candidate that stands free, and tells whether there was one.
pub fn first_free(scene: &mut Scene, candidates: impl IntoIterator<Item = Item>) -> bool {
    let clear = Clear::of(scene);
    match candidates.into_iter().find(|item| clear.takes(item)) {
        Some(item) => {
            scene.add(item);
            true
        }
        None => false,
    }
}

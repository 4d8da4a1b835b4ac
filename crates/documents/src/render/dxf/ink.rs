//! What of a scene is to be drawn, in the order of painting, once everything covered is cut away.

use super::cover::{Cover, convex};
use super::layers::Shown;
use crate::render::geometry::{Point, Rect, arc};
use crate::render::hatch::strokes;
use crate::render::item::{Fill, Item, Shape};
use crate::render::lettering::Text;
use crate::render::mark::Dimension;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

/// What is drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Ink {
    /// A line through points.
    Line {
        /// Where it runs.
        points: Vec<Point>,
        /// Whether its end joins its beginning.
        closed: bool,
        /// Its pen.
        pen: Pen,
    },
    /// A circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
        /// Its pen.
        pen: Pen,
    },
    /// A solid area within rings.
    Solid(Vec<Vec<Point>>),
    /// A solid disc.
    Dot {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
    },
    /// A line of text.
    Text(Text),
    /// A dimension, and what it is drawn with.
    Dimension(Dimension, Vec<Placed>),
}

/// The same, with how it is shown on which layer.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The layer.
    pub layer: Layer,
    /// How it is shown.
    pub shown: Shown,
    /// What.
    pub ink: Ink,
}

/// All that is to be drawn of a scene.
pub fn ink(scene: &Scene) -> Vec<Placed> {
    let mut all: Vec<Placed> = Vec::new();
    for layer in Layer::ALL {
        for placed in scene.items().iter().filter(|placed| placed.layer == layer) {
            let shown = Shown::of(&placed.item);
            let mut own = Vec::new();
            for shape in placed.item.shapes() {
                add(&mut all, &mut own, &shape, (layer, shown));
            }
            match &placed.item {
                Item::Dimension(dimension) => {
                    all.push(Placed { layer, shown, ink: Ink::Dimension(dimension.clone(), own) });
                }
                _ => all.extend(own),
            }
        }
    }
    all
}

/// Adds a shape to those of its own item; what it covers is cut out of those and of all before.
fn add(all: &mut Vec<Placed>, own: &mut Vec<Placed>, shape: &Shape, (layer, shown): (Layer, Shown)) {
    match shape {
        Shape::Text(text) if text.text.is_empty() => {}
        Shape::Text(text) => {
            if text.clear {
                clear(all, own, &[text.area().corners()]);
            }
            own.push(Placed { layer, shown: Shown::Text, ink: Ink::Text(text.clone()) });
        }
        Shape::Path { rings, closed, pen, fill } => {
            if covers(*fill) {
                clear(all, own, rings);
            }
            let mut put = |shown: Shown, ink: Ink| own.push(Placed { layer, shown, ink });
            if *fill == Fill::Ink {
                put(shown, Ink::Solid(rings.clone()));
            }
            hatched(&mut put, *fill, rings);
            if let Some(pen) = *pen {
                for points in rings.iter().filter(|points| points.len() > 1) {
                    put(shown, Ink::Line { points: points.clone(), closed: *closed, pen });
                }
            }
        }
        Shape::Circle { centre, radius, pen, fill } => {
            let ring = vec![arc(*centre, *radius, *radius, 0.0, 360.0, 72)];
            if covers(*fill) {
                clear(all, own, &ring);
            }
            let mut put = |shown: Shown, ink: Ink| own.push(Placed { layer, shown, ink });
            if *fill == Fill::Ink {
                put(shown, Ink::Dot { centre: *centre, radius: *radius });
            }
            hatched(&mut put, *fill, &ring);
            if let Some(pen) = *pen {
                put(shown, Ink::Circle { centre: *centre, radius: *radius, pen });
            }
        }
    }
}

fn covers(fill: Fill) -> bool {
    matches!(fill, Fill::Paper | Fill::Over(_) | Fill::Tint(_))
}

/// The very strokes that the picture has.
fn hatched(put: &mut impl FnMut(Shown, Ink), fill: Fill, rings: &[Vec<Point>]) {
    if let Fill::Hatch(hatch) | Fill::Over(hatch) = fill {
        for (a, b) in strokes(rings, hatch) {
            put(Shown::Hatching, Ink::Line { points: vec![a, b], closed: false, pen: Pen::Hatching });
        }
    }
}

/// Cuts an area out of everything.
fn clear(all: &mut Vec<Placed>, own: &mut Vec<Placed>, rings: &[Vec<Point>]) {
    let Some(cover) = Cover::new(rings) else { return };
    for placed in [all, own] {
        cut(placed, &cover);
    }
}

fn cut(placed: &mut Vec<Placed>, cover: &Cover) {
    let mut left = Vec::with_capacity(placed.len());
    for Placed { layer, shown, ink } in placed.drain(..) {
        let mut keep = |ink: Ink| left.push(Placed { layer, shown, ink });
        match ink {
            Ink::Line { points, closed, pen } => match cover.outside(&points, closed) {
                Some(pieces) => {
                    pieces.into_iter().for_each(|points| keep(Ink::Line { points, closed: false, pen }));
                }
                None => keep(Ink::Line { points, closed, pen }),
            },
            Ink::Circle { centre, radius, pen } => {
                let extent = Rect { x0: centre.x, y0: centre.y, x1: centre.x, y1: centre.y }.grown(radius);
                let pieces = if cover.meets(&extent) {
                    cover.outside(&arc(centre, radius, radius, 0.0, 360.0, 72), true)
                } else {
                    None
                };
                match pieces {
                    Some(pieces) => {
                        pieces.into_iter().for_each(|points| keep(Ink::Line { points, closed: false, pen }));
                    }
                    None => keep(Ink::Circle { centre, radius, pen }),
                }
            }
            Ink::Solid(rings) => match rings.as_slice() {
                [ring] if convex(ring) => match cover.rest(ring) {
                    Some(pieces) => pieces.into_iter().for_each(|ring| keep(Ink::Solid(vec![ring]))),
                    None => keep(Ink::Solid(rings)),
                },
                _ => keep(Ink::Solid(rings)),
            },
            Ink::Dimension(dimension, mut parts) => {
                cut(&mut parts, cover);
                keep(Ink::Dimension(dimension, parts));
            }
            Ink::Dot { .. } | Ink::Text(_) => keep(ink),
        }
    }
    *placed = left;
}

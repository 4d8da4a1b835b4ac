//! A part of a drawing cut out by a window and set elsewhere: for details. Lettering and marks stay behind, lines and fills
//! end at the window.

use super::geometry::{Point, Rect, arc};
use super::item::{Item, Placed, Shape};
use super::scene::Scene;

/// Sets into `scene` what of `from` lies in a window, moved so that the window's upper left corner stands at a point.
pub fn inset(scene: &mut Scene, from: &Scene, window: &Rect, at: Point) {
    let (dx, dy) = (at.x - window.x0, at.y - window.y0);
    let mut all: Vec<&Placed> = from.items().iter().collect();
    all.sort_by_key(|placed| placed.layer);
    for placed in all {
        let Item::Shape(shape) = &placed.item else { continue };
        for cut in clipped(shape, window) {
            scene.on(placed.layer).add(Item::Shape(cut.moved(dx, dy)));
        }
    }
}

/// What of a shape lies in a window; lettering does not.
fn clipped(shape: &Shape, window: &Rect) -> Vec<Shape> {
    match shape {
        Shape::Text(_) => Vec::new(),
        Shape::Circle { centre, radius, pen, fill } => {
            let whole = Rect { x0: centre.x, y0: centre.y, x1: centre.x, y1: centre.y }.grown(*radius);
            if window.holds(&whole) {
                return vec![shape.clone()];
            }
            let ring = arc(*centre, *radius, *radius, 0.0, 360.0, 48);
            clipped(&Shape::Path { rings: vec![ring], closed: true, pen: *pen, fill: *fill }, window)
        }
        Shape::Path { rings, closed: false, pen, fill } => {
            let lines: Vec<Vec<Point>> = rings.iter().flat_map(|ring| line(ring, window)).collect();
            if lines.is_empty() {
                return Vec::new();
            }
            vec![Shape::Path { rings: lines, closed: false, pen: *pen, fill: *fill }]
        }
        Shape::Path { rings, closed: true, pen, fill } => {
            let areas: Vec<Vec<Point>> = rings.iter().map(|ring| area(ring, window)).filter(|r| r.len() > 2).collect();
            let mut all = Vec::new();
            if !areas.is_empty() {
                all.push(Shape::Path { rings: areas, closed: true, pen: None, fill: *fill });
            }
            // The outline ends at the window and does not follow it.
            let around = rings.iter().map(|ring| ring.iter().chain(ring.first()).copied().collect::<Vec<_>>());
            let lines: Vec<Vec<Point>> = around.flat_map(|ring| line(&ring, window)).collect();
            if pen.is_some() && !lines.is_empty() {
                all.push(Shape::Path { rings: lines, closed: false, pen: *pen, fill: super::item::Fill::None });
            }
            all
        }
    }
}

/// The pieces of a line inside.
fn line(points: &[Point], window: &Rect) -> Vec<Vec<Point>> {
    let mut pieces: Vec<Vec<Point>> = Vec::new();
    for pair in points.windows(2) {
        let &[a, b] = pair else { continue };
        let Some((p, q)) = inside(a, b, window) else { continue };
        match pieces.last_mut() {
            Some(piece) if piece.last().is_some_and(|end| end.distance(p) < 1e-9) => piece.push(q),
            _ => pieces.push(vec![p, q]),
        }
    }
    pieces
}

/// The part of a straight line inside.
fn inside(a: Point, b: Point, window: &Rect) -> Option<(Point, Point)> {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (start, step, low, high) in [(a.x, b.x - a.x, window.x0, window.x1), (a.y, b.y - a.y, window.y0, window.y1)] {
        if step.abs() < 1e-12 {
            if start < low || start > high {
                return None;
            }
        } else {
            let (s, t) = ((low - start) / step, (high - start) / step);
            enter = enter.max(s.min(t));
            leave = leave.min(s.max(t));
        }
    }
    let at = |share: f64| a.by(share * (b.x - a.x), share * (b.y - a.y));
    (enter < leave).then(|| (at(enter), at(leave)))
}

/// The part of an area inside (Sutherland and Hodgman).
fn area(ring: &[Point], window: &Rect) -> Vec<Point> {
    let edges: [&dyn Fn(&Point) -> f64; 4] =
        [&|p| p.x - window.x0, &|p| window.x1 - p.x, &|p| p.y - window.y0, &|p| window.y1 - p.y];
    let mut ring = ring.to_vec();
    for inside in edges {
        let mut kept = Vec::new();
        for (k, a) in ring.iter().enumerate() {
            let Some(b) = ring.get((k + 1) % ring.len()) else { continue };
            let (here, there) = (inside(a), inside(b));
            if here >= 0.0 {
                kept.push(*a);
            }
            if (here >= 0.0) != (there >= 0.0) {
                let share = here / (here - there);
                kept.push(a.by(share * (b.x - a.x), share * (b.y - a.y)));
            }
        }
        ring = kept;
    }
    ring
}

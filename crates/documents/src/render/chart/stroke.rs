//! How curves and points are told apart in ink: by pattern, width and sign, never by colour.

use super::plot::ink;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Fill;
use crate::render::pen::Pen;
use crate::render::scene::Scene;
use stillrise_units::math;

/// The pattern of a curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stroke {
    /// Continuous and wide: the curve the chart is about.
    Heavy,
    /// Dashes of medium width.
    Dashed,
    /// Wide dots.
    Dotted,
    /// Continuous and narrow.
    Fine,
    /// Long dash, dot.
    Chain,
    /// Long dash, two dots.
    Double,
}

/// The sign of a single point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// A solid circle.
    Dot,
    /// An open circle.
    Ring,
    /// An open square.
    Square,
    /// A solid square on its corner.
    Diamond,
    /// An open triangle.
    Triangle,
}

impl Stroke {
    /// Every pattern, in the order in which curves get them.
    pub const ALL: [Stroke; 6] =
        [Stroke::Heavy, Stroke::Dashed, Stroke::Dotted, Stroke::Fine, Stroke::Chain, Stroke::Double];

    fn pen(self) -> Pen {
        match self {
            Stroke::Heavy | Stroke::Dotted => Pen::Outline,
            Stroke::Dashed | Stroke::Chain | Stroke::Double => Pen::Medium,
            Stroke::Fine => Pen::Thin,
        }
    }

    /// Dash and gap lengths in turn, mm.
    fn pattern(self) -> &'static [f64] {
        match self {
            Stroke::Heavy | Stroke::Fine => &[],
            Stroke::Dashed => &[2.6, 1.1],
            Stroke::Dotted => &[0.5, 1.0],
            Stroke::Chain => &[5.0, 0.9, 0.5, 0.9],
            Stroke::Double => &[5.0, 0.9, 0.5, 0.9, 0.5, 0.9],
        }
    }

    /// Draws a line in this pattern, which runs on through its bends.
    pub fn draw(self, scene: &mut Scene, line: &[Point]) {
        scene.add(ink(dashes(line, self.pattern()), self.pen()));
    }
}

impl Sign {
    /// Every sign, in the order in which series of points get them.
    pub const ALL: [Sign; 5] = [Sign::Ring, Sign::Diamond, Sign::Square, Sign::Triangle, Sign::Dot];

    /// Draws it.
    pub fn draw(self, scene: &mut Scene, at: Point) {
        let ring = |reach: [(f64, f64); 4]| reach.map(|(dx, dy)| at.by(dx, dy));
        match self {
            Sign::Dot => scene.circle(at, 1.15, Some(Pen::Thin), Fill::Ink),
            Sign::Ring => scene.circle(at, 1.0, Some(Pen::Medium), Fill::Paper),
            Sign::Square => scene.rect(&spot(at).grown(0.95), Some(Pen::Medium), Fill::Paper),
            Sign::Diamond => {
                let corners = ring([(0.0, -1.5), (1.2, 0.0), (0.0, 1.5), (-1.2, 0.0)]);
                scene.polygon(&corners, Some(Pen::Thin), Fill::Ink);
            }
            Sign::Triangle => {
                let corners = ring([(0.0, -1.4), (1.3, 0.9), (0.0, 0.9), (-1.3, 0.9)]);
                scene.polygon(&corners, Some(Pen::Medium), Fill::Paper);
            }
        }
    }
}

fn spot(p: Point) -> Rect {
    Rect { x0: p.x, y0: p.y, x1: p.x, y1: p.y }
}

/// A line cut into the drawn pieces of a pattern (on, off, on, off ..); whole without pattern.
fn dashes(line: &[Point], pattern: &[f64]) -> Vec<Vec<Point>> {
    if pattern.is_empty() {
        return vec![line.to_vec()];
    }
    let (mut pieces, mut piece) = (Vec::new(), line.first().copied().into_iter().collect::<Vec<_>>());
    let (mut index, mut left) = (0, pattern[0]);
    for pair in line.windows(2) {
        let (mut from, to) = (pair[0], pair[1]);
        while from.distance(to) > left {
            from = from.toward(to, left);
            if index % 2 == 0 {
                piece.push(from);
                pieces.push(core::mem::take(&mut piece));
            } else {
                piece = vec![from];
            }
            index = (index + 1) % pattern.len();
            left = pattern[index];
        }
        left -= from.distance(to);
        if index % 2 == 0 {
            piece.push(to);
        }
    }
    pieces.push(piece);
    pieces.retain(|p| p.len() > 1);
    pieces
}

/// The runs of a line that lie within an area. `None` breaks the line, as do its parts outside.
#[must_use]
pub fn within(points: &[Option<Point>], area: &Rect) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    // A curve along the edge is not lost to rounding.
    let area = area.grown(1e-6);
    for pair in points.windows(2) {
        let (Some(a), Some(b)) = (pair[0], pair[1]) else {
            continue;
        };
        let Some((from, to)) = clip(a, b, &area) else {
            continue;
        };
        match runs.last_mut() {
            Some(run) if run.last() == Some(&from) => run.push(to),
            _ => runs.push(vec![from, to]),
        }
    }
    runs
}

/// The part of a straight line within an area, its edge included.
fn clip(a: Point, b: Point, area: &Rect) -> Option<(Point, Point)> {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (start, step, low, high) in [(a.x, b.x - a.x, area.x0, area.x1), (a.y, b.y - a.y, area.y0, area.y1)] {
        if step == 0.0 {
            if start < low || start > high {
                return None;
            }
        } else {
            let (s, t) = ((low - start) / step, (high - start) / step);
            enter = math::max(enter, math::min(s, t));
            leave = math::min(leave, math::max(s, t));
        }
    }
    let at = |share: f64| match share {
        0.0 => a,
        1.0 => b,
        s => pt(a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)),
    };
    (enter <= leave).then(|| (at(enter), at(leave)))
}

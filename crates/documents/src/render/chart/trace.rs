//! Lines cut: to the dashes of a pattern, and to the field they are drawn on.

use crate::render::geometry::{Point, Rect, pt};
use stillrise_units::math;

/// A line cut into the drawn pieces of a pattern (on, off, on, off ..); whole without pattern.
pub(super) fn dashes(line: &[Point], pattern: &[f64]) -> Vec<Vec<Point>> {
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

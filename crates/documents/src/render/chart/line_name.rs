//! The name of a curve within the field, where no line runs, and whether it may stand beside the field instead.

use super::label::{SMALL, cut, letters, place};
use super::line::LineChart;
use crate::render::geometry::{Point, Rect};
use crate::render::lettering::{Anchor, Text, around};
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use stillrise_units::math;

/// Where a curve ends, and its drawn line.
pub(super) struct End {
    /// Which curve.
    pub(super) curve: usize,
    /// Its last point within the field.
    pub(super) at: Point,
    /// Its points within the field.
    pub(super) line: Vec<Point>,
}

/// Ends nearer than this to one another cannot be told apart by lines drawn from them, mm.
const CROWDED: f64 = 1.2;
/// Least distance from other curves of the place where a curve is named within the field, mm.
const ALONE: f64 = 2.5;

/// Whether a curve ends near enough to the right edge, and far enough from the other ends, for its
/// name to stand beside the field.
pub(super) fn beside(at: Point, ends: &[Point], area: &Rect) -> bool {
    let outer = |p: Point| p.x > area.x1 - 0.08 * area.width();
    // The end itself is among the ends.
    outer(at) && ends.iter().filter(|p| outer(**p) && (p.y - at.y).abs() < CROWDED).count() < 2
}

pub(super) fn name<'a>(chart: &'a LineChart, end: &End) -> &'a str {
    chart.curves.get(end.curve).map_or("", |c| &c.name)
}

/// Writes a name within the field, near the end of its curve or, failing that, near another point.
pub(super) fn within(scene: &mut Scene, area: &Rect, end: &End, others: &[&End], name: &str) -> bool {
    scene.on(Layer::Note);
    let text = letters(end.at, &cut(name, 0.5 * area.width(), SMALL));
    let step = (end.line.len() / 40).max(1);
    for at in core::iter::once(end.at).chain(end.line.iter().rev().step_by(step).copied()) {
        let near = |line: &[Point]| line.windows(2).any(|pair| distance(at, pair[0], pair[1]) < ALONE);
        if others.iter().any(|other| near(&other.line)) {
            continue;
        }
        let seat = |(at, anchor): (Point, Anchor)| Text { at, anchor, ..text.clone() };
        let seats = around(at, 1.6, SMALL).map(seat).into_iter();
        if place(scene, seats.filter(|t| area.grown(-0.6).holds(&t.area())), 0) {
            return true;
        }
    }
    false
}

/// Distance of a point from a straight line between two others.
fn distance(p: Point, a: Point, b: Point) -> f64 {
    let whole = a.distance(b);
    let along = if whole > 0.0 { ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / whole } else { 0.0 };
    p.distance(a.toward(b, math::max(0.0, math::min(whole, along))))
}

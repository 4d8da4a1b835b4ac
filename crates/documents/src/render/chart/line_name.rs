//! The names of curves: at their ends beside the field, near them within it, or in the key.

use super::label::{LINE, SMALL, apart, cut, place, width};
use super::line::{Curve, LineChart};
use super::line_draw::Named;
use super::plot::{Plot, ink};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::{Anchor, Text, around};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use std::collections::BTreeSet;
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

/// Length of the line from a curve's end to its name, mm.
const LEADER: f64 = 4.5;
/// The most of a chart's width that names beside the field may take.
const MOST: f64 = 0.30;

/// Ends nearer than this to one another cannot be told apart by lines drawn from them, mm.
const CROWDED: f64 = 1.2;
/// Least distance from other curves of the place where a curve is named within the field, mm.
const ALONE: f64 = 2.5;

/// Whether a curve ends near enough to the right edge, and far enough from the other ends, for its
/// name to stand beside the field.
fn beside(at: Point, ends: &[Point], area: &Rect) -> bool {
    let outer = |p: Point| p.x > area.x1 - 0.08 * area.width();
    // The end itself is among the ends.
    outer(at) && ends.iter().filter(|p| outer(**p) && (p.y - at.y).abs() < CROWDED).count() < 2
}

/// Room kept for names at the right of the field, mm.
pub(super) fn margin(chart: &LineChart, plot: &Plot, keyed: &BTreeSet<Named>) -> f64 {
    let end = |c: &Curve| {
        let held = c.points.iter().rev().find(|(x, y)| plot.x.holds(*x) && plot.y.holds(*y));
        held.and_then(|&(x, y)| plot.at(x, y))
    };
    let all: Vec<Point> = chart.curves.iter().filter_map(end).collect();
    let direct = chart.curves.iter().enumerate().filter(|(k, _)| !keyed.contains(&Named::Curve(*k)));
    let ends = direct.filter(|(_, c)| end(c).is_some_and(|p| beside(p, &all, &plot.area)));
    let widest = ends.map(|(_, c)| width(&c.name, SMALL)).fold(0.0, math::max);
    let last = plot.x.major.last().map_or(0.0, |t| 0.5 * width(&t.text, SMALL));
    if widest > 0.0 { math::min(widest, MOST * plot.area.width()) + LEADER + 1.0 } else { last }
}

/// Writes the names; those that found no place are returned.
pub(super) fn write(
    scene: &mut Scene,
    area: &Rect,
    chart: &LineChart,
    ends: &[End],
    keyed: &BTreeSet<Named>,
) -> Vec<Named> {
    let named = |end: &&End| !keyed.contains(&Named::Curve(end.curve)) && !name(chart, end).trim().is_empty();
    let all: Vec<Point> = ends.iter().map(|e| e.at).collect();
    // A name too long for the margin goes elsewhere rather than lose its end.
    let room = scene.width - 1.5 - area.x1 - LEADER;
    let margin = |end: &&End| beside(end.at, &all, area) && width(name(chart, end), SMALL) <= room + 1e-9;
    let (mut outer, inner): (Vec<&End>, Vec<&End>) = ends.iter().filter(named).partition(margin);
    outer.sort_by(|a, b| a.at.y.total_cmp(&b.at.y));
    let mut homeless = Vec::new();
    let half = 0.5 * SMALL;
    let heights = loop {
        let wished: Vec<f64> = outer.iter().map(|e| e.at.y).collect();
        if let Some(heights) = apart(&wished, |_| LINE, area.y0 + half, area.y1 - half) {
            break heights;
        }
        match outer.pop() {
            Some(end) => homeless.push(Named::Curve(end.curve)),
            None => break Vec::new(),
        }
    };
    for (end, y) in outer.iter().zip(heights) {
        let knee = pt(area.x1 + LEADER - 0.8, y);
        let leader = vec![end.at, pt(area.x1 + 0.8, end.at.y), knee];
        scene.on(Layer::Note).add(ink(vec![leader], Pen::Thin));
        let text = Text::new(pt(area.x1 + LEADER, y + half), name(chart, end)).sized(SMALL);
        scene.text(text);
    }
    for end in inner {
        let others: Vec<&End> = ends.iter().filter(|e| e.curve != end.curve).collect();
        if !within(scene, area, end, &others, name(chart, end)) {
            homeless.push(Named::Curve(end.curve));
        }
    }
    homeless
}

fn name<'a>(chart: &'a LineChart, end: &End) -> &'a str {
    chart.curves.get(end.curve).map_or("", |c| &c.name)
}

/// Writes a name within the field, near the end of its curve or, failing that, near another point.
fn within(scene: &mut Scene, area: &Rect, end: &End, others: &[&End], name: &str) -> bool {
    scene.on(Layer::Note);
    let text = Text::new(end.at, &cut(name, 0.5 * area.width(), SMALL)).sized(SMALL);
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

//! The names of curves and of level lines at the right of the field, each beside what it names.

use super::label::{LINE, SMALL, apart, fold, height, letters};
use super::line::LineChart;
use super::line_draw::Named;
use super::line_name::{End, beside, name, within};
use super::plot::ink;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use std::collections::BTreeSet;

/// Length of the line from the edge of the field to a name, mm.
const LEADER: f64 = 3.6;
/// The most lines that a name takes.
const MOST: usize = 3;
/// Room between names, mm.
const GAP: f64 = 2.6;

/// A name on its way to its place.
struct Name {
    of: Named,
    /// Where what it names ends; for the floor, a place beside it.
    at: Point,
    lines: Vec<String>,
}

/// Writes the names; those that found no place are returned.
pub(super) fn write(
    scene: &mut Scene,
    frame: &Rect,
    (chart, edge): (&LineChart, f64),
    ends: &[End],
    levels: &[(Named, f64, &str)],
    keyed: &BTreeSet<Named>,
) -> Vec<Named> {
    let room = edge - frame.x1 - LEADER;
    let all: Vec<Point> = ends.iter().map(|e| e.at).collect();
    let named = |end: &&End| !keyed.contains(&Named::Curve(end.curve)) && !name(chart, end).trim().is_empty();
    // A name too long for its place goes elsewhere rather than lose its end.
    let whole = |text: &str| {
        let lines = fold(text, room, SMALL, MOST);
        lines.iter().all(|line| !line.ends_with('…') && !line.is_empty()).then_some(lines)
    };
    let (outer, inner): (Vec<&End>, Vec<&End>) =
        ends.iter().filter(named).partition(|end| beside(end.at, &all, frame) && whole(name(chart, end)).is_some());
    let mut names: Vec<Name> = Vec::new();
    for end in outer {
        let lines = whole(name(chart, end)).unwrap_or_default();
        names.push(Name { of: Named::Curve(end.curve), at: end.at, lines });
    }
    let mut homeless = Vec::new();
    for (of, y, text) in levels.iter().filter(|(of, ..)| !keyed.contains(of)) {
        match whole(text) {
            Some(lines) => names.push(Name { of: *of, at: pt(frame.x1, *y), lines }),
            None if text.trim().is_empty() => {}
            None => homeless.push(*of),
        }
    }
    names.sort_by(|a, b| a.at.y.total_cmp(&b.at.y));
    let heights = loop {
        let wished: Vec<f64> = names.iter().map(|n| n.at.y).collect();
        let high = |k: usize| names.get(k).map_or(0.0, |n| height(n.lines.len()));
        let (first, last) = (high(0), high(names.len().saturating_sub(1)));
        let room = |k: usize| 0.5 * (high(k - 1) + high(k)) + GAP;
        if let Some(heights) = apart(&wished, room, frame.y0 + 0.5 * first - 1.0, frame.y1 - 0.5 * last + 1.0) {
            break heights;
        }
        match names.pop() {
            Some(name) => homeless.push(name.of),
            None => break Vec::new(),
        }
    };
    for (name, y) in names.iter().zip(heights) {
        let x = frame.x1 + LEADER;
        if name.of != Named::Floor {
            let knee = pt(x - 0.7, y);
            let leader = vec![name.at, pt(frame.x1 + 0.4, name.at.y), knee];
            scene.on(Layer::Note).add(ink(vec![leader], Pen::Hatching));
        }
        scene.on(Layer::Note);
        let mut base = y - 0.5 * height(name.lines.len()) + SMALL;
        for line in &name.lines {
            scene.text(letters(pt(x, base), line));
            base += LINE;
        }
    }
    for end in inner {
        let others: Vec<&End> = ends.iter().filter(|e| e.curve != end.curve).collect();
        if !within(scene, frame, end, &others, name(chart, end)) {
            homeless.push(Named::Curve(end.curve));
        }
    }
    homeless
}

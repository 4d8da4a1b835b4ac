//! The field of a chart: its place on the paper, axes with their lettering, and where values stand.

use super::axis::Axis;
use super::label::{LINE, SMALL, cut, fold, letters, width};
use super::ticks::Graduation;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::{Fill, Item, Shape};
use crate::render::lettering::Anchor;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Room under a field for tick texts and the title of its axis, mm.
pub const BELOW: f64 = 9.4;
/// Room above a field for the names of upright lines and the heads of columns, mm.
pub const NAMES: f64 = 4.6;
/// Shares of a chart's width that names at the left and values at the right take.
const COLUMNS: (f64, f64) = (0.25, 0.2);
/// Share of a field by which it reaches beyond the range of its axes, at each end: no curve lies on the frame.
const PAD: f64 = 0.05;
/// Length of a written tick, and of one without text, mm.
const TICK: (f64, f64) = (1.2, 0.7);
/// Room between a field and what is written beside it, mm.
pub const GAP: f64 = 2.0;

/// A field with both axes divided.
#[derive(Debug, Clone, PartialEq)]
pub struct Plot {
    /// Where values stand: the range of the axes.
    pub area: Rect,
    /// The field on paper, somewhat larger.
    pub frame: Rect,
    /// The axis below.
    pub x: Graduation,
    /// The axis at the left.
    pub y: Graduation,
}

/// The left and right edge of the field of every chart on paper of this width.
#[must_use]
pub fn columns(body: &Rect) -> (f64, f64) {
    (body.x0 + COLUMNS.0 * body.width(), body.x1 - COLUMNS.1 * body.width())
}

/// Where the range of the axes lies in a field.
#[must_use]
pub fn inner(frame: &Rect) -> Rect {
    let (dx, dy) = (PAD * frame.width(), PAD * frame.height());
    Rect { x0: frame.x0 + dx, y0: frame.y0 + dy, x1: frame.x1 - dx, y1: frame.y1 - dy }
}

/// Where a value stands across a field.
#[must_use]
pub fn across(area: &Rect, graduation: &Graduation, value: f64) -> Option<f64> {
    graduation.share(value).map(|s| area.x0 + s * area.width())
}

/// Where a value stands up a field.
#[must_use]
pub fn up(area: &Rect, graduation: &Graduation, value: f64) -> Option<f64> {
    graduation.share(value).map(|s| area.y1 - s * area.height())
}

impl Plot {
    /// The place of a pair of values, which may lie outside the field.
    #[must_use]
    pub fn at(&self, x: f64, y: f64) -> Option<Point> {
        Some(pt(across(&self.area, &self.x, x)?, up(&self.area, &self.y, y)?))
    }

    /// Draws the axes; what is at the left begins at `left`.
    pub fn draw(&self, scene: &mut Scene, x: &Axis, y: &Axis, left: f64) {
        below(scene, &self.area, &self.frame, &self.x, x);
        beside(scene, self, y, left);
    }
}

/// Several open lines as one item.
pub(super) fn ink(rings: Vec<Vec<Point>>, pen: Pen) -> Item {
    Item::Shape(Shape::Path { rings, closed: false, pen: Some(pen), fill: Fill::None })
}

/// The values of ticks with their lengths; those without text only where divisions are unequal.
fn strokes(graduation: &Graduation) -> impl Iterator<Item = (f64, f64)> + '_ {
    let long = graduation.major.iter().map(|t| (t.value, TICK.0));
    long.chain(graduation.minor.iter().filter(|_| graduation.log).map(|v| (*v, TICK.1)))
}

/// Axis, ticks, their texts and the title of a level axis, under a field.
pub fn below(scene: &mut Scene, area: &Rect, frame: &Rect, graduation: &Graduation, axis: &Axis) {
    let foot = frame.y1;
    let mut lines = vec![vec![pt(frame.x0, foot), pt(frame.x1, foot)]];
    for (value, length) in strokes(graduation) {
        if let Some(x) = across(area, graduation, value) {
            lines.push(vec![pt(x, foot), pt(x, foot + length)]);
        }
    }
    scene.on(Layer::Frame).add(ink(lines, Pen::Thin));
    scene.on(Layer::Note);
    for tick in &graduation.major {
        if let Some(x) = across(area, graduation, tick.value) {
            let text = letters(pt(x, foot + TICK.0 + 0.8 + SMALL), &tick.text);
            scene.text(text.anchored(Anchor::Middle));
        }
    }
    let centre = area.centre().x;
    let title = cut(&axis.caption(), 2.0 * math::min(centre, scene.width - centre) - 1.0, SMALL);
    scene.text(letters(pt(centre, foot + TICK.0 + 1.2 + SMALL + LINE), &title).anchored(Anchor::Middle));
}

/// Axis, ticks and their texts at the left of a field, and left of them the title of the axis, level as all that is read.
fn beside(scene: &mut Scene, plot: &Plot, axis: &Axis, left: f64) {
    let edge = plot.frame.x0;
    let mut lines = vec![vec![pt(edge, plot.frame.y0), pt(edge, plot.frame.y1)]];
    for (value, length) in strokes(&plot.y) {
        if let Some(y) = up(&plot.area, &plot.y, value) {
            lines.push(vec![pt(edge, y), pt(edge - length, y)]);
        }
    }
    scene.on(Layer::Frame).add(ink(lines, Pen::Thin));
    scene.on(Layer::Note);
    let mut reach = edge - TICK.0;
    for tick in &plot.y.major {
        if let Some(y) = up(&plot.area, &plot.y, tick.value) {
            let text = letters(pt(edge - TICK.0 - 0.8, y + 0.5 * SMALL), &tick.text).anchored(Anchor::End);
            reach = math::min(reach, text.area().x0);
            scene.text(text);
        }
    }
    let room = reach - GAP - left;
    let mut base = plot.frame.y0 + SMALL;
    for line in &fold(&axis.caption(), room, SMALL, 4) {
        scene.text(letters(pt(reach - GAP, base), line).anchored(Anchor::End));
        base += LINE;
    }
}

/// A head over a column beside the field, within `room` mm.
pub fn head(scene: &mut Scene, at: Point, words: &str, room: f64, anchor: Anchor) {
    let words = cut(words, room, SMALL);
    if width(&words, SMALL) > 0.0 {
        scene.on(Layer::Note).text(letters(at, &words).anchored(anchor));
    }
}

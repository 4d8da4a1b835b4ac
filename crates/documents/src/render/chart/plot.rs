//! The field of a chart: axes with their lettering, the grid, and where values stand.

use super::axis::{Along, Axis};
use super::label::{SMALL, cut, width};
use super::ticks::Graduation;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::{Fill, Item, Shape};
use crate::render::lettering::{Anchor, TEXT, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Room under a field for tick texts and the title of its axis, mm.
pub const BELOW: f64 = 10.0;
/// Room above a field for the names of upright lines, mm.
pub const NAMES: f64 = 4.4;
/// Room above a field for the title of its upright axis, mm.
pub const ABOVE: f64 = 5.0;
/// Length of a written tick, and of one without text, mm.
const TICK: (f64, f64) = (1.6, 0.9);
/// Half the length of the strokes of a grid cross, mm.
const CROSS: f64 = 0.7;

/// A field with both axes divided.
#[derive(Debug, Clone, PartialEq)]
pub struct Plot {
    /// The field on paper.
    pub area: Rect,
    /// The axis below.
    pub x: Graduation,
    /// The axis at the left.
    pub y: Graduation,
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

    /// Draws the field: outline, ticks, small crosses where the written divisions meet.
    ///
    /// The title of the upright axis stands `lift` mm higher than it need, above names of lines.
    pub fn draw(&self, scene: &mut Scene, x: &Axis, y: &Axis, lift: f64) {
        let mut strokes = Vec::new();
        for ty in &self.y.major {
            for tx in &self.x.major {
                if let Some(p) = self.at(tx.value, ty.value).filter(|p| self.area.grown(-0.5).holds(&spot(*p))) {
                    strokes.push(vec![p.by(-CROSS, 0.0), p.by(CROSS, 0.0)]);
                    strokes.push(vec![p.by(0.0, -CROSS), p.by(0.0, CROSS)]);
                }
            }
        }
        scene.on(Layer::Ground).add(ink(strokes, Pen::Hatching));
        below(scene, &self.area, &self.x, x, true);
        beside(scene, &self.area, &self.y, y, lift);
        scene.on(Layer::Frame).rect(&self.area, Some(Pen::Medium), Fill::None);
    }
}

/// Several open lines as one item.
pub(super) fn ink(rings: Vec<Vec<Point>>, pen: Pen) -> Item {
    Item::Shape(Shape::Path { rings, closed: false, pen: Some(pen), fill: Fill::None })
}

fn spot(p: Point) -> Rect {
    Rect { x0: p.x, y0: p.y, x1: p.x, y1: p.y }
}

/// Ticks, their texts and the title of a level axis, under a field; ticks also along its upper edge if framed.
pub fn below(scene: &mut Scene, area: &Rect, graduation: &Graduation, axis: &Axis, framed: bool) {
    let mut strokes = Vec::new();
    let long = graduation.major.iter().map(|t| (t.value, TICK.0));
    for (value, length) in long.chain(graduation.minor.iter().map(|v| (*v, TICK.1))) {
        if let Some(x) = across(area, graduation, value) {
            strokes.push(vec![pt(x, area.y1), pt(x, area.y1 - length)]);
            if framed {
                strokes.push(vec![pt(x, area.y0), pt(x, area.y0 + length)]);
            }
        }
    }
    scene.on(Layer::Frame).add(ink(strokes, Pen::Thin));
    scene.on(Layer::Note);
    for tick in &graduation.major {
        if let Some(x) = across(area, graduation, tick.value) {
            // The texts of the ends stay on the sheet.
            let half = 0.5 * width(&tick.text, SMALL);
            let x = math::max(half + 0.3, math::min(scene.width - half - 0.3, x));
            let text = Text::new(pt(x, area.y1 + 2.1 + SMALL), &tick.text).sized(SMALL);
            scene.text(text.anchored(Anchor::Middle));
        }
    }
    let title = cut(&axis.caption(), 2.0 * math::min(area.centre().x, scene.width - area.centre().x), TEXT);
    let at = pt(area.centre().x, area.y1 + 6.2 + TEXT);
    scene.text(Text::new(at, &title).anchored(Anchor::Middle));
}

/// Ticks and their texts at the left of a field, the title of the axis above it; ticks at the right too.
fn beside(scene: &mut Scene, area: &Rect, graduation: &Graduation, axis: &Axis, lift: f64) {
    let mut strokes = Vec::new();
    let long = graduation.major.iter().map(|t| (t.value, TICK.0));
    for (value, length) in long.chain(graduation.minor.iter().map(|v| (*v, TICK.1))) {
        if let Some(y) = up(area, graduation, value) {
            strokes.push(vec![pt(area.x0, y), pt(area.x0 + length, y)]);
            strokes.push(vec![pt(area.x1, y), pt(area.x1 - length, y)]);
        }
    }
    scene.on(Layer::Frame).add(ink(strokes, Pen::Thin));
    scene.on(Layer::Note);
    let mut left = area.x0;
    for tick in &graduation.major {
        if let Some(y) = up(area, graduation, tick.value) {
            let text = Text::new(pt(area.x0 - 1.2, y + 0.5 * SMALL), &tick.text).sized(SMALL).anchored(Anchor::End);
            left = math::min(left, text.area().x0);
            scene.text(text);
        }
    }
    let title = cut(&axis.caption(), area.x1 - left, TEXT);
    scene.text(Text::new(pt(left, area.y0 - 2.2 - lift), &title));
}

/// Room at the left of a field for the tick texts of an axis, mm.
#[must_use]
pub fn margin(axis: &Axis, data: &[f64], height: f64) -> f64 {
    let graduation = axis.graduate(data, height, Along::Up);
    let texts = graduation.into_iter().flat_map(|g| g.major);
    texts.map(|t| width(&t.text, SMALL)).fold(3.0, math::max) + 1.6
}

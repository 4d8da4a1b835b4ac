//! A level of the site with its elevation: a triangle on it, a line to its words where they stand free.

use super::clear::Clear;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::{Fill, Item, Shape};
use crate::render::lettering::{Anchor, Text, text_width};
use crate::render::level::LevelKind;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

/// Height and half the width of a triangle, mm.
const TRIANGLE: (f64, f64) = (1.9, 1.15);
/// Room between the foot of capitals and the line that words stand on, mm: descenders stay clear of it.
pub fn over(size: f64) -> f64 {
    0.33 * size + 0.4
}

/// A level with its words, the longest first.
pub struct Tag<'a> {
    /// The part of the drawing that it is.
    pub id: &'a str,
    /// What a person calls it.
    pub title: &'a str,
    /// What is written, in the order of preference.
    pub words: Vec<String>,
    /// Height of capitals.
    pub size: f64,
    /// Free surface, or solid edge.
    pub kind: LevelKind,
    /// Whether the triangle hangs under the level: of an invert.
    pub under: bool,
}

impl Tag<'_> {
    /// Draws it where its words stand free and its line crosses least, the first of several points, distances and words
    /// before later ones; tells whether it found a place.
    pub fn place(&self, scene: &mut Scene, tips: &[Point], away: &[(f64, f64)]) -> bool {
        let clear = Clear::of(scene);
        let mut best: Option<(usize, Point, Vec<Point>, Text)> = None;
        for (shorter, words) in self.words.iter().enumerate() {
            for &tip in tips {
                let covered = clear.crossings(&self.triangle(tip).grown(-0.15)).min(2);
                // Words that say less weigh as much as one line crossed.
                let least = shorter + 2 * covered;
                for &(dx, dy) in away {
                    if best.as_ref().is_some_and(|(cost, ..)| *cost <= least) {
                        break;
                    }
                    let Some((line, text)) = self.stands(&clear, words, tip, (dx, dy)) else { continue };
                    let cost = least + clear.struck(line[0], line[1]);
                    if best.as_ref().is_none_or(|(other, ..)| cost < *other) {
                        best = Some((cost, tip, line, text));
                    }
                }
            }
        }
        let Some((_, tip, line, text)) = best else { return false };
        self.draw(scene, tip, &line, text);
        true
    }

    fn stands(&self, clear: &Clear, words: &str, tip: Point, (dx, dy): (f64, f64)) -> Option<(Vec<Point>, Text)> {
        let (sign, anchor) = if dx < 0.0 { (-1.0, Anchor::End) } else { (1.0, Anchor::Start) };
        let knee = tip.by(dx, dy);
        let end = knee.by(sign * (text_width(words, self.size) + 0.4), 0.0);
        let text = Text::new(knee.by(sign * 0.4, -over(self.size)), words).sized(self.size).anchored(anchor).cleared();
        let line = vec![tip, knee, end];
        let own = self.triangle(tip);
        let blank = clear.is_blank(&own) && line.windows(2).all(|p| clear.passes(p[0], p[1]));
        (blank && clear.is_free(&text.area())).then_some((line, text))
    }

    fn triangle(&self, tip: Point) -> Rect {
        let (height, half) = TRIANGLE;
        let (y0, y1) = if self.under { (tip.y, tip.y + height) } else { (tip.y - height, tip.y) };
        Rect { x0: tip.x - half, x1: tip.x + half, y0, y1 }
    }

    fn draw(&self, scene: &mut Scene, tip: Point, line: &[Point], text: Text) {
        let area = self.triangle(tip);
        let base = if self.under { area.y1 } else { area.y0 };
        let fill = if self.kind == LevelKind::Solid { Fill::Ink } else { Fill::Paper };
        scene.part(self.id, self.title, |scene| {
            scene.on(Layer::Level).polyline(line, Pen::Thin);
            let ring = vec![tip, pt(area.x0, base), pt(area.x1, base)];
            scene.add(Item::Shape(Shape::Path { rings: vec![ring], closed: true, pen: Some(Pen::Thin), fill }));
            scene.text(text);
        });
    }
}

//! A level of the site with its elevation: a triangle on it, a line to its words where they stand free.

use super::clear::Clear;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::{Fill, Item, Shape};
use crate::render::level::LevelKind;
use crate::render::lettering::{Anchor, Text, text_width};
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
    /// Draws it at the first point at which it stands free, words at the first of several distances from that; tells whether
    /// it found a place.
    pub fn place(&self, scene: &mut Scene, tips: &[Point], away: &[(f64, f64)]) -> bool {
        let clear = Clear::of(scene);
        for words in &self.words {
            for &tip in tips {
                for &(dx, dy) in away {
                    if let Some((line, text)) = self.stands(&clear, words, tip, (dx, dy)) {
                        self.draw(scene, tip, &line, text);
                        return true;
                    }
                }
            }
        }
        false
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

//! Lines across a field: limits, design values, floors.

use super::label::{SMALL, apart, cut, place};
use super::plot::ink;
use super::value;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::{Anchor, Text, text_width};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

/// A line at one value, with its name.
#[derive(Debug, Clone, PartialEq)]
pub struct Bound {
    /// The value.
    pub at: f64,
    /// What it is: `limit 15 mg/L`.
    pub name: String,
    /// Whether it may not be passed; short strokes stand on the forbidden side, the greater one.
    pub limit: bool,
}

impl Bound {
    /// A value not to be passed.
    #[must_use]
    pub fn limit(at: f64, name: &str) -> Bound {
        Bound { at, name: name.to_owned(), limit: true }
    }

    /// A value of interest.
    #[must_use]
    pub fn note(at: f64, name: &str) -> Bound {
        Bound { limit: false, ..Bound::limit(at, name) }
    }

    /// Its line, read from `from` to `to` with the forbidden side at the left hand (above a level
    /// line drawn to the right, to the right of an upright one drawn down).
    pub(super) fn stroke(&self, scene: &mut Scene, from: Point, to: Point) {
        if !self.limit {
            scene.line(from, to, Pen::Centre);
            return;
        }
        scene.line(from, to, Pen::Outline);
        let length = from.distance(to);
        let (ux, uy) = if length > 0.0 { ((to.x - from.x) / length, (to.y - from.y) / length) } else { (1.0, 0.0) };
        // Strokes at 45 degrees in pairs, as a draughtsman marks solid ground.
        let along = (0..2000_u16).map(|k| 1.0 + 2.4 * f64::from(k)).take_while(|s| s + 1.1 <= length);
        let foot = along.map(|s| from.toward(to, s));
        let strokes = foot.map(|p| vec![p, p.by(1.1 * (ux + uy), 1.1 * (uy - ux))]).collect();
        scene.add(ink(strokes, Pen::Hatching));
    }

    /// Its name in a key, where the value is told unless the name does.
    pub(super) fn keyed(&self, unit: &str) -> String {
        let number = value(self.at);
        if self.name.contains(&number) { self.name.clone() } else { format!("{}: {number} {unit}", self.name) }
    }

    /// Draws it level across a field at `y`; whether its name found a place on or under the line.
    pub(super) fn level(&self, scene: &mut Scene, area: &Rect, y: f64, named: bool) -> bool {
        scene.on(Layer::Centre);
        self.stroke(scene, pt(area.x0, y), pt(area.x1, y));
        if !named {
            return true;
        }
        let name = Text::new(pt(0.0, 0.0), &cut(&self.name, 0.6 * area.width(), SMALL)).sized(SMALL).cleared();
        let (over, under) = (y - if self.limit { 2.2 } else { 1.3 }, y + 1.2 + SMALL);
        let (left, right) = (area.x0 + 3.0, area.x1 - 3.0);
        let mut seats = Vec::new();
        for base in [over, under] {
            for (x, anchor) in [(left, Anchor::Start), (right, Anchor::End), (area.centre().x, Anchor::Middle)] {
                seats.push(Text { at: pt(x, base), anchor, ..name.clone() });
            }
        }
        scene.on(Layer::Note);
        place(scene, seats.into_iter().filter(|t| area.holds(&t.area())), 4)
    }
}

/// Draws lines upright across a field, each at its x. Names wanted stand side by side above the field,
/// each over its line; the indices of those that cannot are returned.
pub(super) fn uprights(scene: &mut Scene, area: &Rect, lines: &[(usize, &Bound, f64)], keyed: &[usize]) -> Vec<usize> {
    scene.on(Layer::Centre);
    for (_, bound, x) in lines {
        bound.stroke(scene, pt(*x, area.y0), pt(*x, area.y1));
    }
    let text = |bound: &Bound| cut(&bound.name, 0.5 * scene.width, SMALL);
    let mut named: Vec<(usize, f64, String)> =
        lines.iter().filter(|(k, ..)| !keyed.contains(k)).map(|&(k, bound, x)| (k, x, text(bound))).collect();
    named.retain(|(_, _, text)| !text.is_empty());
    named.sort_by(|a, b| a.1.total_cmp(&b.1));
    let wide: Vec<f64> = named.iter().map(|n| text_width(&n.2, SMALL)).collect();
    let (Some(first), Some(last)) = (wide.first(), wide.last()) else {
        return Vec::new();
    };
    let (low, high) = (1.5 + 0.5 * first, scene.width - 1.5 - 0.5 * last);
    let wished: Vec<f64> = named.iter().map(|n| n.1).collect();
    let room = |k: usize| 0.5 * (wide[k - 1] + wide[k]) + 2.5;
    let over = |c: f64, k: usize| (c - wished[k]).abs() <= 0.5 * wide[k];
    let places = apart(&wished, room, low, high).filter(|p| p.iter().enumerate().all(|(k, c)| over(*c, k)));
    let Some(places) = places else {
        // The longest name goes to the key; the others try again without it.
        let longest = (0..wide.len()).max_by(|a, b| wide[*a].total_cmp(&wide[*b]));
        return longest.and_then(|k| named.get(k)).map(|n| n.0).into_iter().collect();
    };
    scene.on(Layer::Note);
    for ((_, _, text), x) in named.iter().zip(places) {
        scene.text(Text::new(pt(x, area.y0 - 1.4), text).sized(SMALL).anchored(Anchor::Middle));
    }
    Vec::new()
}

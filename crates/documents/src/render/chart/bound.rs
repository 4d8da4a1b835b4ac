//! Lines across a field: limits, design values, floors.

use super::brief;
use super::label::{SMALL, apart, cut, letters, width};
use super::plot::ink;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::Anchor;
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
        let number = brief(self.at);
        if self.name.contains(&number) { self.name.clone() } else { format!("{}: {number} {unit}", self.name) }
    }

    /// Draws it level across a field at `y`.
    pub(super) fn level(&self, scene: &mut Scene, frame: &Rect, y: f64) {
        scene.on(Layer::Centre);
        self.stroke(scene, pt(frame.x0, y), pt(frame.x1, y));
    }
}

/// Draws lines upright across a field, each at its x. Names wanted stand side by side above the field between two ends,
/// each over its line; the indices of those that cannot are returned.
pub(super) fn uprights(
    scene: &mut Scene,
    frame: &Rect,
    lines: &[(usize, &Bound, f64)],
    keyed: &[usize],
    ends: (f64, f64),
) -> Vec<usize> {
    scene.on(Layer::Centre);
    for (_, bound, x) in lines {
        bound.stroke(scene, pt(*x, frame.y0), pt(*x, frame.y1));
    }
    let text = |bound: &Bound| cut(&bound.name, 0.5 * scene.width, SMALL);
    let mut named: Vec<(usize, f64, String)> =
        lines.iter().filter(|(k, ..)| !keyed.contains(k)).map(|&(k, bound, x)| (k, x, text(bound))).collect();
    named.retain(|(_, _, text)| !text.is_empty());
    named.sort_by(|a, b| a.1.total_cmp(&b.1));
    let wide: Vec<f64> = named.iter().map(|n| width(&n.2, SMALL)).collect();
    let (Some(first), Some(last)) = (wide.first(), wide.last()) else {
        return Vec::new();
    };
    let (low, high) = (ends.0 + 0.5 * first, ends.1 - 0.5 * last);
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
        scene.text(letters(pt(x, frame.y0 - 1.6), text).anchored(Anchor::Middle));
    }
    Vec::new()
}

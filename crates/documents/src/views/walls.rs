//! An outline with its walls around it.

use crate::render::geometry::{Point, Rect};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::cut;
use crate::section::place::{Section, WALL};
use stillrise_units::{Length, Typed, math};

/// Draws the walls of an outline on paper, which runs clockwise there; `open` leaves out the wall from its last point to its
/// first. The room inside is paper.
pub fn draw(s: &Section, scene: &mut Scene, inner: &[Point], open: bool) {
    let count = inner.len();
    if count < 3 {
        return;
    }
    let normal = |k: usize| {
        let (a, b) = (inner[k % count], inner[(k + 1) % count]);
        let length = a.distance(b);
        if length > 0.0 { ((b.y - a.y) / length, (a.x - b.x) / length) } else { (0.0, 0.0) }
    };
    let outer = |k: usize| {
        let before = (k + count - 1) % count;
        let (n, m) = match (open && k == 0, open && k + 1 == count) {
            (true, _) => (normal(k), normal(k)),
            (_, true) => (normal(before), normal(before)),
            _ => (normal(before), normal(k)),
        };
        let share = s.wall() / math::max(1.0 + n.0 * m.0 + n.1 * m.1, 0.1);
        inner[k].by(share * (n.0 + m.0), share * (n.1 + m.1))
    };
    let around: Vec<Point> = (0..count).map(outer).collect();
    scene.part("shell", "Walls", |scene| {
        scene.on(Layer::Vessel);
        let fill = if s.wall_is_true() { Fill::Hatch(cut(s)) } else { Fill::Ink };
        if open {
            let ring: Vec<Point> = inner.iter().copied().chain(around.iter().rev().copied()).collect();
            scene.polygon(&ring, Some(if s.wall_is_true() { Pen::Outline } else { Pen::Hatching }), fill);
        } else {
            // Strip by strip: a ring has a hole, which a polygon has not.
            for k in 0..count {
                let next = (k + 1) % count;
                scene.polygon(&[inner[k], inner[next], around[next], around[k]], None, fill);
            }
            if s.wall_is_true() {
                scene.polygon(inner, Some(Pen::Outline), Fill::None);
                scene.polygon(&around, Some(Pen::Outline), Fill::None);
            }
        }
    });
}

/// Both faces of each wall between parallel channels, from one side wall; none in a unit without channels.
pub fn between_channels(s: &Section) -> Vec<(Length, Length)> {
    s.channels().windows(2).map(|pair| (pair[0].1, pair[1].0)).collect()
}

/// Such a wall where it is cut: as the others, or as a line where its thickness is not known.
pub fn between(s: &Section, scene: &mut Scene, area: &Rect) {
    scene.on(Layer::Internals);
    let thin = area.width() < WALL || area.height() < WALL;
    let by = |x: f64, y: f64| Rect { x0: area.x0 - x, x1: area.x1 + x, y0: area.y0 - y, y1: area.y1 + y };
    match (thin, area.width() < area.height()) {
        (false, _) => scene.rect(area, Some(Pen::Outline), Fill::Hatch(cut(s))),
        (true, true) => scene.rect(&by(0.35, 0.0), None, Fill::Ink),
        (true, false) => scene.rect(&by(0.0, 0.35), None, Fill::Ink),
    };
}

/// One side of a shape that is symmetrical: half its width at places from one end to the other, dense at both ends, where it
/// may be curved. What goes on straight needs no place of its own.
pub fn side(from: Length, to: Length, width: impl Fn(Length) -> Length) -> Vec<(Length, Length)> {
    const PLACES: u16 = 48;
    let mut all: Vec<(Length, Length)> = Vec::new();
    for k in 0..=PLACES {
        let share = 0.5 * (1.0 - math::cos(core::f64::consts::PI * f64::from(k) / f64::from(PLACES)));
        let at = from + (to - from) * share;
        let own = width(at) * 0.5;
        let same = |known: &(Length, Length)| (known.1 - own).si().abs() < 1e-9;
        if matches!(all.as_slice(), [.., a, b] if same(a) && same(b)) {
            all.pop();
        }
        all.push((at, own));
    }
    all
}

/// A ring of points without those that stand on each other.
pub fn ring(points: impl Iterator<Item = Point>) -> Vec<Point> {
    let mut all: Vec<Point> = points.collect();
    all.dedup_by(|a, b| a.distance(*b) < 1e-6);
    if matches!(all.as_slice(), [first, .., last] if first.distance(*last) < 1e-6) {
        all.pop();
    }
    all
}

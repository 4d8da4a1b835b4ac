//! An outline with its walls around it.

use crate::render::geometry::Point;
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::place::Section;
use stillrise_units::math;

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
        let fill = if s.wall_is_true() { Fill::Hatch(s.cut()) } else { Fill::Ink };
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

/// What a cut wall looks like.
impl Section<'_> {
    fn cut(&self) -> Hatch {
        let of_concrete = |material: &String| material.to_lowercase().contains("concrete");
        if self.unit().particulars.material.as_ref().is_some_and(of_concrete) {
            Hatch::Concrete
        } else {
            Hatch::Section
        }
    }
}

//! What a unit above the ground stands on: outlined as a part of others, down to where its drain leaves room.

use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::place::{Section, zero};
use stillrise_units::Length;

/// How far under the floor the drawing reaches: to the ground or to what the unit stands on, else to its lowest point.
pub fn depth(s: &Section) -> Length {
    let lowest = zero() - s.unit().shape.bottom();
    base(s).filter(|base| *base > lowest).unwrap_or(lowest)
}

/// How far under the floor the unit stands on something; nothing of one that stands on its floor, is built in or lies in the
/// ground.
pub fn base(s: &Section) -> Option<Length> {
    let performance = s.performance?;
    let under = zero() - s.unit().shape.bottom();
    let room = performance.site.installation.drain_room.q;
    crate::scope::has_supports(performance, s.train).then(|| under + room)
}

/// Draws it between two places across the view, in view coordinates.
pub fn draw(s: &Section, scene: &mut Scene, (from, to): (Length, Length)) {
    let Some(base) = base(s) else { return };
    let low = zero() - base;
    scene.part("support", "Supports, by the maker", |scene| {
        scene.on(Layer::Vessel);
        let leg = (to - from) * 0.03;
        let under = s.wall();
        for (a, b) in [(from + leg, from + leg * 2.0), (to - leg * 2.0, to - leg)] {
            let (p, q) = (s.at(a, zero()).by(0.0, under), s.at(b, low));
            scene.rect(&Rect { x0: p.x, y0: p.y, x1: q.x, y1: q.y }, Some(Pen::Phantom), Fill::None);
        }
        let (p, q) = (s.at(from, low).by(-6.0, 0.0), s.at(to, low).by(6.0, 0.0));
        scene.on(Layer::Ground).line(p, q, Pen::Outline);
        let mut x = p.x + 1.5;
        while x < q.x {
            scene.line(pt(x, p.y), pt(x - 1.2, p.y + 1.6), Pen::Thin);
            x += 3.0;
        }
    });
}

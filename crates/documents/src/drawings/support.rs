//! What a unit above the ground stands on: outlined as a part of others, down to where its drain leaves room.

use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::place::{Section, zero};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, System, Typed, math};

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

/// Four legs at the corners, outside the side walls, so that they stand clear of the hopper, which is as wide as the unit. How many
/// there are and where is the maker's; every sheet draws the same ones.
pub struct Legs {
    /// Stations of their middles.
    pub x: [Length; 2],
    /// Places of their middles across the unit, from the inside of a side wall.
    pub y: [Length; 2],
    /// How thick one is, nominal.
    pub size: Length,
}

/// The legs; nothing of a unit without.
pub fn legs(s: &Section) -> Option<Legs> {
    base(s)?;
    let (shape, wall) = (&s.unit().shape, s.unit().particulars.wall.map_or(zero(), |wall| wall.q));
    // A round size, so that their places come out round where the unit's do.
    let (unit, step) = match s.system {
        System::Us => (&IN, 1.0),
        System::Si => (&MM, 10.0),
    };
    let steps = math::max(math::floor((shape.length() * 0.03).in_unit(unit) / step + 0.5), 1.0);
    let size = Length::of(steps * step, unit);
    let out = wall + size;
    Some(Legs { x: [size, shape.length() - size], y: [zero() - out, shape.width() + out], size })
}

/// How far they stand out beside the walls on paper, mm.
pub fn beside(s: &Section) -> f64 {
    legs(s).map_or(0.0, |legs| s.view.scale.mm(legs.size) * 1.5)
}

/// Draws them in the long section, where the hopper does not hide them, and what they stand on.
pub fn along(s: &Section, scene: &mut Scene) {
    let (Some(base), Some(legs)) = (base(s), legs(s)) else { return };
    let low = zero() - base;
    scene.part("support", "Supports, by the maker", |scene| {
        for x in legs.x {
            let (a, b) = (x - legs.size * 0.5, x + legs.size * 0.5);
            let top = |x: Length| s.at(x, s.unit().floor_at(x)).by(0.0, s.wall());
            scene.on(Layer::Vessel).polygon(
                &[top(a), top(b), s.at(b, low), s.at(a, low)],
                Some(Pen::Phantom),
                Fill::None,
            );
        }
        ground(s, scene, (legs.x[0], legs.x[1]), low);
    });
}

/// Draws them across the unit.
pub fn across(s: &Section, scene: &mut Scene) {
    let (Some(base), Some(legs)) = (base(s), legs(s)) else { return };
    let (low, top) = (zero() - base, s.unit().shape.height() * 0.3);
    scene.part("support", "Supports, by the maker", |scene| {
        for y in legs.y {
            let (p, q) = (s.at(y - legs.size * 0.5, top), s.at(y + legs.size * 0.5, low));
            scene.on(Layer::Vessel).rect(&Rect { x0: p.x, y0: p.y, x1: q.x, y1: q.y }, Some(Pen::Phantom), Fill::None);
        }
        ground(s, scene, (legs.y[0], legs.y[1]), low);
    });
}

/// Draws them from above.
pub fn above(s: &Section, scene: &mut Scene) {
    let Some(legs) = legs(s) else { return };
    scene.part("support", "Supports, by the maker", |scene| {
        let half = legs.size * 0.5;
        for x in legs.x {
            for y in legs.y {
                let (p, q) = (s.at(x - half, y + half), s.at(x + half, y - half));
                let area = Rect { x0: p.x, y0: p.y, x1: q.x, y1: q.y };
                scene.on(Layer::Vessel).rect(&area, Some(Pen::Phantom), Fill::None);
            }
        }
    });
}

/// What they stand on.
fn ground(s: &Section, scene: &mut Scene, (from, to): (Length, Length), low: Length) {
    let (p, q) = (s.at(from, low).by(-6.0, 0.0), s.at(to, low).by(6.0, 0.0));
    scene.on(Layer::Ground).line(p, q, Pen::Outline);
    let mut x = p.x + 1.5;
    while x < q.x {
        scene.line(pt(x, p.y), pt(x - 1.2, p.y + 1.6), Pen::Thin);
        x += 3.0;
    }
}

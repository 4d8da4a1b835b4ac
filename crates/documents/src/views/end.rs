//! The unit from its end, as the projection asks: with third-angle projection from the outlet, with first-angle from the inlet.

use super::walls;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::place::{Section, zero};
use stillrise_units::{Length, System, math};

/// What it is called.
pub fn name(s: &Section) -> &'static str {
    match s.system {
        System::Us => "Outlet end",
        System::Si => "Inlet end",
    }
}

/// Draws it.
pub fn draw(s: &Section, scene: &mut Scene) {
    let unit = s.unit();
    let (shape, middle) = (&unit.shape, s.broad() * 0.5);
    let whole = outline(s, shape.length() * 0.5, (zero(), shape.height()));
    scene.part("shell", "Shell", |scene| {
        if let Some((a, b)) = s.hopper() {
            let ring = outline(s, (a + b) * 0.5, (shape.bottom(), zero()));
            scene.on(Layer::Vessel).polygon(&ring, Some(Pen::Outline), Fill::Paper);
        }
        scene.on(Layer::Vessel).polygon(&whole, Some(Pen::Outline), Fill::Paper);
    });
    let rim = (s.at(zero(), shape.height()), s.at(s.broad(), shape.height()));
    if unit.body.is_open() {
        scene.part("cover", "Cover", |scene| {
            let lid =
                Rect { x0: rim.0.x - s.wall() - 1.5, y0: rim.0.y - 1.0, x1: rim.1.x + s.wall() + 1.5, y1: rim.0.y };
            scene.on(Layer::Vessel).rect(&lid, Some(crate::section::lid_pen(s)), Fill::Paper);
        });
    } else if let Some(access) = &unit.access {
        let top = if s.cover().is_some() { s.top() } else { shape.height() + access.opening.q * 0.3 };
        let half = access.opening.q * 0.5;
        scene.part("manway", "Manways with risers", |scene| {
            let (a, b) = (s.at(middle - half, shape.height()), s.at(middle + half, top));
            scene.on(Layer::Vessel).rect(&Rect { x0: a.x, y0: b.y, x1: b.x, y1: a.y }, Some(Pen::Outline), Fill::Paper);
        });
    }
    let (inlet, outlet) = (&unit.inlet, &unit.outlet);
    let (id, title, mark, invert, bore) = match s.system {
        System::Us => ("outlet", "Outlet nozzle", "N2", outlet.invert.q, outlet.bore.q),
        System::Si => ("inlet", "Inlet nozzle", "N1", inlet.invert.q, inlet.bore.q),
    };
    let centre = s.at(middle, invert + bore * 0.5);
    let radius = 0.5 * s.view.scale.mm(bore);
    scene.part(id, title, |scene| {
        scene.on(Layer::Piping).circle(centre, radius + 1.6, Some(Pen::Medium), Fill::Paper);
        scene.circle(centre, radius, Some(Pen::Outline), Fill::Paper);
        scene.on(Layer::Centre).line(centre.by(-radius - 3.0, 0.0), centre.by(radius + 3.0, 0.0), Pen::Centre);
    });
    let low = s.at(zero(), zero() - crate::drawings::depth(s)).y + if s.wall_is_true() { s.wall() } else { 0.0 };
    scene.on(Layer::Centre).line(pt(centre.x, s.at(zero(), s.top()).y - 4.0), pt(centre.x, low + 2.0), Pen::Centre);
    let at = centre.by(0.7 * radius, -0.7 * radius);
    let places = [(14.0, -3.0), (12.0, -6.0), (9.0, -14.0), (14.0, 0.0), (-12.0, -9.0), (12.0, 8.0)];
    let balloon =
        crate::render::mark::Balloon { tip: at, centre: at, number: mark.to_owned(), heavy: false, dot: true };
    scene.on(Layer::Note).place(balloon.at(places.map(|(x, y)| at.by(x, y))));
    s.view.title(scene, pt(centre.x, low + 9.5));
}

/// The inside at a station between two levels, as the outside would be seen: the wall around it.
fn outline(s: &Section, x: Length, (low, high): (Length, Length)) -> Vec<Point> {
    let side = walls::side(low, high, |z| s.broad_at(x, z));
    let middle = s.broad() * 0.5;
    let out = s.wall();
    let right = side.iter().rev().map(|(z, own)| s.at(middle + *own, *z));
    let left = side.iter().map(|(z, own)| s.at(middle - *own, *z));
    let inner = walls::ring(right.chain(left));
    // Outward by the wall's thickness, from the middle of the ring.
    let around = Rect::around(&inner).unwrap_or(Rect::new(0.0, 0.0, 0.0, 0.0));
    let centre = around.centre();
    let (wide, high) = (math::max(0.5 * around.width(), 1e-9), math::max(0.5 * around.height(), 1e-9));
    let round = inner.len() > 12;
    inner
        .into_iter()
        .map(|p| {
            if round {
                let far = p.distance(centre);
                p.toward(centre, -out * if far > 0.0 { 1.0 } else { 0.0 })
            } else {
                let (x, y) = ((p.x - centre.x) / wide, (p.y - centre.y) / high);
                p.by(out * x.clamp(-1.0, 1.0), if y > 0.0 { out } else { 0.0 })
            }
        })
        .collect()
}

//! Walls, cover and nozzles. Walls are as thick as stated where that can be drawn, else nominal, as stubs are.

use super::corners;
use super::place::{STUB, Section, WALL, zero};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_design::stages::Place;
use stillrise_units::{Length, Typed, math};

/// Thickness of a flange on paper, mm, and how far it stands over the pipe.
const FLANGE: (f64, f64) = (1.1, 1.6);

/// Length of the drain's stub on paper with its flange, mm.
const LONG: f64 = 4.5;
/// How far the flange of the draw-off stands over its bore, and the least radius of that, on paper, mm.
const RING: f64 = 0.9;
const LEAST_BORE: f64 = 0.7;

/// How far the ground beside a unit that is built into it reaches at the side of its dimensions, mm: not as far as these.
pub const BESIDE: f64 = 4.6;

/// Draws vessel, cover and nozzles.
pub fn draw(s: &Section, scene: &mut Scene) {
    walls(s, scene);
    let (into, out) = (&s.unit().inlet, &s.unit().outlet);
    if s.unit().body.is_open() {
        scene.part("cover", "Cover", |scene| cover(s, scene));
    } else {
        scene.part("manway", "Manways with risers", |scene| risers(s, scene));
    }
    if s.cover().is_some() {
        scene.part("ground", "Ground", |scene| ground(s, scene));
    }
    if let Some(level) = s.grade() {
        scene.part("ground", "Ground", |scene| grade(s, scene, level));
    }
    scene.part("inlet", "Inlet nozzle", |scene| pipe(s, scene, into.invert.q, into.bore.q, false));
    scene.part("outlet", "Outlet nozzle", |scene| pipe(s, scene, out.invert.q, out.bore.q, true));
    scene.part("oil-draw", "Oil draw-off nozzle", |scene| {
        let (centre, radius) = oil_draw(s);
        scene.on(Layer::Piping).circle(centre, radius, Some(Pen::Medium), Fill::Paper);
        scene.circle(centre, radius - RING, Some(Pen::Thin), Fill::None);
        scene.on(Layer::Centre).line(centre.by(-radius - 1.4, 0.0), centre.by(radius + 1.4, 0.0), Pen::Thin);
        scene.line(centre.by(0.0, -radius - 1.4), centre.by(0.0, radius + 1.4), Pen::Thin);
    });
    if let Some(top) = suction(s) {
        scene.part("drain", "Sludge suction pipe", |scene| {
            let low = s.at(zero(), s.unit().shape.bottom()).y - 1.5;
            scene.on(Layer::Piping).rect(
                &Rect { x0: top.x - 0.8, y0: top.y - 4.0, x1: top.x + 0.8, y1: low },
                None,
                Fill::Paper,
            );
            for side in [-0.8, 0.8] {
                scene.line(pt(top.x + side, top.y - 4.0), pt(top.x + side, low), Pen::Outline);
            }
            let flange = Rect::new(top.x - 0.8 - FLANGE.1, top.y - 4.0 - FLANGE.0, 1.6 + 2.0 * FLANGE.1, FLANGE.0);
            scene.rect(&flange, Some(Pen::Medium), Fill::Paper);
        });
    }
    if let Some(top) = drain(s) {
        scene.part("drain", "Sludge drain nozzle", |scene| {
            // Not below what the unit stands on.
            let room = crate::drawings::base(s).map_or(LONG, |base| s.at(zero(), zero() - base).y - top.y - 0.4);
            let long = math::max(math::min(room - FLANGE.0, LONG - 0.6), 0.8);
            scene.on(Layer::Piping).rect(&Rect::new(top.x - 1.2, top.y - 0.1, 2.4, long), None, Fill::Paper);
            for side in [-1.2, 1.2] {
                scene.line(top.by(side, 0.0), top.by(side, long), Pen::Outline);
            }
            let flange = Rect::new(top.x - 1.2 - FLANGE.1, top.y + long, 2.4 + 2.0 * FLANGE.1, FLANGE.0);
            scene.rect(&flange, Some(Pen::Medium), Fill::Paper);
        });
    }
}

/// Each edge of the outline as a strip of the wall's thickness; the open top is left to the cover.
fn walls(s: &Section, scene: &mut Scene) {
    let shape = &s.unit().shape;
    let outline = shape.outline();
    let inner: Vec<Point> = outline.iter().map(|&(x, z)| s.at(x, z)).collect();
    let count = inner.len();
    let lid = s.unit().body.is_open();
    let open = |k: usize| lid && outline[k].1 == shape.height() && outline[(k + 1) % count].1 == shape.height();
    // The outline runs counter-clockwise, so that its outside lies to the right.
    let normal = |k: usize| {
        let (a, b) = (inner[k], inner[(k + 1) % count]);
        let length = a.distance(b);
        if length > 0.0 { ((a.y - b.y) / length, (b.x - a.x) / length) } else { (0.0, 0.0) }
    };
    let outer = |k: usize| {
        let before = (k + count - 1) % count;
        let (n, m) = match (open(before), open(k)) {
            (true, _) => (normal(k), normal(k)),
            (_, true) => (normal(before), normal(before)),
            _ => (normal(before), normal(k)),
        };
        let share = s.wall() / math::max(1.0 + n.0 * m.0 + n.1 * m.1, 0.1);
        inner[k].by(share * (n.0 + m.0), share * (n.1 + m.1))
    };
    for k in (0..count).filter(|&k| !open(k)) {
        let next = (k + 1) % count;
        let below = outline[k].1 < zero() || outline[next].1 < zero();
        let (id, title) = if below { ("hopper", "Sludge hopper") } else { ("shell", "Shell") };
        scene.part(id, title, |scene| {
            let strip = [inner[k], inner[next], outer(next), outer(k)];
            scene.on(Layer::Vessel);
            if s.wall_is_true() {
                // Walls and floor are of one piece: no line parts them at a corner.
                scene.polygon(&strip, None, Fill::Hatch(cut(s)));
                scene.line(strip[0], strip[1], Pen::Outline);
                scene.line(strip[3], strip[2], Pen::Outline);
                for (end, beside) in [((0, 3), (k + count - 1) % count), ((1, 2), next)] {
                    if open(beside) {
                        scene.line(strip[end.0], strip[end.1], Pen::Outline);
                    }
                }
            } else {
                scene.polygon(&strip, Some(Pen::Hatching), Fill::Ink);
            }
        });
    }
}

/// What a cut wall looks like.
pub fn cut(s: &Section) -> Hatch {
    let of_concrete = |material: &String| material.to_lowercase().contains("concrete");
    if s.unit().particulars.material.as_ref().is_some_and(of_concrete) { Hatch::Concrete } else { Hatch::Section }
}

/// The ground beside a unit that is built into it.
fn grade(s: &Section, scene: &mut Scene, level: Length) {
    let (left, right) = (s.at(zero(), level), s.at(s.unit().shape.length(), level));
    scene.on(Layer::Vessel);
    for (from, to) in [(left.x - s.wall() - BESIDE, left.x - s.wall()), (right.x + s.wall(), right.x + s.wall() + STUB)]
    {
        scene.line(pt(from, left.y), pt(to, left.y), Pen::Outline);
        let mut mark = from + 1.5;
        while mark + 0.2 < to {
            scene.line(pt(mark, left.y), pt(mark - 1.2, left.y + 1.6), Pen::Thin);
            mark += 2.5;
        }
    }
}

/// The cover, a flat lid on the rim.
fn cover(s: &Section, scene: &mut Scene) {
    let rim = s.unit().shape.height();
    let (a, b) = (s.at(zero(), rim), s.at(s.unit().shape.length(), rim));
    let lid = Rect { x0: a.x - s.wall() - 1.5, y0: a.y - 1.0, x1: b.x + s.wall() + 1.5, y1: a.y };
    scene.on(Layer::Vessel).rect(&lid, Some(lid_pen(s)), Fill::Paper);
}

/// A cover that nobody has decided is drawn in broken lines.
pub fn lid_pen(s: &Section) -> Pen {
    if s.unit().arrangement.is_built_in() { Pen::Phantom } else { Pen::Medium }
}

/// Where the manways stand: from over the plates, or the open water, to over where oil is drawn; nominal.
pub fn manways(s: &Section) -> Vec<Length> {
    let Some(access) = &s.unit().access else { return Vec::new() };
    let middle = |(from, to): (Length, Length)| from + (to - from) * 0.5;
    let count = access.count.q.si();
    let first = match s.zone(Place::PlatePack).filter(|_| count < 2.5) {
        Some(pack) => middle(pack),
        None => middle(s.zone(Place::GravityZone).unwrap_or_else(|| s.oil_zone())),
    };
    let last = middle(s.oil_end());
    let mut all = Vec::new();
    let mut k = 0.0;
    while k < count && all.len() < 12 {
        all.push(first + (last - first) * (k / math::max(count - 1.0, 1.0)));
        k += 1.0;
    }
    all
}

/// Risers over the manways, up to the ground or a little over the vessel.
fn risers(s: &Section, scene: &mut Scene) {
    let Some(access) = &s.unit().access else { return };
    let (crown, half) = (s.unit().shape.height(), access.opening.q * 0.5);
    let top = if s.cover().is_some() { s.top() } else { crown + access.opening.q * 0.3 };
    for x in manways(s) {
        let (a, b) = (s.at(x - half, crown), s.at(x + half, top));
        scene.on(Layer::Vessel).rect(&Rect { x0: a.x, y0: b.y, x1: b.x, y1: a.y + 0.2 }, None, Fill::Paper);
        for side in [a.x, b.x] {
            let wall = Rect { x0: side - 0.5 * WALL, y0: b.y, x1: side + 0.5 * WALL, y1: a.y };
            scene.rect(&wall, None, Fill::Ink);
        }
        scene.rect(&Rect { x0: a.x - 1.2, y0: b.y - 0.9, x1: b.x + 1.2, y1: b.y }, Some(Pen::Medium), Fill::Paper);
    }
}

/// The ground over a vessel that lies in it, open where a riser comes up.
fn ground(s: &Section, scene: &mut Scene) {
    let y = s.at(zero(), s.top()).y;
    let half = s.unit().access.as_ref().map_or(0.0, |access| s.view.scale.mm(access.opening.q) * 0.5 + 1.2);
    let mut from = s.at(zero(), zero()).x - s.wall() - STUB;
    let end = s.at(s.unit().shape.length(), zero()).x + s.wall() + STUB;
    scene.on(Layer::Vessel);
    let gaps: Vec<f64> = manways(s).into_iter().map(|x| s.at(x, zero()).x).collect();
    for x in gaps.into_iter().chain([end + half]) {
        let to = math::min(x - half, end);
        if to > from {
            scene.line(pt(from, y), pt(to, y), Pen::Outline);
            let mut mark = from + 1.0;
            while mark + 1.5 < to {
                scene.line(pt(mark, y), pt(mark - 1.2, y + 1.6), Pen::Thin);
                mark += 4.0;
            }
        }
        from = x + half;
    }
}

/// A pipe stub with its flange through an end wall or head, from where that stands at its height to clear of the end.
fn pipe(s: &Section, scene: &mut Scene, invert: Length, bore: Length, outlet: bool) {
    let side = if outlet { 1.0 } else { -1.0 };
    let root = |z: Length| s.at(s.end_at(z, outlet), z);
    let (low, high) = (root(invert), root(invert + bore));
    let tip = s.at(if outlet { s.unit().shape.length() } else { zero() }, invert).x;
    let end = tip + side * (s.wall() + STUB);
    let hole = [low.by(-0.3 * side, 0.0), high.by(-0.3 * side, 0.0), pt(end, high.y), pt(end, low.y)];
    scene.on(Layer::Piping).polygon(&hole, None, Fill::Paper);
    for from in [low, high] {
        scene.line(from, pt(end, from.y), Pen::Outline);
    }
    let flange = corners(pt(end, high.y - FLANGE.1), pt(end - side * FLANGE.0, low.y + FLANGE.1));
    scene.rect(&flange, Some(Pen::Medium), Fill::Paper);
    // The flow, inside the stub.
    let middle = 0.5 * (low.y + high.y);
    let (near, far) = (tip + side * (s.wall() - 0.5), end - side * 2.0);
    let (tail, tip) = if side < 0.0 { (far, near) } else { (near, far) };
    scene.arrow(pt(tail, middle), pt(tip, middle), Pen::Medium);
}

/// Centre and radius on paper of the oil draw-off, a nozzle in the far side wall.
pub fn oil_draw(s: &Section) -> (Point, f64) {
    // The lowest of its bore stands at the invert.
    let bore = math::max(0.5 * s.draw_bore().map_or(0.0, |bore| s.view.scale.mm(bore)), LEAST_BORE);
    (pt(s.along(s.oil_end(), 0.66), s.at(zero(), s.unit().retention.oil_draw.q).y - bore), bore + RING)
}

/// Where the drain leaves the hopper; nothing of one in the ground or in a pit.
pub fn drain(s: &Section) -> Option<Point> {
    let (a, b) = s.hopper().filter(|_| !s.is_sunk())?;
    Some(s.at((a + b) * 0.5, s.unit().shape.bottom()).by(0.0, s.wall()))
}

/// Where the suction pipe comes out over the hopper of a unit in the ground or in a pit.
pub fn suction(s: &Section) -> Option<Point> {
    let (a, b) = s.hopper().filter(|_| s.is_sunk())?;
    Some(s.at((a + b) * 0.5, s.top()))
}

/// Rectangle on paper that the outlet's stub with its flow arrow takes.
pub fn outlet(s: &Section) -> Rect {
    let well = &s.unit().outlet;
    let low = s.at(s.unit().shape.length(), well.invert.q);
    let high = s.at(s.unit().shape.length(), well.invert.q + well.bore.q);
    Rect { x0: low.x + WALL, y0: high.y - FLANGE.1, x1: low.x + s.wall() + STUB, y1: low.y + FLANGE.1 }
}

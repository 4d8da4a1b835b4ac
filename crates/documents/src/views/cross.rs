//! The unit cut square to the flow.

use super::plan::narrower;
use super::walls;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::mark::Axis;
use crate::render::pen::{Layer, Pen};
use crate::render::scale::Spot;
use crate::render::scene::Scene;
use crate::section::place::{STUB, Section, zero};
use crate::section::vessel::BESIDE;
use crate::section::{every, lid_pen};
use stillrise_design::stages::Place;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::DEG;
use stillrise_units::{Length, Typed, math};

/// Where it is cut: in the middle of the plates, of the bed, or of the open water.
pub fn station(s: &Section) -> Length {
    let zone = [Place::PlatePack, Place::Mesh, Place::GravityZone].into_iter().find_map(|place| s.zone(place));
    let (from, to) = zone.unwrap_or_else(|| s.oil_zone());
    from + (to - from) * 0.5
}

/// Takes away what was drawn where its inside is: the ground around a unit that lies in it.
pub fn cleared(s: &Section, scene: &mut Scene, station: Length) {
    let ring = outline(s, station, (s.unit().floor_at(station), s.unit().shape.height()));
    scene.on(Layer::Ground).polygon(&ring, None, Fill::Paper);
}

/// What is seen of it, without dimensions.
pub fn seen(s: &Section, scene: &mut Scene, station: Length) {
    let unit = s.unit();
    let floor = unit.floor_at(station);
    liquids(s, scene, (station, floor));
    pack(s, scene, station);
    let ring = outline(s, station, (floor, unit.shape.height()));
    let open = unit.body.is_open();
    walls::draw(s, scene, &ring, open);
    channels(s, scene, floor);
    if open {
        let (a, b) = (s.at(zero(), unit.shape.height()), s.at(s.broad(), unit.shape.height()));
        scene.part("cover", "Cover", |scene| {
            let lid = Rect { x0: a.x - s.wall() - 1.5, y0: a.y - 1.0, x1: b.x + s.wall() + 1.5, y1: a.y };
            scene.on(Layer::Vessel).rect(&lid, Some(lid_pen(s)), Fill::Paper);
        });
    }
}

/// Draws it.
pub fn draw(s: &Section, scene: &mut Scene, station: Length) {
    let unit = s.unit();
    let (shape, crest) = (&unit.shape, unit.outlet.crest.q);
    let floor = unit.floor_at(station);
    seen(s, scene, station);
    ground(s, scene);
    let (left, right) = (s.at(zero(), floor), s.at(s.broad(), floor));
    let axis = 0.5 * (left.x + right.x);
    let (top, low) = (s.at(zero(), s.top()).y, left.y + s.wall());
    scene.on(Layer::Centre).line(pt(axis, top - 4.0), pt(axis, low + 3.0), Pen::Centre);
    let line = low + 7.5;
    // Of one that its plates do not fill the width is that of the plates; its own stands in the plan.
    let mut rows: Vec<Spot> = match (pack_width(s, station), &unit.pack) {
        (Some(wide), Some(pack)) => {
            let (middle, z) = (s.broad() * 0.5, pack.laid.bottom.q);
            vec![(middle - wide * 0.5, z), (middle + wide * 0.5, z)]
        }
        _ => vec![(zero(), floor), (s.broad(), floor)],
    };
    let between = walls::between_channels(s).into_iter().flat_map(|(near, far)| [(near, floor), (far, floor)]);
    rows.splice(1..1, between);
    rows.dedup();
    let lowest = s.view.dimensions(scene, Axis::Across, &rows, line, |l| s.write(l));
    let beside = left.x - s.wall();
    s.view.up(scene, (zero(), floor), (zero(), crest), beside - 5.5, &s.write(crest - floor));
    s.view.up(scene, (zero(), floor), (zero(), shape.height()), beside - 14.0, &s.write(shape.height() - floor));
    if let Some(pack) = &unit.pack {
        let wide = narrower(s, station, pack.laid.bottom.q, pack.follows.top.q);
        let edge = s.broad() * 0.5 + wide * 0.5;
        let heights: Vec<Spot> = [floor, pack.laid.bottom.q, pack.follows.top.q].map(|z| (edge, z)).to_vec();
        s.view.dimensions(scene, Axis::Up, &heights, right.x + s.wall() + 8.0, |l| s.write(l));
    }
    s.view.title(scene, pt(axis, lowest + 5.0));
}

/// Width of plates that do not reach from wall to wall.
fn pack_width(s: &Section, station: Length) -> Option<Length> {
    let pack = s.unit().pack.as_ref()?;
    let wide = narrower(s, station, pack.laid.bottom.q, pack.follows.top.q);
    ((s.broad() - wide).si() > 1e-6).then_some(wide)
}

/// The inside at a station between two levels, clockwise on paper from the upper right.
fn outline(s: &Section, x: Length, (low, high): (Length, Length)) -> Vec<Point> {
    let side = walls::side(low, high, |z| s.broad_at(x, z));
    let middle = s.broad() * 0.5;
    let right = side.iter().rev().map(|(z, own)| s.at(middle + *own, *z));
    let left = side.iter().map(|(z, own)| s.at(middle - *own, *z));
    walls::ring(right.chain(left))
}

/// Water and, where it is held here, oil at the alarm.
fn liquids(s: &Section, scene: &mut Scene, (x, floor): (Length, Length)) {
    let crest = s.unit().outlet.crest.q;
    let (ahead, behind) = s.oil_zone();
    let layer = s.layer().filter(|_| x > ahead && x < behind);
    let water = layer.map_or(crest, |alarm| alarm.interface.q);
    let sludge = s.sludge().filter(|level| *level > floor);
    let mut fill = |id: &str, name: &str, (low, high): (Length, Length), hatch: Hatch| {
        if high > low {
            let ring = outline(s, x, (low, high));
            scene.part(id, name, |scene| {
                scene.on(Layer::Liquid).polygon(&ring, None, Fill::Hatch(hatch));
                let half = s.broad_at(x, high) * 0.5;
                let middle = s.broad() * 0.5;
                scene.line(s.at(middle - half, high), s.at(middle + half, high), Pen::Surface);
            });
        }
    };
    fill("water", "Water", (sludge.unwrap_or(floor), water), Hatch::Water);
    if let Some(level) = sludge {
        fill("sludge", "Sludge at its trigger", (floor, level), Hatch::Sludge);
    }
    if let Some(alarm) = layer {
        fill("oil", "Oil at the alarm", (alarm.interface.q, alarm.surface.q), Hatch::Oil);
    }
}

/// The plates as they stand across the flow.
fn pack(s: &Section, scene: &mut Scene, x: Length) {
    let Some(pack) = &s.unit().pack else { return };
    let (low, high) = (pack.laid.bottom.q, pack.follows.top.q);
    let (middle, half) = (s.broad() * 0.5, narrower(s, x, low, high) * 0.5);
    let (a, b) = (s.at(middle - half, low), s.at(middle + half, high));
    let degrees = pack.laid.angle.q.in_unit(&DEG);
    let own = s.view.scale.mm(pack.laid.gap.q + pack.laid.plate.q);
    // Plates that rise along the flow show their level edges, one over the other.
    let (angle, pitch) = if pack.laid.run.q == PlateRun::CrossFlow {
        (degrees, own)
    } else {
        (0.0, own / math::max(math::cos(pack.laid.angle.q.si()), 0.1))
    };
    let hatch = Hatch::Lines { angle, spacing: pitch * f64::from(every(pitch)) };
    scene.part("plate-pack", "Plates", |scene| {
        let area = Rect { x0: a.x, y0: b.y, x1: b.x, y1: a.y };
        scene.on(Layer::Internals).rect(&area, Some(Pen::Medium), Fill::Over(hatch));
    });
}

/// Walls between parallel channels.
fn channels(s: &Section, scene: &mut Scene, floor: Length) {
    for (near, far) in walls::between_channels(s) {
        let (a, b) = (s.at(near, floor), s.at(far, s.unit().shape.height()));
        scene.part("channels", "Walls between the channels", |scene| {
            walls::between(s, scene, &Rect { x0: a.x, y0: b.y, x1: b.x, y1: a.y });
        });
    }
}

/// The ground over or beside it.
fn ground(s: &Section, scene: &mut Scene) {
    let Some(level) = s.cover().map(|_| s.top()).or_else(|| s.grade()) else { return };
    let (left, right) = (s.at(zero(), level), s.at(s.broad(), level));
    let beside = s.cover().is_none();
    let ends = [
        (
            left.x - s.wall() - if beside { BESIDE } else { STUB + 12.0 },
            if beside { left.x - s.wall() } else { right.x + s.wall() + STUB },
        ),
        (right.x + s.wall(), right.x + s.wall() + STUB),
    ];
    scene.part("ground", "Ground", |scene| {
        scene.on(Layer::Ground);
        for (from, to) in ends.into_iter().take(if beside { 2 } else { 1 }) {
            scene.line(pt(from, left.y), pt(to, left.y), Pen::Outline);
            let mut mark = from + 1.5;
            while mark + 0.2 < to {
                scene.line(pt(mark, left.y), pt(mark - 1.2, left.y + 1.6), Pen::Thin);
                mark += 2.5;
            }
        }
    });
}

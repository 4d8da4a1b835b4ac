//! Lifting points, where the shop's answer counts them: drawn at places that are nominal.

use crate::render::geometry::{Point, Rect};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::manways;
use crate::section::place::{Section, zero};
use stillrise_units::{Length, Typed};

/// Where lugs stand along the unit, as a share of its length from both ends: the first at which they stand clear of manways, else the
/// first of all. Nominal.
const AT: [f64; 6] = [0.18, 0.14, 0.22, 0.1, 0.26, 0.3];

/// Stations of the lugs.
pub fn stations(s: &Section) -> [Length; 2] {
    let unit = s.unit();
    let half = unit.access.as_ref().map_or(zero(), |access| access.opening.q * 0.65);
    let taken = manways(s);
    let both = |share: f64| [unit.shape.length() * share, unit.shape.length() * (1.0 - share)];
    let clear = |all: &[Length; 2]| all.iter().all(|x| taken.iter().all(|own| (*own - *x).abs() > half));
    AT.map(both).into_iter().find(clear).unwrap_or_else(|| both(AT[0]))
}

/// Whether there is more than one at a station: one on each side.
fn count(s: &Section) -> Option<bool> {
    let lifting = s.performance?.shop.as_ref()?.lifting.as_ref()?;
    Some(lifting.points.q.si() > 2.5)
}

/// In a view from the side.
pub fn along(s: &Section, scene: &mut Scene) {
    if count(s).is_none() {
        return;
    }
    let shape = &s.unit().shape;
    for x in stations(s) {
        let at = s.at(x, shape.height());
        // An open one carries them on its wall under the rim, a closed one on its crown.
        let at = if s.unit().body.is_open() { at.by(0.0, 2.2) } else { at.by(0.0, -s.wall() - 1.6) };
        lug(scene, at);
    }
}

/// In a view from the end: at both side walls, or on the crown.
pub fn across(s: &Section, scene: &mut Scene) {
    let Some(pairs) = count(s) else { return };
    let shape = &s.unit().shape;
    if s.unit().body.is_open() {
        let (a, b) = (s.at(zero(), shape.height()), s.at(shape.width(), shape.height()));
        for x in [a.by(-s.wall() - 1.2, 2.4), b.by(s.wall() + 1.2, 2.4)] {
            bar(scene, x, 2.4, 3.2);
        }
    } else if !pairs {
        bar(scene, s.at(shape.width() * 0.5, shape.height()).by(0.0, -s.wall() - 1.6), 1.2, 3.2);
    }
}

/// In a view from above.
pub fn above(s: &Section, scene: &mut Scene) {
    let Some(pairs) = count(s) else { return };
    let shape = &s.unit().shape;
    for x in stations(s) {
        if pairs && s.unit().body.is_open() {
            bar(scene, s.at(x, zero()).by(0.0, s.wall() + 1.2), 3.2, 2.4);
            bar(scene, s.at(x, shape.width()).by(0.0, -s.wall() - 1.2), 3.2, 2.4);
        } else {
            let off = if pairs { shape.width() * 0.25 } else { zero() };
            let middle: Length = shape.width() * 0.5;
            for y in if pairs { vec![middle - off, middle + off] } else { vec![middle] } {
                bar(scene, s.at(x, y), 3.2, 1.2);
            }
        }
    }
}

fn lug(scene: &mut Scene, at: Point) {
    scene.part("lug", "Lifting lugs, places nominal", |scene| {
        scene.on(Layer::Vessel).circle(at, 1.5, Some(Pen::Medium), Fill::Paper);
        scene.circle(at, 0.6, Some(Pen::Thin), Fill::None);
    });
}

fn bar(scene: &mut Scene, at: Point, wide: f64, high: f64) {
    scene.part("lug", "Lifting lugs, places nominal", |scene| {
        let area = Rect { x0: at.x - 0.5 * wide, y0: at.y - 0.5 * high, x1: at.x + 0.5 * wide, y1: at.y + 0.5 * high };
        scene.on(Layer::Vessel).rect(&area, Some(Pen::Medium), Fill::Paper);
    });
}

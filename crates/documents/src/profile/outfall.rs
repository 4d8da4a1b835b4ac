//! The outfall: a headwall over a water body, or a manhole of the sewer, with the water that stands there if it was stated.

use super::chambers::walls;
use super::plan::Plan;
use super::stations::What;
use crate::render::geometry::{Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_design::enquiry::blocks::Receiver;
use stillrise_units::math;

/// Thickness of a manhole's wall on paper, mm.
const WALL: f64 = 1.2;

/// Draws it.
pub fn draw(plan: &Plan, scene: &mut Scene) {
    let Some(stop) = plan.stops.iter().find(|stop| stop.what == What::Outfall) else { return };
    let Some(column) = plan.column(What::Outfall) else { return };
    scene.part(&stop.station.id, &stop.station.title, |scene| match plan.settled.job.enquiry.outlet.to.0 {
        Some(Receiver::SanitarySewer) => manhole(plan, scene, column),
        _ => headwall(plan, scene, column),
    });
}

/// x at which the pipe ends.
pub fn face((x0, x1): (f64, f64)) -> f64 {
    x0 + 0.3 * (x1 - x0)
}

/// Where water stands at the outfall, from x to x.
pub fn water(plan: &Plan, column: (f64, f64)) -> (f64, f64) {
    match plan.settled.job.enquiry.outlet.to.0 {
        Some(Receiver::SanitarySewer) => {
            let (x0, x1) = manhole_walls(column);
            (x0 + 2.6, x1 - 2.4)
        }
        _ => (face(column) + 2.0, column.1 - 1.8),
    }
}

/// The outer faces of the manhole.
fn manhole_walls(column: (f64, f64)) -> (f64, f64) {
    let x0 = face(column) - 1.2;
    (x0, math::min(x0 + 12.0, column.1 - 0.8))
}

/// The manhole of a sewer, with its channel.
fn manhole(plan: &Plan, scene: &mut Scene, column: (f64, f64)) {
    let l = &plan.levels;
    let (x0, x1) = manhole_walls(column);
    let low = l.out + 2.6;
    let ground = l.ground.filter(|g| !g.beyond && g.y < l.out - l.bore - 4.0).map(|g| g.y);
    let rim = math::max(ground.unwrap_or(l.out - l.bore - 9.0), plan.drawing.y0 + 8.0);
    let inside = Rect { x0: x0 + WALL, x1: x1 - WALL, y0: rim, y1: low };
    scene.on(Layer::Vessel).rect(&inside, None, Fill::Paper);
    scene.polygon(&walls(&inside, WALL), Some(Pen::Medium), Fill::Over(Hatch::Concrete));
    scene.rect(&Rect { x0: x0 - 0.6, x1: x1 + 0.6, y0: rim - 0.9, y1: rim }, Some(Pen::Medium), Fill::Paper);
    let water = l.tailwater.map_or(low - 1.2, |h| math::min(math::max(h.y, inside.y0), low - 0.4));
    scene.on(Layer::Liquid).rect(&Rect { y0: water, ..inside }, None, Fill::Hatch(Hatch::Water));
    if l.tailwater.is_some() {
        scene.line(pt(inside.x0, water), pt(inside.x1, water), Pen::Surface);
    }
}

/// A wall at the bank, and the water body before it.
fn headwall(plan: &Plan, scene: &mut Scene, column: (f64, f64)) {
    let l = &plan.levels;
    let x = face(column) - 0.6;
    let bed = math::min(math::max(l.out + 3.0, l.tailwater.map_or(0.0, |h| h.y + 3.0)), plan.drawing.y1 - 1.5);
    let top = math::min(l.out - l.bore - 3.0, l.tailwater.map_or(f64::MAX, |h| h.y - 2.0));
    let wall = [pt(x - 1.8, top), pt(x, top), pt(x, bed + 1.2), pt(x - 2.8, bed + 1.2), pt(x - 1.8, bed)];
    scene.on(Layer::Vessel).polygon(&wall, Some(Pen::Medium), Fill::Over(Hatch::Concrete));
    // The mouth of the pipe goes through the wall.
    let mouth = Rect { x0: x - 2.0, x1: x + 0.1, y0: l.out - l.bore, y1: l.out };
    scene.on(Layer::Piping).rect(&mouth, None, Fill::Paper);
    for y in [mouth.y0, mouth.y1] {
        scene.line(pt(mouth.x0, y), pt(mouth.x1, y), Pen::Medium);
    }
    let end = column.1 - 0.5;
    scene.on(Layer::Ground).line(pt(x, bed + 0.6), pt(end, bed + 0.6), Pen::Outline);
    let mut mark = x + 2.0;
    while mark < end {
        scene.line(pt(mark, bed + 0.6), pt(mark - 1.0, bed + 1.8), Pen::Thin);
        mark += 3.0;
    }
    if let Some(tail) = l.tailwater {
        let water = Rect { x0: x, x1: end, y0: math::min(tail.y, bed), y1: bed + 0.6 };
        scene.on(Layer::Liquid).rect(&water, None, Fill::Hatch(Hatch::Water));
        scene.line(pt(x, water.y0), pt(end, water.y0), Pen::Surface);
    }
}

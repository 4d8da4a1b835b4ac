//! What stands ahead of the unit and behind it, each as a small section of its kind.

use super::pipes::{Pipe, Way, valve};
use super::plan::Plan;
use super::stations::{Side, Stop, What};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Thickness of a chamber's wall on paper, mm.
const WALL: f64 = 1.0;

/// Draws what stands ahead.
pub fn ahead(plan: &Plan, way: &Way, scene: &mut Scene) {
    for (stop, column) in plan.on(Side::Ahead) {
        scene.part(&stop.station.id, &stop.station.title, |scene| one_ahead(plan, way, scene, stop, column));
    }
}

/// Draws what stands behind, the outfall aside.
pub fn behind(plan: &Plan, way: &Way, scene: &mut Scene) {
    for (stop, column) in plan.on(Side::Behind) {
        let middle = 0.5 * (column.0 + column.1);
        let at = pt(middle, way.behind(middle));
        scene.part(&stop.station.id, &stop.station.title, |scene| match stop.what {
            What::Closure => closure(plan, scene, at),
            What::Polisher => polisher(plan, scene, at, column, stop.asked),
            What::SamplePoint => sample(plan, scene, at),
            What::PumpBehind => pump(plan, scene, stop, column, plan.levels.outlet, plan.levels.out),
            _ => {}
        });
    }
}

fn one_ahead(plan: &Plan, way: &Way, scene: &mut Scene, stop: &Stop, (x0, x1): (f64, f64)) {
    let l = &plan.levels;
    let wide = math::min(x1 - x0 - 3.0, 20.0);
    let middle = 0.5 * (x0 + x1);
    let (from, to) = (middle - 0.5 * wide, middle + 0.5 * wide);
    let asked = stop.asked;
    // What stands behind the lift takes its water at the unit's level.
    let lifted = middle > way.turn;
    let invert = if lifted { l.inlet } else { l.pipe };
    let rim = if lifted { invert - l.bore - 6.0 } else { l.rim };
    let water = invert - 0.45 * l.bore;
    match stop.what {
        What::Containment(_) | What::MoreContainments => {
            let inside = chamber(scene, (from, to), (rim - 1.2, invert + 2.2), asked);
            scene.on(Layer::Piping).rect(
                &Rect { y0: invert - 0.6 * l.bore - 2.5, ..inside },
                None,
                Fill::Hatch(Hatch::Sand),
            );
            let at = pt(to + 0.2, invert - 0.5 * l.bore);
            valve(scene, at.by(1.6, 0.0), 1.3, asked);
        }
        What::Screen => {
            let (from, to) = (middle - math::min(0.5 * wide, 5.5), middle + math::min(0.5 * wide, 5.5));
            let inside = chamber(scene, (from, to), (rim, invert + 0.9), asked);
            liquid(scene, &inside, water);
            for k in 0..5_u8 {
                let x = middle - 2.0 + 0.8 * f64::from(k);
                let foot = pt(x - 1.3, inside.y1);
                scene.line(foot, pt(foot.x + 0.45 * (inside.y1 - water + 2.5), water - 2.5), Pen::Thin);
            }
        }
        What::GritTrap => {
            let inside = chamber(scene, (from, to), (rim, invert + 5.0), asked);
            liquid(scene, &inside, water);
            let bed = Rect { y0: inside.y1 - 1.9, ..inside };
            scene.rect(&bed, None, Fill::Over(Hatch::Sludge));
            scene.line(pt(bed.x0, bed.y0), pt(bed.x1, bed.y0), Pen::Thin);
        }
        What::Equalisation => {
            let inside = chamber(scene, (from, to), (rim, invert + 7.0), asked);
            liquid(scene, &inside, water - 2.0);
            // The least and the most that it holds.
            let low = invert + 3.5;
            scene.line(pt(inside.x0, low), pt(inside.x1, low), Pen::Phantom);
        }
        What::Pump | What::LiftAsked => pump(plan, scene, stop, (x0, x1), l.pipe, l.inlet),
        What::Splitter => {
            let (from, to) = (middle - math::min(0.5 * wide, 5.0), middle + math::min(0.5 * wide, 5.0));
            let inside = chamber(scene, (from, to), (rim, invert + 2.0), asked);
            liquid(scene, &inside, water);
            let weir = pt(middle, inside.y1);
            scene.line(weir, pt(middle, water + 0.5), Pen::Outline);
            // The pipes to the other units leave toward the reader.
            for side in [0.3, 0.68] {
                let at = pt(middle + side * (inside.x1 - middle) + 0.2, invert - 0.5 * l.bore);
                scene.circle(at, math::min(0.45 * l.bore, 0.8), Some(Pen::Thin), Fill::Paper);
            }
        }
        _ => {}
    }
}

/// The outline of walls and floor around a room that is open above.
pub(super) fn walls(inside: &Rect, thick: f64) -> [Point; 8] {
    let Rect { x0, x1, y0, y1 } = *inside;
    let (left, right, low) = (x0 - thick, x1 + thick, y1 + thick);
    [(left, y0), (x0, y0), (x0, y1), (x1, y1), (x1, y0), (right, y0), (right, low), (left, low)].map(|(x, y)| pt(x, y))
}

/// Walls and floor in section, open above; answers the room inside.
fn chamber(scene: &mut Scene, (x0, x1): (f64, f64), (rim, floor): (f64, f64), asked: bool) -> Rect {
    let inside = Rect { x0: x0 + WALL, x1: x1 - WALL, y0: rim, y1: floor };
    scene.on(Layer::Piping).rect(&inside, None, Fill::Paper);
    // What is asked for and not decided stands in the line of an alternative, uncut.
    let (pen, fill) = if asked { (Pen::Hidden, Fill::Paper) } else { (Pen::Medium, Fill::Over(Hatch::Section)) };
    scene.polygon(&walls(&inside, WALL), Some(pen), fill);
    inside
}

/// Water in a chamber up to a level.
fn liquid(scene: &mut Scene, inside: &Rect, level: f64) {
    let area = Rect { y0: math::max(level, inside.y0), ..*inside };
    scene.rect(&area, None, Fill::Hatch(Hatch::Water));
    scene.line(pt(area.x0, area.y0), pt(area.x1, area.y0), Pen::Surface);
}

/// A sump with its pump and the rising main up to another level.
fn pump(plan: &Plan, scene: &mut Scene, stop: &Stop, (x0, x1): (f64, f64), invert: f64, to: f64) {
    let l = &plan.levels;
    let wide = math::min(x1 - x0 - 2.4, 15.0);
    let middle = 0.5 * (x0 + x1);
    let low = math::min(invert + 9.5, plan.drawing.y1 - 1.5);
    let rim = if stop.what == What::PumpBehind { invert - l.bore - 4.0 } else { l.rim };
    let inside = chamber(scene, (middle - 0.5 * wide, middle + 0.5 * wide), (rim, low), stop.asked);
    liquid(scene, &inside, math::min(invert + 1.6, low - 4.0));
    let x = middle + 1.2;
    let half = 0.5 * l.bore;
    let main = Pipe { bore: l.bore, pen: Pen::Medium };
    let foot = low - 2.2;
    // Above the rim the main is drawn with the other pipes.
    if to - half < rim {
        main.draw(scene, &[pt(x, foot), pt(x, rim)]);
    } else {
        main.draw(scene, &[pt(x, foot), pt(x, to - half), pt(middle + 0.5 * wide + 0.6, to - half)]);
    }
    // The stub of the pipe that comes in.
    Pipe { bore: l.bore, pen: Pen::Medium }.draw(
        scene,
        &[pt(middle - 0.5 * wide - 0.4, invert - half), pt(middle - 0.5 * wide + WALL + 0.8, invert - half)],
    );
    let at = pt(x, foot);
    scene.on(Layer::Piping).circle(at, 1.7, Some(Pen::Medium), Fill::Paper);
    scene.polygon(&[at.by(0.0, -1.6), at.by(-1.3, 0.9), at.by(1.3, 0.9)], Some(Pen::Thin), Fill::Ink);
}

/// A valve with its spindle on the outlet pipe.
fn closure(plan: &Plan, scene: &mut Scene, at: Point) {
    let size = math::max(0.6 * plan.levels.bore + 0.9, 2.0);
    valve(scene, at, size, false);
    scene.line(at, at.by(0.0, -size - 1.6), Pen::Medium);
    let head = Rect { x0: at.x - 1.5, x1: at.x + 1.5, y0: at.y - size - 3.4, y1: at.y - size - 1.6 };
    scene.rect(&head, Some(Pen::Medium), Fill::Paper);
}

/// A vessel with a bed.
fn polisher(plan: &Plan, scene: &mut Scene, at: Point, (x0, x1): (f64, f64), asked: bool) {
    let half = math::min(0.5 * (x1 - x0) - 2.0, 6.0);
    let shell = Rect { x0: at.x - half, x1: at.x + half, y0: at.y - plan.levels.bore - 3.5, y1: at.y + 7.0 };
    let pen = if asked { Pen::Hidden } else { Pen::Medium };
    scene.on(Layer::Piping).rect(&shell, Some(pen), Fill::Paper);
    let bed = Rect { y0: at.y + 1.2 + 0.5 * plan.levels.bore, y1: shell.y1 - 1.2, ..shell.grown(-0.0) };
    scene.rect(&bed, Some(Pen::Thin), Fill::Hatch(Hatch::Mesh));
}

/// A tap under the pipe with its falling stream, and the bottle.
fn sample(plan: &Plan, scene: &mut Scene, at: Point) {
    let low = at.y + 0.5 * plan.levels.bore;
    scene.on(Layer::Piping).line(pt(at.x, low), pt(at.x, low + 1.4), Pen::Medium);
    valve(scene, pt(at.x, low + 2.0), 0.9, false);
    scene.line(pt(at.x, low + 2.7), pt(at.x, low + 4.6), Pen::Thin);
    let neck = low + 4.9;
    let bottle = [
        pt(at.x - 0.5, neck),
        pt(at.x - 0.5, neck + 0.8),
        pt(at.x - 1.3, neck + 1.5),
        pt(at.x - 1.3, neck + 3.8),
        pt(at.x + 1.3, neck + 3.8),
        pt(at.x + 1.3, neck + 1.5),
        pt(at.x + 0.5, neck + 0.8),
        pt(at.x + 0.5, neck),
    ];
    scene.polyline(&bottle, Pen::Thin);
}

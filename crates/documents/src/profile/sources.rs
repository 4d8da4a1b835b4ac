//! Where the water comes from: surfaces with the rain on them, streams, each with its drain into the pipe.

use super::pipes::{Pipe, valve};
use super::plan::Plan;
use super::stations::{Side, Stop, What};
use crate::render::geometry::{Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_design::enquiry::Enquiry;
use stillrise_units::math;

/// Thickness of a pavement on paper, mm, and its fall to the drain.
const SLAB: (f64, f64) = (1.7, 0.8);
/// Height of a canopy and of what streams fall from over the pavement, mm.
const OVER: f64 = 9.0;

/// Draws them all.
pub fn draw(plan: &Plan, scene: &mut Scene) {
    let all = plan.on(Side::Source);
    rain(plan, scene, &all);
    for (stop, column) in all {
        scene.part(&stop.station.id, &stop.station.title, |scene| match stop.what {
            What::Stream(_) => stream(plan, scene, column),
            what => surface(plan, scene, column, what),
        });
    }
}

/// Strokes of rain over all surfaces.
fn rain(plan: &Plan, scene: &mut Scene, all: &[(&Stop, (f64, f64))]) {
    let Some(stop) = plan.stops.iter().find(|stop| stop.what == What::Rain) else { return };
    let e = &plan.settled.job.enquiry;
    scene.part(&stop.station.id, &stop.station.title, |scene| {
        scene.on(Layer::Liquid);
        let fallen = |what: What| matches!(what, What::Surface(_) | What::MoreSources);
        for (stop, (x0, x1)) in all.iter().filter(|(stop, _)| fallen(stop.what)) {
            let low = plan.levels.rim - if is_covered(e, stop.what) { OVER + 1.6 } else { 2.0 };
            let mut x = x0 + 2.2;
            let mut odd = false;
            while x < x1 - 0.8 {
                let up = if odd { 1.6 } else { 0.0 };
                scene.arrow(pt(x + 1.0, low - 5.0 - up), pt(x, low - up), Pen::Thin);
                x += 2.9;
                odd = !odd;
            }
        }
    });
}

fn is_covered(e: &Enquiry, what: What) -> bool {
    matches!(what, What::Surface(k) if e.surfaces.get(k).is_some_and(|s| *s.canopy == Some(true)))
}

/// A pavement that falls to a drain.
fn surface(plan: &Plan, scene: &mut Scene, column: (f64, f64), what: What) {
    let rim = plan.levels.rim;
    let (x0, x1) = (column.0 + 0.6, column.1 - 0.6);
    pavement(plan, scene, (x0, x1));
    if is_covered(&plan.settled.job.enquiry, what) {
        scene.on(Layer::Vessel);
        for x in [x0 + 1.5, x1 - 1.5] {
            scene.line(pt(x, rim), pt(x, rim - OVER + 0.8), Pen::Thin);
        }
        let eaves = [pt(x0, rim - OVER + 0.8), pt(x1, rim - OVER), pt(x1, rim - OVER + 0.9), pt(x0, rim - OVER + 1.7)];
        scene.polygon(&eaves, Some(Pen::Thin), Fill::Paper);
    }
}

/// A slab in section with its drain in the middle, down to the pipe.
fn pavement(plan: &Plan, scene: &mut Scene, (x0, x1): (f64, f64)) {
    let l = &plan.levels;
    let (rim, middle) = (l.rim, 0.5 * (x0 + x1));
    let (thick, fall) = SLAB;
    let gap = 1.3;
    scene.on(Layer::Vessel);
    for (from, to) in [(x0, middle - gap), (x1, middle + gap)] {
        let slab = [pt(from, rim), pt(to, rim + fall), pt(to, rim + fall + thick), pt(from, rim + thick)];
        scene.polygon(&slab, None, Fill::Over(Hatch::Concrete));
        scene.polyline(&[slab[3], slab[0], slab[1], slab[2]], Pen::Medium);
        scene.line(slab[3], slab[2], Pen::Thin);
    }
    // The drain with its grating.
    let low = l.pipe - l.bore;
    Pipe { bore: math::min(1.3, l.bore), pen: Pen::Thin }
        .draw(scene, &[pt(middle, rim + fall + thick), pt(middle, low + 0.1)]);
    let cup = Rect { x0: middle - gap, x1: middle + gap, y0: rim + fall, y1: rim + fall + thick };
    scene.on(Layer::Piping).rect(&cup, Some(Pen::Thin), Fill::Paper);
    for k in 1..4_u8 {
        let x = cup.x0 + cup.width() * f64::from(k) / 4.0;
        scene.line(pt(x, cup.y0), pt(x, cup.y0 + 0.7), Pen::Thin);
    }
}

/// Water that comes from a tap over a drain.
fn stream(plan: &Plan, scene: &mut Scene, column: (f64, f64)) {
    let rim = plan.levels.rim;
    let (x0, x1) = (column.0 + 0.6, column.1 - 0.6);
    let middle = 0.5 * (x0 + x1);
    pavement(plan, scene, (x0, x1));
    let high = rim - OVER + 0.6;
    let pipe = Pipe { bore: 1.3, pen: Pen::Thin };
    pipe.draw(scene, &[pt(x0 + 0.4, high), pt(middle, high), pt(middle, high + 2.2)]);
    valve(scene, pt(0.5 * (x0 + 0.4 + middle), high), math::min(1.5, 0.3 * (middle - x0)), false);
    scene.on(Layer::Liquid);
    for side in [-0.9, 0.0, 0.9] {
        let (top, foot) = (pt(middle + 0.35 * side, high + 2.9), pt(middle + 1.1 * side, rim - 0.4));
        let (a, b) = (top.toward(foot, 1.6), top.toward(foot, 2.6));
        scene.line(top, a, Pen::Thin);
        scene.line(b, foot, Pen::Thin);
    }
}

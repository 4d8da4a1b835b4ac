//! The long section with its streamlines: black on white, to one scale both ways.

use crate::render::geometry::{Point, pt};
use crate::render::pen::Pen;
use crate::render::scene::{Anchor, Fill, Scene, Text};
use stillrise_flowfield::resolve::Resolved;
use stillrise_flowfield::streamlines::streamlines;

/// Width of the picture, mm.
const WIDTH: f64 = 260.0;
/// What stays free around the section, mm.
const EDGE: f64 = 14.0;
/// Lines between which an equal part of the flow passes.
const PARTS: i32 = 10;
/// Eddies are drawn down to this share of the flow, and in steps of it.
const EDDY: f64 = 0.05;

/// The picture.
#[must_use]
pub fn drawn(title: &str, found: &Resolved) -> Scene {
    let s = &found.section;
    let bottom = s.floor.iter().map(|(_, z)| *z).fold(0.0, f64::min);
    let scale = (WIDTH - 2.0 * EDGE) / s.length;
    let height = (s.top - bottom) * scale + 2.0 * EDGE + 10.0;
    let description = format!(
        "Long section with streamlines: between two full lines a tenth of the flow passes; broken lines are water that turns round. {}",
        found
            .grids
            .last()
            .map_or_else(String::new, |r| format!("{:.0} % of the open water runs back.", r.back.value * 100.0))
    );
    let mut scene = Scene::new(title, &description, WIDTH, height);
    let at = |x: f64, y: f64| pt(EDGE + x * scale, EDGE + (s.top - y) * scale);
    for zone in &s.zones {
        let (low, high) = (zone.levels.0.max(bottom), zone.levels.1.min(s.top));
        let (x0, x1) = zone.between;
        let ring = vec![at(x0, low), at(x1, low), at(x1, high), at(x0, high)];
        scene.polygon(&ring, Some(Pen::Thin), Fill::Tint(if zone.is_pack { 8 } else { 16 }));
    }
    let (problem, psi) = &found.finest;
    let flow = psi.iter().copied().fold(0.0_f64, |most, v| if v.abs() > most { v.abs() } else { most });
    let through = problem_flow(found).unwrap_or(flow);
    for k in 1..PARTS {
        for path in streamlines(problem, psi, through * f64::from(k) / f64::from(PARTS)) {
            scene.polyline(&path.iter().map(|(x, y)| at(*x, *y)).collect::<Vec<_>>(), Pen::Thin);
        }
    }
    let (least, most) = psi.iter().fold((0.0_f64, through), |(a, b), v| (a.min(*v), b.max(*v)));
    let steps = |over: f64| (1..=20).map(move |k| EDDY * f64::from(k)).take_while(move |share| *share < over / through);
    let eddies = steps(-least).map(|k| -k * through).chain(steps(most - through).map(|k| through + k * through));
    for value in eddies {
        for path in streamlines(problem, psi, value) {
            scene.polyline(&path.iter().map(|(x, y)| at(*x, *y)).collect::<Vec<_>>(), Pen::Hidden);
        }
    }
    let upright = |x: f64, low: f64, high: f64, scene: &mut Scene| {
        if high > low {
            scene.line(at(x, low), at(x, high), Pen::Outline);
        }
    };
    for (_, x, low, high) in &s.walls {
        upright(*x, low.max(bottom), high.min(s.top), &mut scene);
    }
    for (_, x, low, high, _) in &s.screens {
        scene.line(at(*x, low.max(bottom)), at(*x, high.min(s.top)), Pen::Centre);
    }
    for (_, y, from, to) in s.shelves.iter().filter(|shelf| shelf.1 < s.top) {
        scene.line(at(*from, *y), at(*to, *y), Pen::Outline);
    }
    for (_, from, to) in &s.askew {
        scene.line(at(from.0, from.1), at(to.0, to.1), Pen::Outline);
    }
    let floor: Vec<Point> = s.floor.iter().map(|(x, z)| at(*x, *z)).collect();
    scene.polyline(&floor, Pen::Outline);
    scene.line(at(0.0, s.top), at(s.length, s.top), Pen::Surface);
    upright(0.0, s.floor.first().map_or(0.0, |f| f.1), s.inlet.0, &mut scene);
    upright(0.0, s.inlet.1, s.top, &mut scene);
    upright(s.length, s.floor.last().map_or(0.0, |f| f.1), s.outlet.0, &mut scene);
    upright(s.length, s.outlet.1, s.top, &mut scene);
    let arrow = |x: f64, (low, high): (f64, f64), scene: &mut Scene| {
        let middle = at(x, 0.5 * (low + high));
        let (from, to) =
            if x > 0.0 { (middle, pt(middle.x + 9.0, middle.y)) } else { (pt(middle.x - 9.0, middle.y), middle) };
        scene.arrow(from, to, Pen::Medium);
    };
    arrow(0.0, s.inlet, &mut scene);
    arrow(s.length, s.outlet, &mut scene);
    let note =
        "Full: a tenth of the flow between two lines. Broken: water that turns round. Chain: wall with openings.";
    scene.text(Text::new(pt(WIDTH / 2.0, height - 5.0), note).anchored(Anchor::Middle));
    scene
}

/// The flow that passes: the stream function at the surface.
fn problem_flow(found: &Resolved) -> Option<f64> {
    let (problem, psi) = &found.finest;
    psi.get(problem.grid.node(0, problem.grid.ny())).copied().filter(|flow| *flow > 0.0)
}

//! The internals as their stages say that they stand, and the float.

use super::corners;
use super::place::{Section, zero};
use crate::instruments::{Hangs, Switch, places, switches};
use crate::render::geometry::{Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_design::stages::Place;
use stillrise_design::stages::plate_pack::Dimensions;
use stillrise_design::stages::stage::{Line, Pipe, Spot};
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::DEG;
use stillrise_units::{Length, Typed, math};

/// Thickness of plates in section on paper, mm; nominal.
const SHEET: f64 = 0.7;
/// Height on paper of the notch under a baffle that reaches into a hopper, mm; nominal.
const NOTCH: f64 = 1.8;
/// Plates nearer than this on paper, mm, are not all drawn.
pub const NEAREST: f64 = 0.45;

/// Draws the internals, each as its stage says that it stands.
pub fn draw(s: &Section, scene: &mut Scene) {
    for part in s.drawn().into_iter().filter(|part| !part.lines.is_empty()) {
        scene.part(part.id, part.name, |scene| {
            for line in &part.lines {
                one(s, scene, line);
            }
        });
    }
    of_pumps(s, scene);
    let mut drawn: Vec<Switch> = Vec::new();
    for (x, _, switch) in places(s) {
        // Those of other channels stand behind it.
        if drawn.contains(&switch) {
            continue;
        }
        drawn.push(switch);
        scene.part("float", "Level switches", |scene| {
            let x = s.at(x, zero()).x;
            let (at, top) = (pt(x, s.at(zero(), switch.level).y), s.at(zero(), s.unit().shape.height()).y);
            scene.on(Layer::Internals).line(pt(x, top - 1.0), at.by(0.0, 4.5), Pen::Medium);
            scene.rect(&Rect::new(at.x - 1.5, at.y - 1.3, 3.0, 2.6), Some(Pen::Medium), Fill::Paper);
            scene.line(at.by(-1.5, 0.0), at.by(1.5, 0.0), Pen::Thin);
            scene.line(at.by(-0.9, 4.5), at.by(0.9, 4.5), Pen::Medium);
            scene.on(Layer::Piping).rect(&Rect::new(x - 1.6, top - 3.6, 3.2, 2.6), Some(Pen::Medium), Fill::Paper);
        });
    }
}

/// The switches of the effluent pumps, on one stem.
fn of_pumps(s: &Section, scene: &mut Scene) {
    let all: Vec<Switch> = switches(s).into_iter().filter(|switch| switch.hangs == Hangs::Pumps).collect();
    let (Some(zone), Some(lowest)) = (s.unit().compartment(Place::PumpOut), all.first()) else { return };
    let x = zone.to - (zone.to - zone.from) * 0.12;
    let (low, top) = (s.at(x, lowest.level), s.at(x, s.unit().shape.height()));
    scene.part("float", "Level switches", |scene| {
        scene.on(Layer::Internals).line(top.by(0.0, -1.0), low.by(0.0, 1.6), Pen::Medium);
        for switch in &all {
            let at = s.at(x, switch.level);
            scene.rect(&Rect::new(at.x - 0.9, at.y - 0.8, 1.8, 1.6), Some(Pen::Medium), Fill::Paper);
        }
    });
}

/// Draws one line of a part.
fn one(s: &Section, scene: &mut Scene, line: &Line) {
    let spot = |(x, z): Spot| s.at(x, z);
    match line {
        Line::Plate { at, low, high } => plate(s, scene, *at, *low, *high),
        Line::Perforated { at, low, high } => {
            // Down in a hopper its foot leaves a notch for the solids that slide under it; nominal.
            let notch = if *low < zero() { NOTCH } else { 0.0 };
            let (low, high) = (s.at(*at, *low).by(0.0, -notch), s.at(*at, *high));
            perforated(scene.on(Layer::Internals), low.x, low.y, high.y);
        }
        Line::Inclined(from, to) => scene.on(Layer::Internals).line(spot(*from), spot(*to), Pen::Frame),
        Line::Bed { between: (from, to), low, high } => {
            let area = corners(s.at(*from, *low), s.at(*to, *high));
            scene.on(Layer::Internals).rect(&area, Some(Pen::Medium), Fill::Over(Hatch::Mesh));
        }
        Line::Plates { between, laid, top, modules } => pack(s, scene, laid, (*between, *top), *modules),
        Line::TurnedDown(pipe) => elbow(s, scene, pipe),
        Line::Dipping(pipe) => tee(s, scene, pipe),
        Line::Pump(at) => {
            let (at, rim) = (s.at(*at, zero()), s.unit().shape.height());
            scene.on(Layer::Piping).rect(&Rect::new(at.x - 1.6, at.y - 4.0, 3.2, 4.0), Some(Pen::Medium), Fill::Paper);
            scene.line(at.by(0.0, -4.0), pt(at.x, s.at(zero(), rim).y - 3.0), Pen::Outline);
        }
        Line::Level((from, to), level) => {
            scene.on(Layer::Level).line(s.at(*from, *level), s.at(*to, *level), Pen::Phantom);
        }
    }
}

/// A pipe through the inlet end, turned down at once.
fn elbow(s: &Section, scene: &mut Scene, &Pipe { leg: (from, to), mouth, invert, bore }: &Pipe) {
    let wall = zero();
    let leg = corners(s.at(from, mouth), s.at(to, invert + bore));
    let run = corners(s.at(wall, invert), s.at(to, invert + bore));
    scene.on(Layer::Piping).rect(&leg, None, Fill::Paper);
    scene.rect(&run, None, Fill::Paper);
    let (near, far) = (s.at(from, mouth), s.at(to, mouth));
    let (low, high) = (s.at(wall, invert), s.at(wall, invert + bore));
    scene.line(high, pt(far.x, high.y), Pen::Outline);
    scene.line(pt(far.x, high.y), far, Pen::Outline);
    scene.line(low, pt(near.x, low.y), Pen::Outline);
    scene.line(pt(near.x, low.y), near, Pen::Outline);
}

/// A pipe through the outlet end with a leg down under the oil, open at its top to the air, so that it does not siphon.
fn tee(s: &Section, scene: &mut Scene, &Pipe { leg: (from, to), mouth, invert, bore }: &Pipe) {
    let (end, top) = (s.unit().shape.length(), invert + bore * 1.5);
    let leg = corners(s.at(from, mouth), s.at(to, top));
    let run = corners(s.at(to, invert), s.at(end, invert + bore));
    scene.on(Layer::Piping).rect(&leg, None, Fill::Paper);
    scene.rect(&run, None, Fill::Paper);
    let (near, far) = (s.at(from, mouth), s.at(to, mouth));
    scene.line(near, pt(near.x, leg.y0), Pen::Outline);
    let (low, high) = (s.at(end, invert), s.at(end, invert + bore));
    scene.line(far, pt(far.x, low.y), Pen::Outline);
    scene.line(pt(far.x, low.y), low, Pen::Outline);
    scene.line(pt(far.x, leg.y0), pt(far.x, high.y), Pen::Outline);
    scene.line(pt(far.x, high.y), high, Pen::Outline);
}

/// A plate in section, upright.
fn plate(s: &Section, scene: &mut Scene, x: Length, low: Length, high: Length) {
    let (a, b) = (s.at(x, low), s.at(x, high));
    let area = Rect { x0: a.x - 0.5 * SHEET, y0: b.y, x1: a.x + 0.5 * SHEET, y1: a.y };
    scene.on(Layer::Internals).rect(&area, None, Fill::Ink);
}

/// A perforated plate in section: the same with openings.
fn perforated(scene: &mut Scene, x: f64, low: f64, high: f64) {
    let mut y = low;
    while y > high + 1e-9 {
        let next = math::max(y - 2.0, high);
        scene.rect(&Rect { x0: x - 0.5 * SHEET, y0: next, x1: x + 0.5 * SHEET, y1: y }, None, Fill::Ink);
        y -= 3.0;
    }
}

/// The pack, module by module, with its plates at their true pitch.
fn pack(s: &Section, scene: &mut Scene, f: &Dimensions, ((from, to), high): ((Length, Length), Length), modules: u32) {
    let whole = corners(s.at(from, f.bottom.q), s.at(to, high));
    let one = whole.width() / f64::from(modules);
    scene.on(Layer::Internals);
    for k in 0..modules {
        let x0 = whole.x0 + one * f64::from(k) + if k > 0 { 0.5 } else { 0.0 };
        let x1 = whole.x0 + one * f64::from(k + 1) - if k + 1 < modules { 0.5 } else { 0.0 };
        let module = Rect { x0, x1, ..whole };
        if f.run.q == PlateRun::CrossFlow {
            scene.rect(&module, Some(Pen::Medium), Fill::Paper);
            level_plates(s, scene, f, &module);
        } else {
            // Water running up through the pack meets plates that rise in its direction.
            let degrees = f.angle.q.in_unit(&DEG);
            let angle = if f.run.q == PlateRun::CoCurrent { degrees } else { -degrees };
            let pitch = s.view.scale.mm(f.gap.q + f.plate.q);
            let hatch = Hatch::Lines { angle, spacing: pitch * f64::from(every(pitch)) };
            scene.rect(&module, Some(Pen::Medium), Fill::Over(hatch));
        }
    }
}

/// How many plates one line stands for, so that lines stay apart on paper.
pub fn every(pitch: f64) -> u16 {
    (1..1000_u16).find(|&k| pitch * f64::from(k) >= NEAREST).unwrap_or(1000)
}

/// Vertical pitch of the plates on paper, mm.
pub fn pitch(s: &Section, f: &Dimensions) -> f64 {
    s.view.scale.mm(f.gap.q + f.plate.q) / if f.run.q == PlateRun::CrossFlow { math::cos(f.angle.q.si()) } else { 1.0 }
}

/// Plates inclined across the unit, seen from the side: level lines at their vertical pitch.
fn level_plates(s: &Section, scene: &mut Scene, laid: &Dimensions, module: &Rect) {
    let pitch = pitch(s, laid);
    let step = pitch * f64::from(every(pitch));
    if !(step.is_finite() && step > 0.0) {
        return;
    }
    let mut y = module.y1 - 0.5 * step;
    while y > module.y0 {
        scene.line(pt(module.x0, y), pt(module.x1, y), Pen::Hatching);
        y -= step;
    }
}

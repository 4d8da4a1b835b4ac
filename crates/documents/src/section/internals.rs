//! Deflector, baffles, plate pack, mesh, weir and float.

use super::corners;
use super::place::{Section, zero};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_design::enquiry::range::OutletControl;
use stillrise_design::stages::Place;
use stillrise_design::stages::plate_pack::{Dimensions, PlatePack};
use stillrise_design::stages::underflow::Underflow;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::DEG;
use stillrise_units::{Length, Typed, math};

/// Thickness of plates in section on paper, mm; nominal.
const SHEET: f64 = 0.7;
/// Plates nearer than this on paper, mm, are not all drawn.
pub const NEAREST: f64 = 0.45;

/// Draws the internals.
pub fn draw(s: &Section, scene: &mut Scene) {
    let unit = s.unit();
    let rim = unit.shape.height();
    let (ahead, behind) = s.oil_zone();
    match inlet_bend(s) {
        Some(pipe) => scene.part("inlet-bend", "Inlet bend", |scene| {
            let mouth = unit.inlet_bend.as_ref().map_or_else(zero, |bend| bend.mouth.q);
            elbow(s, scene, pipe, zero(), (mouth, unit.inlet.invert.q, unit.inlet.bore.q));
        }),
        None => scene.part("deflector", "Inlet deflector", |scene| {
            let (from, to) = deflector(s);
            scene.on(Layer::Internals).line(from, to, Pen::Frame);
        }),
    }
    if unit.baffle.is_some() {
        scene.part("baffle", "Diffusion baffle", |scene| {
            let gap = unit.baffle.as_ref().map_or_else(zero, |baffle| baffle.under.q);
            let (low, high) = (s.at(ahead, s.floor_at(ahead) + gap), s.at(ahead, rim));
            perforated(scene.on(Layer::Internals), low.x, low.y, high.y);
        });
    }
    if let (Some(plates), Some(zone)) = (&unit.pack, s.zone(Place::PlatePack)) {
        scene.part("pack", "Plate pack", |scene| pack(s, scene, plates, zone));
    }
    if let (Some(plates), Some((from, to))) = (&unit.pack, s.zone(Place::Mesh)) {
        scene.part("mesh", "Mesh", |scene| {
            let area = corners(s.at(from, plates.laid.bottom.q), s.at(to, plates.follows.top.q));
            scene.on(Layer::Internals).rect(&area, Some(Pen::Medium), Fill::Over(Hatch::Mesh));
        });
    }
    if let (Some(plates), Some(x)) = (&unit.pack, outlet_baffle(s)) {
        scene.part("outlet-baffle", "Outlet baffle", |scene| {
            let (low, high) = (s.at(x, plates.laid.bottom.q), s.at(x, plates.follows.top.q));
            perforated(scene.on(Layer::Internals), low.x, low.y, high.y);
        });
    }
    match dip_pipe(s) {
        Some(pipe) => scene.part("dip-pipe", "Dip pipe", |scene| {
            tee(s, scene, pipe, (unit.underflow.edge().q, unit.outlet.invert.q, unit.outlet.bore.q));
        }),
        None => scene.part("downcomer", "Downcomer baffle", |scene| {
            plate(s, scene, behind, unit.underflow.edge().q, rim);
        }),
    }
    if let Some((_, x)) = s.zone(Place::SandTrap) {
        scene.part("sand-wall", "Wall of the sand compartment", |scene| {
            // Open from below the water up to its opening's height under it.
            let opening = unit.sand_trap.as_ref().map_or(zero(), |trap| trap.opening.q);
            let middle = unit.outlet.crest.q * 0.5;
            plate(s, scene, x, zero(), middle - opening * 0.5);
            plate(s, scene, x, middle + opening * 0.5, rim);
        });
    }
    if let (Some(pumps), Some((from, to))) = (&unit.pump_out, s.zone(Place::PumpOut)) {
        scene.part("pump-out", "Effluent pumps", |scene| {
            plate(s, scene, from, zero(), unit.outlet.crest.q);
            for share in [0.35, 0.7] {
                let at = s.at(from + (to - from) * share, zero());
                scene.on(Layer::Piping).rect(
                    &Rect::new(at.x - 1.6, at.y - 4.0, 3.2, 4.0),
                    Some(Pen::Medium),
                    Fill::Paper,
                );
                scene.line(at.by(0.0, -4.0), pt(at.x, s.at(zero(), rim).y - 3.0), Pen::Outline);
            }
            for level in pumps.levels() {
                scene.on(Layer::Level).line(s.at(from, level.q), s.at(to, level.q), Pen::Phantom);
            }
        });
    }
    if unit.outlet.control.q == OutletControl::Weir && unit.pump_out.is_none() {
        scene.part("weir", "Outlet weir", |scene| plate(s, scene, weir(s), zero(), unit.outlet.crest.q));
    }
    if let Some(alarm) = s.alarm() {
        scene.part("float", "Level float", |scene| {
            let x = s.along(s.oil_end(), 0.3);
            let (at, top) = (pt(x, s.at(zero(), alarm.interface.q).y), s.at(zero(), rim).y);
            scene.on(Layer::Internals).line(pt(x, top - 1.0), at.by(0.0, 4.5), Pen::Medium);
            scene.rect(&Rect::new(at.x - 1.5, at.y - 1.3, 3.0, 2.6), Some(Pen::Medium), Fill::Paper);
            scene.line(at.by(-1.5, 0.0), at.by(1.5, 0.0), Pen::Thin);
            scene.line(at.by(-0.9, 4.5), at.by(0.9, 4.5), Pen::Medium);
            scene.on(Layer::Piping).rect(&Rect::new(x - 1.6, top - 3.6, 3.2, 2.6), Some(Pen::Medium), Fill::Paper);
        });
    }
}

/// How far a pipe inside stands off the wall, in its bores; nominal.
const OFF_WALL: f64 = 0.5;

/// Between which stations the leg of the inlet bend hangs; `None` without one.
pub fn inlet_bend(s: &Section) -> Option<(Length, Length)> {
    let unit = s.unit();
    let bore = unit.inlet_bend.as_ref().map(|_| unit.inlet.bore.q)?;
    Some((bore * OFF_WALL, bore * (OFF_WALL + 1.0)))
}

/// Where the outlet baffle stands: behind the mesh, or the plates where there is none; `None` without one.
pub fn outlet_baffle(s: &Section) -> Option<Length> {
    s.unit().outlet_baffle.as_ref()?;
    s.zone(Place::Mesh).or_else(|| s.zone(Place::PlatePack)).map(|(_, to)| to)
}

/// Between which stations the dip pipe hangs; `None` without one.
pub fn dip_pipe(s: &Section) -> Option<(Length, Length)> {
    let Underflow::DipPipe(pipe) = &s.unit().underflow else { return None };
    let (end, bore) = (s.unit().shape.length(), pipe.bore.q);
    Some((end - bore * (OFF_WALL + 1.0), end - bore * OFF_WALL))
}

/// A pipe through the wall at a station, turned down at once.
fn elbow(
    s: &Section,
    scene: &mut Scene,
    (from, to): (Length, Length),
    wall: Length,
    (mouth, invert, bore): (Length, Length, Length),
) {
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

/// A pipe through the end wall with a leg down under the oil, open at its top to the air, so that it does not siphon.
fn tee(s: &Section, scene: &mut Scene, (from, to): (Length, Length), (mouth, invert, bore): (Length, Length, Length)) {
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

/// Where the weir stands in the clear well; nominal.
pub fn weir(s: &Section) -> Length {
    let (from, to) = (s.oil_zone().1, s.well_end());
    from + (to - from) * 0.4
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

/// Ends on paper of the deflector: 45 degrees downward ahead of the nozzle, a little wider than its bore.
pub fn deflector(s: &Section) -> (Point, Point) {
    let inlet = &s.unit().inlet;
    let (chamber, bore) = (s.oil_zone().0.si(), inlet.bore.q.si());
    let reach = math::min(1.4 * bore, 0.7 * chamber);
    let above = math::max(reach - bore, 0.0) * 0.5;
    // Ahead of the nozzle, clear of a dished head.
    let head = s.unit().body.head().si();
    let (x, z) = (math::max(0.2 * chamber, 0.8 * head), inlet.invert.q.si() + bore + above);
    let spot = |d: f64| s.at(Length::from_si(x + d), Length::from_si(z - d));
    (spot(0.0), spot(reach))
}

/// The pack, module by module, with its plates at their true pitch.
fn pack(s: &Section, scene: &mut Scene, pack: &PlatePack, (from, to): (Length, Length)) {
    let f = &pack.laid;
    let (low, high) = (f.bottom.q, pack.follows.top.q);
    // Modules may stand side by side across the flow; along it there are as many as their length goes into the pack.
    let along = s.unit().particulars.module.map(|[length, _]| math::max((f.length.q / length.q).si().round(), 1.0));
    let along = along.unwrap_or_else(|| f64::from(s.unit().particulars.modules.unwrap_or(1)));
    let modules = (1..=40_u32).rev().find(|n| f64::from(*n) <= along).unwrap_or(1);
    let whole = corners(s.at(from, low), s.at(to, high));
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

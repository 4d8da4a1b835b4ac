//! What stands inside, as each stage says that it stands.

use super::PIPE;
use super::inside::Inside;
use crate::render::glb::Look;
use crate::render::solid::{Mesh, block, pipe, prism, sheets};
use crate::section::place::Section;
use stillrise_design::stages::plate_pack::Dimensions;
use stillrise_design::stages::stage::{Line, Pipe};
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::{Typed, math};

/// Thickness of a sheet inside, m; nominal.
const SHEET: f64 = 0.004;
/// More plates than this stand as one block: a viewer should still turn the model without effort.
const MOST: usize = 300;
/// Size of a pump, m; nominal.
const PUMP: (f64, f64) = (0.25, 0.4);

/// Adds every part.
pub fn add(s: &Section, inside: &Inside, wall: f64, add: &mut impl FnMut(&str, String, Look, Mesh, Option<f64>)) {
    for part in s.drawn() {
        // What is drawn alike of a part is one body: both halves of a wall, both pumps.
        let mut bodies: Vec<(String, Look, Mesh)> = Vec::new();
        for line in &part.lines {
            let Some((told, look, mesh)) = one(s, inside, wall, line) else { continue };
            match bodies.iter_mut().find(|(known, ..)| *known == told) {
                Some((_, _, body)) => *body = core::mem::take(body).with(mesh),
                None => bodies.push((told, look, mesh)),
            }
        }
        let several = bodies.len() > 1;
        for (k, (told, look, mesh)) in bodies.into_iter().enumerate() {
            let wall = several && look == Look::Internal;
            let id = if k == 0 { part.id.to_owned() } else { format!("{}-{}", part.id, k + 1) };
            add(&id, format!("{}{}{told}", part.name, if wall { ", wall" } else { "" }), look, mesh, None);
        }
    }
}

/// What is to be said of a part, how it looks, and its body.
fn one(s: &Section, inside: &Inside, wall: f64, line: &Line) -> Option<(String, Look, Mesh)> {
    let thick = if s.unit().arrangement.is_built_in() { 0.5 * wall } else { SHEET };
    let plain = |told: &str, mesh| Some((told.to_owned(), Look::Internal, mesh));
    match line {
        Line::Plate { at, low, high } => {
            plain(", thickness nominal", inside.slab(at.si(), thick, (low.si(), high.si())))
        }
        Line::Perforated { at, low, high } => {
            plain(", openings not shown, thickness nominal", inside.slab(at.si(), thick, (low.si(), high.si())))
        }
        Line::Inclined((x0, z0), (x1, z1)) => {
            let [x0, z0, x1, z1] = [x0, z0, x1, z1].map(|q| q.si());
            let (dx, dz) = (x1 - x0, z1 - z0);
            let length = (dx * dx + dz * dz).sqrt();
            if length <= 0.0 {
                return None;
            }
            let (nx, nz) = (-dz / length * thick, dx / length * thick);
            let half = 0.5 * math::min(inside.width(x0, z0), inside.width(x1, z1));
            let at = |x: f64, z: f64| [x, -half, z];
            let outline = [at(x0, z0), at(x1, z1), at(x1 + nx, z1 + nz), at(x0 + nx, z0 + nz)];
            plain(", thickness nominal", prism(&outline, [0.0, 2.0 * half, 0.0]))
        }
        Line::Bed { between: (from, to), low, high } => {
            let [from, to, low, high] = [from, to, low, high].map(|q| q.si());
            let half = 0.5 * narrow(inside, from, to, low, high);
            plain("", block([from, -half, low], [to, half, high]))
        }
        Line::Plates { between: (from, to), laid, top, modules } => {
            let (told, mesh) = pack(inside, (from.si(), to.si()), laid, top.si(), *modules);
            Some((told, Look::Internal, mesh))
        }
        Line::TurnedDown(p) => Some((", wall nominal".to_owned(), Look::Pipe, bend(p, 0.0))),
        Line::Dipping(p) => Some((", wall nominal".to_owned(), Look::Pipe, bend(p, s.unit().shape.length().si()))),
        Line::Pump(at) => {
            let (x, top) = (at.si(), s.unit().shape.height().si());
            let floor = s.unit().floor_at(*at).si();
            let body = pipe([x, 0.0, floor], [0.0, 0.0, PUMP.1], 0.0, 0.5 * PUMP.0);
            let riser = pipe([x, 0.0, floor + PUMP.1], [0.0, 0.0, top - floor - PUMP.1], 0.0, 0.2 * PUMP.0);
            Some((", size nominal".to_owned(), Look::Pipe, body.with(riser)))
        }
        Line::Level(..) => None,
    }
}

/// The least width that a box between two stations and two levels may have.
fn narrow(inside: &Inside, from: f64, to: f64, low: f64, high: f64) -> f64 {
    let corners = [(from, low), (from, high), (to, low), (to, high)];
    corners.into_iter().map(|(x, z)| inside.width(x, z)).fold(f64::MAX, math::min)
}

/// Plates module by module, each at its angle; or the modules as blocks where there are too many.
fn pack(inside: &Inside, (from, to): (f64, f64), laid: &Dimensions, top: f64, modules: u32) -> (String, Mesh) {
    let low = laid.bottom.q.si();
    let wide = narrow(inside, from, to, low, top);
    let one = (to - from) / f64::from(modules);
    // Modules stand apart by a little, so that they are told from each other.
    let gap = if modules > 1 { 0.005 } else { 0.0 };
    let pitch = (laid.gap.q + laid.plate.q).si();
    let across = laid.run.q == PlateRun::CrossFlow;
    let face = if across { wide } else { one - gap };
    let all = sheets((face, top - low), laid.angle.q.si(), laid.plate.q.si(), pitch);
    let whole = all.is_empty() || all.len() * usize::try_from(modules).unwrap_or(usize::MAX) > MOST;
    let mut mesh = Mesh::default();
    for k in 0..modules {
        let (x0, x1) = (from + one * f64::from(k), from + one * f64::from(k + 1) - gap);
        if whole {
            mesh = mesh.with(block([x0, -0.5 * wide, low], [x1, 0.5 * wide, top]));
            continue;
        }
        for sheet in &all {
            let (outline, along): (Vec<_>, _) = if across {
                let at = |p: &[f64; 2]| [x0, p[0] - 0.5 * wide, low + p[1]];
                (sheet.iter().map(at).collect(), [x1 - x0, 0.0, 0.0])
            } else {
                let at = |p: &[f64; 2]| [x0 + p[0], -0.5 * wide, low + p[1]];
                (sheet.iter().map(at).collect(), [0.0, wide, 0.0])
            };
            mesh = mesh.with(prism(&outline, along));
        }
    }
    let told =
        if whole { ", as a block" } else { ", plates at their pitch and angle, which side they lean to is nominal" };
    (told.to_owned(), mesh)
}

/// A pipe through an end of the vessel with its leg.
fn bend(p: &Pipe, end: f64) -> Mesh {
    let (bore, x) = (p.bore.si(), (p.leg.0 + p.leg.1).si() * 0.5);
    let (mouth, axis) = (p.mouth.si(), p.invert.si() + 0.5 * bore);
    let run = pipe([end, 0.0, axis], [x - end, 0.0, 0.0], bore, PIPE);
    let leg = pipe([x, 0.0, mouth], [0.0, 0.0, axis + 0.5 * bore - mouth], bore, PIPE);
    run.with(leg)
}

//! The unit as a model in space: what the drawings show in views, as closed bodies, a part each.
//!
//! Metres; x runs along the unit from the inside of the inlet end, y across it from its middle, z up from the floor. What nobody stated
//! is nominal, and the part's name says so. No kind of vessel is asked for: `inside` builds on what its shape says.

mod inside;
mod parts;

use crate::Edition;
use crate::render::glb::{Look, Node, glb};
use crate::render::solid::{Mesh, block, pipe};
use crate::section::place::Section;
use inside::Inside;
use stillrise_search::Settled;
use stillrise_units::{Typed, math};

/// Thickness of walls where none is stated, m: of a vessel, and of one built into the ground; nominal.
const WALL: (f64, f64) = (0.006, 0.2);
/// Thickness of a cover, m; nominal.
const COVER: f64 = 0.01;
/// Bore of a nozzle whose size is not known, m; nominal.
const BORE: f64 = 0.08;
/// Wall of a pipe, m; nominal.
pub(super) const PIPE: f64 = 0.005;

/// The model as a file; `None` without a unit.
#[must_use]
pub fn model(settled: &Settled, edition: Edition) -> Option<Vec<u8>> {
    Some(glb(&settled.job.design.train.as_ref()?.unit.particulars.model, &nodes(settled, edition)?))
}

/// Its parts; `None` without a unit.
#[must_use]
pub fn nodes(settled: &Settled, edition: Edition) -> Option<Vec<Node>> {
    let s = Section::new(settled, edition)?;
    let unit = s.unit();
    let inside = Inside::new(&unit.shape);
    let (bottom, top) = (unit.shape.bottom().si(), unit.shape.height().si());
    let usual = if unit.arrangement.is_built_in() { WALL.1 } else { WALL.0 };
    let stated = unit.particulars.wall.map(|wall| wall.q.si()).filter(|wall| *wall > 0.0);
    let (wall, told) = match stated {
        Some(wall) => (wall, ""),
        None => (usual, ", nominal thickness"),
    };
    let mut all = Vec::new();
    let mut add = |id: &str, name: String, look: Look, mesh: Mesh, volume: Option<f64>| {
        if !mesh.triangles.is_empty() {
            all.push(Node { id: id.to_owned(), name, look, mesh, volume });
        }
    };
    let open = unit.body.is_open();
    let body = inside.between((bottom, top));
    let rim = |face: &[[f64; 3]; 3]| open && face.iter().all(|p| (p[2] - top).abs() < 1e-6);
    let what = match (unit.arrangement.is_built_in(), bottom < 0.0) {
        (true, true) => "Walls, floor and sludge hopper",
        (true, false) => "Walls and floor",
        (false, true) => "Shell with sludge hopper",
        (false, false) => "Shell",
    };
    add("shell", format!("{what}{told}"), Look::Shell, body.wall(wall, rim), None);
    if let Some(channels) = &unit.channels {
        let width = channels.width.q.si();
        let walls = (1..=u8::MAX).map(|k| width * f64::from(k) - 0.5 * unit.shape.width().si());
        let length = unit.shape.length().si();
        let between = walls.take_while(|y| *y < 0.5 * unit.shape.width().si() - 1e-9);
        let mesh = between.map(|y| block([0.0, y - 0.5 * wall, 0.0], [length, y + 0.5 * wall, top]));
        let mesh = mesh.fold(Mesh::default(), Mesh::with);
        add("channels", format!("Walls between the channels{told}"), Look::Shell, mesh, None);
    }
    parts::add(&s, &inside, wall, &mut add);
    nozzles(&s, &inside, wall, &mut add);
    if open {
        let (length, half) = (unit.shape.length().si() + wall, 0.5 * unit.shape.width().si() + wall);
        let lid = block([-wall, -half, top], [length, half, top + COVER]);
        add("cover", "Cover, nominal".to_owned(), Look::Shell, lid, None);
    }
    for (k, (x, y, switch)) in crate::instruments::places(&s).into_iter().enumerate() {
        let (x, y, z) = (x.si(), (y - s.broad() * 0.5).si(), switch.level.si());
        let body = pipe([x, y, z - 0.05], [0.0, 0.0, 0.1], 0.0, 0.06);
        let id = if k == 0 { "float".to_owned() } else { format!("float-{}", k + 1) };
        let count = s.channels().len();
        let channel = if count > 1 { format!(" in channel {}", k % count + 1) } else { String::new() };
        add(&id, format!("Float of {}{channel}, size nominal", switch.tag()), Look::Float, body, None);
    }
    let crest = unit.outlet.crest.q;
    let water = inside.between((bottom, crest.si()));
    let name = "Water at rest, up to the crest; what stands in it is not deducted".to_owned();
    add("water", name, Look::Water, water, Some(unit.shape.volume(crest).si()));
    Some(all)
}

/// Short pipes where water, oil and sludge come and go.
fn nozzles(s: &Section, inside: &Inside, wall: f64, add: &mut impl FnMut(&str, String, Look, Mesh, Option<f64>)) {
    let unit = s.unit();
    for (id, name, invert, bore, outlet) in [
        ("inlet", "Inlet nozzle, length nominal", unit.inlet.invert.q, unit.inlet.bore.q, false),
        ("outlet", "Outlet nozzle, length nominal", unit.outlet.invert.q, unit.outlet.bore.q, true),
    ] {
        let (bore, z) = (bore.si(), (invert + bore * 0.5).si());
        let x = inside.reaches(z, outlet);
        let reach = math::max(bore, 0.15) + wall + if outlet { unit.shape.length().si() - x } else { x };
        let along = [if outlet { reach } else { -reach }, 0.0, 0.0];
        add(id, name.to_owned(), Look::Pipe, pipe([x, 0.0, z], along, bore, PIPE), None);
    }
    let (from, to) = s.oil_end();
    let (x, z) = ((from + (to - from) * 0.66).si(), unit.retention.oil_draw.q.si());
    let side = 0.5 * inside.width(x, z);
    let draw = pipe([x, side, z], [0.0, 0.15 + wall, 0.0], BORE, PIPE);
    add("oil-draw", "Oil draw-off nozzle, side and size nominal".to_owned(), Look::Pipe, draw, None);
    if let Some((a, b)) = s.hopper().filter(|_| s.is_sunk()) {
        let (low, top) = (unit.shape.bottom().si() + 0.1, unit.shape.height().si() + 0.15);
        let suction = pipe([(a + b).si() * 0.5, 0.0, low], [0.0, 0.0, top - low], BORE, PIPE);
        add("drain", "Sludge suction pipe, size nominal".to_owned(), Look::Pipe, suction, None);
    } else if let Some((a, b)) = s.hopper() {
        let at = [(a + b).si() * 0.5, 0.0, unit.shape.bottom().si()];
        let drain = pipe(at, [0.0, 0.0, -0.15 - wall], BORE, PIPE);
        add("drain", "Sludge drain nozzle, size nominal".to_owned(), Look::Pipe, drain, None);
    }
}

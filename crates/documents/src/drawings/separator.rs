//! The separator of the diagram: its rooms in the order of the water's way, drains, vents, pumps, and its switches with what they
//! act on.

use super::symbols::{self, Signal};
use crate::instruments::{Acts, Hangs, Switch, switches};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::text::{Table, plain};
use crate::section::place::Section;
use stillrise_units::{Typed, print};

/// Width of the separator on paper without pumps in it, mm, and how far it reaches over and under the line of the water.
const UNIT: (f64, f64, f64) = (104.0, 14.0, 30.0);
/// What a compartment with pumps adds, mm.
const PUMPS: f64 = 30.0;
/// How far switches stand over the top, the lowest and one over the other, mm, and how far the panel.
const SWITCHES: (f64, f64, f64) = (14.0, 12.0, 52.0);

/// How wide it is, mm.
pub fn width(s: &Section) -> f64 {
    UNIT.0 + if s.unit().pump_out.is_some() { PUMPS } else { 0.0 }
}

/// Outline around the point where its middle meets the line of the water.
fn body(s: &Section, at: Point) -> Rect {
    let half = 0.5 * width(s);
    Rect { x0: at.x - half, y0: at.y - UNIT.1, x1: at.x + half, y1: at.y + UNIT.2 }
}

/// x of a share of what stands ahead of the pumps.
fn place(body: &Rect, share: f64) -> f64 {
    body.x0 + share * UNIT.0
}

/// Draws it.
pub fn draw(s: &Section, scene: &mut Scene, at: Point) {
    let unit = s.unit();
    let body = body(s, at);
    scene.on(Layer::Vessel).rect(&body, Some(Pen::Outline), Fill::None);
    let place = |share: f64| place(&body, share);
    let ahead = if unit.sand_trap.is_some() { 0.24 } else { 0.14 };
    rooms(s, scene, &body, (at.y, ahead));
    let count = s.train.count.q.si();
    let many = if count > 1.0 { format!(", one of {}", print::digits(count, 3)) } else { String::new() };
    let name = format!("{}{many}", plain(&unit.particulars.model));
    scene.on(Layer::Note).text(Text::new(pt(at.x, body.y1 + 15.0), &name).bold().anchored(Anchor::Middle));
    for (mark, x) in [("N1", body.x0 - 5.5), ("N2", body.x1 + 1.0)] {
        scene.text(Text::new(pt(x, at.y - 1.6), mark).sized(CAPTION));
    }
    // Under the hopper, or by a pipe from above where there is none.
    scene.part("drain", "Sludge drain", |scene| {
        let x = place(0.1);
        if s.hopper().is_some() && !s.is_sunk() {
            symbols::drain(scene, pt(x, body.y1), 10.0);
            scene.text(Text::new(pt(x + 3.0, body.y1 + 9.5), "N4 sludge").sized(CAPTION));
        } else {
            let word = if s.hopper().is_some() { "N4 sludge" } else { "sludge" };
            symbols::suction(scene, pt(x, body.y0), body.y1 - 3.0);
            scene.text(Text::new(pt(x + 2.0, body.y0 - 5.5), word).sized(CAPTION));
        }
    });
    scene.part("oil-draw", "Oil draw-off", |scene| {
        let x = place(0.74);
        scene.on(Layer::Piping).line(pt(x, at.y - 0.5), pt(x, body.y1), Pen::Hidden);
        symbols::drain(scene, pt(x, body.y1), 10.0);
        scene.text(Text::new(pt(x + 3.0, body.y1 + 9.5), "N3 oil").sized(CAPTION));
    });
    if let Some(pumps) = &unit.pump_out {
        scene.part("pump-out", "Pump-out compartment", |scene| {
            let wall = place(1.0);
            scene.on(Layer::Internals).line(pt(wall, at.y), pt(wall, body.y1), Pen::Outline);
            let low = at.y + 13.0;
            scene.on(Layer::Level).line(pt(wall, low), pt(body.x1, low), Pen::Surface);
            symbols::sunk_pump(scene, pt(wall + 9.0, body.y1 - 5.5), at.y, body.x1);
            let each = format!("{} pumps", print::digits(pumps.pumps.q.si(), 2));
            scene.on(Layer::Note).text(Text::new(pt(wall + 13.5, body.y1 - 2.0), &each).sized(CAPTION));
        });
    }
    scene.part("vent", "Vents", |scene| {
        // As many as the drawing counts: over sand, over oil, over clear water.
        let shares: &[f64] = match s.vents().len() {
            0 => &[],
            1 => &[0.3],
            2 => &[0.3, 0.93],
            _ => &[0.025, 0.3, 0.93],
        };
        for share in shares {
            symbols::vent(scene, pt(place(*share), body.y0));
            scene.on(Layer::Note).text(Text::new(pt(place(*share) - 2.6, body.y0 - 2.5), "V").sized(CAPTION));
        }
    });
}

/// Walls, plates and mesh.
fn rooms(s: &Section, scene: &mut Scene, body: &Rect, (water, ahead): (f64, f64)) {
    let unit = s.unit();
    let rim = body.y0 + 4.0;
    let place = |share: f64| place(body, share);
    scene.on(Layer::Internals);
    if unit.sand_trap.is_some() {
        scene.line(pt(place(0.14), rim), pt(place(0.14), water + 6.0), Pen::Outline);
        scene.line(pt(place(0.14), water + 12.0), pt(place(0.14), body.y1), Pen::Outline);
    }
    if unit.baffle.is_some() {
        scene.line(pt(place(ahead), rim), pt(place(ahead), body.y1), Pen::Hidden);
    }
    if unit.pack.is_some() {
        let area = Rect { x0: place(0.34), y0: body.y0 + 16.0, x1: place(0.6), y1: body.y1 - 6.0 };
        scene.rect(&area, Some(Pen::Medium), Fill::Hatch(Hatch::Lines { angle: 45.0, spacing: 2.2 }));
    }
    if unit.mesh.is_some() {
        let area = Rect { x0: place(0.6), y0: body.y0 + 16.0, x1: place(0.64), y1: body.y1 - 6.0 };
        scene.rect(&area, Some(Pen::Medium), Fill::Hatch(Hatch::Mesh));
    }
    scene.line(pt(place(0.87), rim), pt(place(0.87), body.y1 - 5.0), Pen::Outline);
    let end = if unit.pump_out.is_some() { place(1.0) } else { body.x1 };
    scene.on(Layer::Level).line(pt(body.x0, water), pt(end, water), Pen::Surface);
}

/// Switches on the unit, with lines to what they act on; answers their schedule. `shut` is the closure, `fed` the feed pump.
pub fn instruments(s: &Section, scene: &mut Scene, at: Point, shut: Option<Point>, fed: Option<Point>) -> Table {
    let mut table = Table::new(["Tag", "Qty", "What", "Set point over floor", "Does"]);
    let body = body(s, at);
    let all = switches(s);
    let mut row = 0.0;
    for switch in all.iter().filter(|switch| switch.hangs == Hangs::Oil) {
        // A shut-off acts only where something stands that can shut or stop.
        let acts = match switch.acts {
            Acts::Shuts => shut,
            Acts::StopsFeed => fed,
            Acts::Rings | Acts::Pumps => None,
        };
        of_oil(s, scene, (&body, at), (switch, row), acts);
        row += 1.0;
    }
    let pumps: Vec<&Switch> = all.iter().filter(|switch| switch.hangs == Hangs::Pumps).collect();
    of_pumps(scene, &body, at, &pumps);
    for switch in &all {
        table.row([
            switch.tag(),
            print::digits(switch.count(s), 2),
            switch.what.to_owned(),
            s.write(switch.level),
            switch.does.to_owned(),
        ]);
    }
    table
}

/// A switch where oil is held, in its place among those; with its alarm and what it acts on.
fn of_oil(
    s: &Section,
    scene: &mut Scene,
    (body, at): (&Rect, Point),
    (switch, row): (&Switch, f64),
    acts: Option<Point>,
) {
    let top = body.y0;
    let bubble = pt(place(body, 0.67 + 0.13 * row), top - SWITCHES.0 - SWITCHES.1 * row);
    let panel = pt(bubble.x, top - SWITCHES.2);
    scene.part("instruments", "Level switches", |scene| {
        symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + 3.0)], Signal::Process);
        symbols::instrument(scene, bubble, switch.letters, switch.number);
        if let Some(alarm) = switch.alarm {
            symbols::signal(scene, &[bubble.by(0.0, -5.0), panel.by(0.0, 5.0)], Signal::Electric);
            symbols::on_panel(scene, panel, alarm, switch.number);
        }
        if let Some(tip) = acts {
            let knee = if tip.x > panel.x { panel.by(5.0, 0.0) } else { panel.by(-5.0, 0.0) };
            // The other alarm may stand in the way.
            let knees = if tip.x > panel.x && s.unit().pump_out.is_none() {
                vec![knee, pt(tip.x, panel.y), tip]
            } else {
                let over = panel.y - 7.5;
                vec![panel.by(0.0, -5.0), pt(panel.x, over), pt(tip.x, over), tip]
            };
            symbols::signal(scene, &knees, Signal::Electric);
        }
    });
}

/// The switches of the effluent pumps.
fn of_pumps(scene: &mut Scene, body: &Rect, at: Point, all: &[&Switch]) {
    if all.is_empty() {
        return;
    }
    let top = body.y0;
    let middle = place(body, 1.0) + 0.55 * PUMPS;
    let pump = pt(place(body, 1.0) + 9.0, body.y1 - 5.5);
    scene.part("instruments", "Level switches", |scene| {
        for (row, switch) in (0_u8..).zip(all) {
            let row = f64::from(row);
            let deep = 9.0 - 3.0 * row;
            let bubble = pt(middle - 7.0 + 7.0 * row, top - SWITCHES.0 - SWITCHES.1 * row);
            symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + deep + 4.0)], Signal::Process);
            symbols::signal(scene, &[bubble.by(5.0, 0.0), pt(body.x1 - 1.5, bubble.y)], Signal::Electric);
            symbols::instrument(scene, bubble, switch.letters, switch.number);
            if let Some(alarm) = switch.alarm {
                let panel = pt(bubble.x, top - SWITCHES.2);
                symbols::signal(scene, &[bubble.by(0.0, -5.0), panel.by(0.0, 5.0)], Signal::Electric);
                symbols::on_panel(scene, panel, alarm, switch.number);
            }
        }
        let edge = body.x1 - 1.5;
        let highest = top - SWITCHES.0 - 2.0 * SWITCHES.1;
        symbols::signal(scene, &[pt(edge, highest), pt(edge, pump.y), pump.by(3.2, 0.0)], Signal::Electric);
    });
}

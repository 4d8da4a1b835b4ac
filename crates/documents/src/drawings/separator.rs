//! The separator of the diagram: its rooms in the order of the water's way, drains, vents, pumps, and its switches with what they
//! act on.

use super::symbols::{self, Signal};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::text::{Table, plain};
use crate::section::place::Section;
use stillrise_handbook::vessel::alarms::Mark;
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
        if s.hopper().is_some() {
            symbols::drain(scene, pt(x, body.y1), 10.0);
            scene.text(Text::new(pt(x + 3.0, body.y1 + 9.5), "N4 sludge").sized(CAPTION));
        } else {
            symbols::suction(scene, pt(x, body.y0), body.y1 - 3.0);
            scene.text(Text::new(pt(x + 2.0, body.y0 - 5.5), "sludge").sized(CAPTION));
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
    if !unit.arrangement.is_built_in() {
        scene.part("vent", "Vents", |scene| {
            let pumps = unit.pump_out.as_ref().map(|_| 1.04);
            for share in [Some(0.3), Some(0.93), pumps].into_iter().flatten() {
                symbols::vent(scene, pt(place(share), body.y0));
                scene.on(Layer::Note).text(Text::new(pt(place(share) - 2.6, body.y0 - 2.5), "V").sized(CAPTION));
            }
        });
    }
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
    let mut table = Table::new(["Tag", "What", "Set point over floor", "Does"]);
    let body = body(s, at);
    let top = body.y0;
    let mut k = 0_u8;
    if let Some(oil) = s.governing() {
        for (mark, switch, alarm, what) in [
            (Mark::Alarm, "LSH", "LAH", "oil interface, alarm"),
            (Mark::ShutOff, "LSHH", "LAHH", "oil interface, shut-off"),
        ] {
            let Some(level) = oil.level(mark) else { continue };
            // A shut-off acts only where something stands that can shut or stop.
            let acts = if mark == Mark::ShutOff { shut.or(fed) } else { None };
            if mark == Mark::ShutOff && acts.is_none() {
                continue;
            }
            k += 1;
            let row = f64::from(k - 1);
            let bubble = pt(place(&body, 0.67 + 0.13 * row), top - SWITCHES.0 - SWITCHES.1 * row);
            let panel = pt(bubble.x, top - SWITCHES.2);
            scene.part("instruments", "Level switches", |scene| {
                symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + 3.0)], Signal::Process);
                symbols::signal(scene, &[bubble.by(0.0, -5.0), panel.by(0.0, 5.0)], Signal::Electric);
                symbols::instrument(scene, bubble, switch, k);
                symbols::on_panel(scene, panel, alarm, k);
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
            let does = match (mark, shut.is_some()) {
                (Mark::Alarm, _) => "rings on the panel; oil is pumped out",
                (_, true) => "rings on the panel, shuts the outlet",
                _ => "rings on the panel, stops the feed pump",
            };
            table.row([format!("{switch} {k}"), what.to_owned(), s.write(level.interface.q), does.to_owned()]);
        }
    }
    if let Some(pumps) = &s.unit().pump_out {
        k += 1;
        let middle = place(&body, 1.0) + 0.55 * PUMPS;
        let pump = pt(place(&body, 1.0) + 9.0, body.y1 - 5.5);
        let all = [
            ("LSL", pumps.stop.q, "stops the effluent pumps", 9.0),
            ("LSH", pumps.start.q, "starts the first effluent pump", 6.0),
            ("LSHH", pumps.alarm.q, "starts the second, rings on the panel", 3.0),
        ];
        scene.part("instruments", "Level switches", |scene| {
            for (row, (letters, level, does, deep)) in (0_u8..).zip(all) {
                let row = f64::from(row);
                let bubble = pt(middle - 7.0 + 7.0 * row, top - SWITCHES.0 - SWITCHES.1 * row);
                symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + deep + 4.0)], Signal::Process);
                symbols::signal(scene, &[bubble.by(5.0, 0.0), pt(body.x1 - 1.5, bubble.y)], Signal::Electric);
                symbols::instrument(scene, bubble, letters, k);
                if letters == "LSHH" {
                    let panel = pt(bubble.x, top - SWITCHES.2);
                    symbols::signal(scene, &[bubble.by(0.0, -5.0), panel.by(0.0, 5.0)], Signal::Electric);
                    symbols::on_panel(scene, panel, "LAHH", k);
                }
                table.row([
                    format!("{letters} {k}"),
                    "pump-out compartment".to_owned(),
                    s.write(level),
                    does.to_owned(),
                ]);
            }
            let edge = body.x1 - 1.5;
            let highest = top - SWITCHES.0 - 2.0 * SWITCHES.1;
            symbols::signal(scene, &[pt(edge, highest), pt(edge, pump.y), pump.by(3.2, 0.0)], Signal::Electric);
        });
    }
    table
}

//! Piping and instruments: what stands on the water's way with its valves, drains, vents and switches, by the symbols of ISO
//! 10628-2 and the letters of ISA-5.1 (both from memory). Not to scale.

use super::symbols::{self, Signal};
use super::{Made, block};
use crate::profile::stations::{Side, Stop, What, stations};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::schedule::{Column, letters};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::text::{Table, lines};
use crate::section::place::Section;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::math;

/// Width of the separator on paper, mm.
const UNIT: (f64, f64) = (104.0, 52.0);
/// Widest and narrowest column of another station, mm.
const COLUMN: (f64, f64) = (36.0, 17.0);

/// The sheet; `None` where more stands on the way than a sheet is wide.
pub fn sheet(s: &Section, size: SheetSize) -> Option<Made> {
    let stops = stations(s.settled);
    let mut sheet = Sheet::open(size, &block(s, "Piping and instruments", None), &description(&stops));
    let area = sheet.drawing;
    let single: Vec<&Stop> = stops.iter().filter(|stop| stands(stop.what)).collect();
    let others = f64::from(u8::try_from(single.iter().filter(|stop| stop.what != What::Unit).count()).ok()? + 1);
    let column = math::min((area.width() - UNIT.0 - 8.0) / others, COLUMN.0);
    if column < COLUMN.1 {
        return None;
    }
    let scene = &mut sheet.scene;
    let line = area.y0 + 70.0;
    let mut longer: Vec<String> = Vec::new();
    let mut x = area.x0 + 0.5 * (area.width() - UNIT.0 - column * others);
    let sources: Vec<String> =
        stops.iter().filter(|stop| stop.what.side() == Side::Source).map(|stop| stop.name.clone()).collect();
    scene.part("sources", "Where the water comes from", |scene| {
        symbols::connector(scene, pt(x, line), column - 4.0, false);
        let told = format!("from {}", sources.join(", "));
        if !words(scene, pt(x + 0.5 * (column - 4.0), line + 9.0), column - 2.0, &told) {
            words(
                scene,
                pt(x + 0.5 * (column - 4.0), line + 9.0),
                column - 2.0,
                "from surfaces and streams: see the notes",
            );
            longer.push(format!("The water comes from {}.", sources.join(", ")));
        }
    });
    let mut end = x + column - 4.0;
    x += column;
    let mut unit = None;
    let mut shut: Option<Point> = None;
    let mut fed: Option<Point> = None;
    for stop in single {
        let wide = if stop.what == What::Unit { UNIT.0 } else { column };
        let middle = pt(x + 0.5 * wide, line);
        let pen = if stop.asked { Pen::Phantom } else { Pen::Medium };
        scene.part(&stop.station.id, &stop.station.title, |scene| {
            let half = match stop.what {
                What::Unit => {
                    separator(s, scene, middle);
                    unit = Some(middle);
                    0.5 * UNIT.0
                }
                What::Outfall => {
                    symbols::connector(scene, pt(middle.x - 0.5 * (column - 4.0), line), column - 4.0, true);
                    0.5 * (column - 4.0)
                }
                What::Pump | What::LiftAsked | What::PumpBehind => {
                    fed = Some(middle).filter(|_| unit.is_none());
                    symbols::pump(scene, middle, pen)
                }
                What::Closure => {
                    shut = Some(middle.by(0.0, -7.5));
                    symbols::closure(scene, middle, pen)
                }
                What::SamplePoint => symbols::sample(scene, middle),
                What::Screen => symbols::screen(scene, middle, pen),
                What::Splitter => symbols::splitter(scene, middle, pen),
                What::Polisher => symbols::bed(scene, middle, pen),
                _ => symbols::tank(scene, middle, pen),
            };
            scene.on(Layer::Piping);
            scene.arrow(pt(end, line), pt(middle.x - half, line), Pen::Outline);
            end = middle.x + half;
        });
        if stop.what != What::Unit {
            let facts = stop.station.says.join(", ");
            let told = if facts.is_empty() { stop.name.clone() } else { format!("{}: {facts}", stop.name) };
            if !words(scene, middle.by(0.0, 17.0), column - 2.0, &told) {
                words(scene, middle.by(0.0, 17.0), column - 2.0, &stop.name);
                longer.push(format!("{}.", crate::summary::capital(&told)));
            }
        }
        x += wide;
    }
    let table = unit.map(|at| instruments(s, scene, at, shut, fed));
    let mut left = Column::new(Rect { x0: area.x0, y0: line + 64.0, x1: area.x0 + 150.0, y1: sheet.corner.y1 });
    if let Some(table) = table.filter(|table| !table.rows.is_empty()) {
        left.heading(&mut sheet.scene, "Instruments");
        left.table(&mut sheet.scene, &table);
    }
    let mut right = Column::new(Rect { x0: area.x0 + 160.0, y0: line + 64.0, x1: area.x1, y1: area.y1 });
    right.heading(&mut sheet.scene, "Of this diagram");
    for (k, note) in notes(s, &stops).iter().chain(&longer).enumerate() {
        right.item(&mut sheet.scene, &(k + 1).to_string(), note);
    }
    Some(Made { name: "piping-and-instruments", kind: "Piping and instruments", scale: None, sheet })
}

/// Whether it has a symbol of its own; sources share one, and what is built into the unit is drawn with it.
fn stands(what: What) -> bool {
    what.side() != Side::Source && !matches!(what, What::SandTrap | What::PumpOut)
}

/// Most lines under a symbol.
const LINES: usize = 12;

/// Words folded under a symbol, in small lettering; nothing of them where they are too long for that.
fn words(scene: &mut Scene, at: Point, width: f64, text: &str) -> bool {
    let folded = lines(text, letters(width, CAPTION));
    if folded.len() > LINES {
        return false;
    }
    scene.on(Layer::Note);
    for (k, line) in folded.iter().enumerate() {
        let y = at.y + 1.5 * CAPTION * f64::from(u8::try_from(k).unwrap_or(0));
        scene.text(Text::new(pt(at.x, y), line).sized(CAPTION).anchored(Anchor::Middle));
    }
    true
}

/// The separator with its rooms, in the order of its compartments.
fn separator(s: &Section, scene: &mut Scene, at: Point) {
    let unit = s.unit();
    let body = Rect { x0: at.x - 0.5 * UNIT.0, y0: at.y - 14.0, x1: at.x + 0.5 * UNIT.0, y1: at.y + UNIT.1 - 22.0 };
    scene.on(Layer::Vessel).rect(&body, Some(Pen::Outline), Fill::None);
    let rim = body.y0 + 4.0;
    let place = |share: f64| body.x0 + share * body.width();
    scene.on(Layer::Internals);
    let mesh = unit.mesh.is_some();
    if unit.baffle.is_some() {
        scene.line(pt(place(0.14), rim), pt(place(0.14), body.y1), Pen::Hidden);
    }
    if unit.pack.is_some() {
        let area = Rect { x0: place(0.32), y0: body.y0 + 16.0, x1: place(0.62), y1: body.y1 - 6.0 };
        let hatch = crate::render::hatch::Hatch::Lines { angle: 45.0, spacing: 2.2 };
        scene.rect(&area, Some(Pen::Medium), Fill::Hatch(hatch));
    }
    if mesh {
        let area = Rect { x0: place(0.62), y0: body.y0 + 16.0, x1: place(0.66), y1: body.y1 - 6.0 };
        scene.rect(&area, Some(Pen::Medium), Fill::Hatch(crate::render::hatch::Hatch::Mesh));
    }
    scene.line(pt(place(0.86), rim), pt(place(0.86), body.y1 - 5.0), Pen::Outline);
    scene.on(Layer::Level).line(pt(body.x0, at.y), pt(body.x1, at.y), Pen::Surface);
    let count = s.train.count.q;
    let many = if stillrise_units::Typed::si(count) > 1.0 {
        format!(", one of {}", stillrise_units::print::digits(stillrise_units::Typed::si(count), 3))
    } else {
        String::new()
    };
    let name = format!("{}{many}", crate::render::text::plain(&unit.particulars.model));
    scene.on(Layer::Note).text(Text::new(pt(at.x, body.y1 + 15.0), &name).bold().anchored(Anchor::Middle));
    for (mark, x) in [("N1", body.x0 - 5.5), ("N2", body.x1 + 1.0)] {
        scene.text(Text::new(pt(x, at.y - 1.6), mark).sized(CAPTION));
    }
    // Drains under the hopper, or from the floor; what the shop proposes as vent.
    let drain = pt(place(0.1), body.y1);
    scene.part("drain", "Sludge drain", |scene| {
        symbols::drain(scene, drain, 10.0);
        scene.text(
            Text::new(drain.by(3.0, 9.5), if s.hopper().is_some() { "N4 sludge" } else { "pump-out" }).sized(CAPTION),
        );
    });
    scene.part("oil-draw", "Oil draw-off", |scene| {
        let draw = pt(place(0.76), at.y - 0.5);
        scene.on(Layer::Piping).line(draw, pt(draw.x, body.y1), Pen::Hidden);
        symbols::drain(scene, pt(draw.x, body.y1), 10.0);
        scene.text(Text::new(pt(draw.x + 3.0, body.y1 + 9.5), "N3 oil").sized(CAPTION));
    });
    if !unit.body.is_open() {
        scene.part("vent", "Vents", |scene| {
            for share in [0.25, 0.93] {
                symbols::vent(scene, pt(place(share), body.y0));
            }
        });
    }
}

/// Switches on the unit, with lines to what they act on; answers their schedule.
fn instruments(s: &Section, scene: &mut Scene, at: Point, shut: Option<Point>, fed: Option<Point>) -> Table {
    let mut table = Table::new(["Tag", "What", "Set point over floor", "Does"]);
    let top = at.y - 14.0;
    let place = |share: f64| at.x + (share - 0.5) * UNIT.0;
    let mut k = 0_u8;
    if let Some(oil) = s.governing() {
        for (mark, letters, what) in
            [(Mark::Alarm, "LAH", "oil interface, alarm"), (Mark::ShutOff, "LAHH", "oil interface, shut-off")]
        {
            let Some(level) = oil.level(mark) else { continue };
            // A shut-off acts only where something stands that can shut or stop.
            let acts = if mark == Mark::ShutOff { shut.or(fed) } else { None };
            if mark == Mark::ShutOff && acts.is_none() {
                continue;
            }
            k += 1;
            let bubble = pt(place(0.7 + 0.09 * f64::from(k - 1)) - 2.0, top - 14.0 - 12.0 * f64::from(k - 1));
            let tag = format!("{letters} {k}");
            scene.part("instruments", "Level switches", |scene| {
                symbols::instrument(scene, bubble, letters, k);
                symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + 3.0)], Signal::Process);
                if let Some(tip) = acts {
                    let knee = if tip.x > bubble.x { bubble.by(5.0, 0.0) } else { bubble.by(-5.0, 0.0) };
                    symbols::signal(scene, &[knee, pt(tip.x, bubble.y), tip], Signal::Electric);
                }
            });
            let does = match (mark, shut.is_some()) {
                (Mark::Alarm, _) => "rings; oil is pumped out",
                (_, true) => "shuts the outlet",
                _ => "stops the feed pump",
            };
            table.row([tag, what.to_owned(), s.write(level.interface.q), does.to_owned()]);
        }
    }
    if let Some(pumps) = &s.unit().pump_out {
        k += 1;
        let bubble = pt(place(0.95), top - 14.0);
        scene.part("instruments", "Level switches", |scene| {
            symbols::instrument(scene, bubble, "LS", k);
            symbols::signal(scene, &[bubble.by(0.0, 5.0), pt(bubble.x, at.y + 6.0)], Signal::Process);
        });
        table.row([
            format!("LS {k}"),
            "pump-out compartment".to_owned(),
            s.write(pumps.start.q),
            "starts the effluent pump".to_owned(),
        ]);
    }
    table
}

/// What is to be known.
fn notes(s: &Section, stops: &[Stop]) -> Vec<String> {
    let mut all = vec![
        "Not to scale. Thick lines carry water or oil; thin broken lines from a switch are electric signals.".to_owned(),
        "Symbols after ISO 10628-2, letters after ISA-5.1: L level, A alarm, H high, HH higher, S switch.".to_owned(),
        "Valves at drains stand shut; line sizes other than those of the nozzles, materials and ratings are for the designer of the piping.".to_owned(),
    ];
    if stops.iter().any(|stop| stop.asked) {
        all.push("What is drawn in broken lines is asked for and not decided.".to_owned());
    }
    if s.governing().and_then(|oil| oil.level(Mark::ShutOff)).is_some()
        && !stops.iter().any(|stop| matches!(stop.what, What::Closure | What::Pump))
    {
        all.push("No closure and no pump stands here that a shut-off could act on.".to_owned());
    }
    all.push(
        "Electrical apparatus near the vents and the oil must suit the areas that the authority draws.".to_owned(),
    );
    all
}

fn description(stops: &[Stop]) -> String {
    let names: Vec<&str> = stops.iter().filter(|stop| stands(stop.what)).map(|stop| stop.name.as_str()).collect();
    format!("Diagram of piping and instruments, in the direction of flow: {}.", names.join(", "))
}

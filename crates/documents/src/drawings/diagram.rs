//! Piping and instruments: what stands on the water's way with its valves, drains, vents and switches, by the symbols of ISO
//! 10628-2 and the letters of ISA-5.1 (both from memory). Not to scale.

use super::separator::{self, instruments, width};
use super::{Made, block, symbols};
use crate::profile::stations::{Side, Stop, What, stations};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::schedule::{Column, letters};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::text::lines;
use crate::section::place::Section;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::math;

/// Height of the drawing on the usual paper, mm.
const USUAL: f64 = 230.0;
/// Widest and narrowest column of another station, mm.
const COLUMN: (f64, f64) = (36.0, 17.0);

/// The sheet; `None` where more stands on the way than a sheet is wide.
pub fn sheet(s: &Section, size: SheetSize) -> Option<Made> {
    let own = width(s);
    let stops = stations(s.settled);
    let mut sheet = Sheet::open(size, &block(s, "Piping and instruments", None), &description(&stops));
    let area = sheet.drawing;
    let single: Vec<&Stop> = stops.iter().filter(|stop| stands(stop.what)).collect();
    let others = f64::from(u8::try_from(single.iter().filter(|stop| stop.what != What::Unit).count()).ok()? + 1);
    let column = math::min((area.width() - own - 8.0) / others, COLUMN.0);
    if column < COLUMN.1 {
        return None;
    }
    let scene = &mut sheet.scene;
    // On larger paper it does not hang under the edge.
    let line = area.y0 + 76.0 + 0.3 * math::max(area.height() - USUAL, 0.0);
    let mut longer: Vec<String> = Vec::new();
    let mut x = area.x0 + 0.5 * (area.width() - own - column * others);
    let sources: Vec<String> =
        stops.iter().filter(|stop| stop.what.side() == Side::Source).map(|stop| stop.name.clone()).collect();
    // The mark of the inlet stands behind it where nothing stands between.
    let from = math::max(column - 10.0, 12.0);
    scene.part("sources", "Where the water comes from", |scene| {
        symbols::connector(scene, pt(x, line), from, false);
        let told = format!("from {}", sources.join(", "));
        if !words(scene, pt(x + 0.5 * from, line + 9.0), column - 2.0, &told) {
            words(scene, pt(x + 0.5 * from, line + 9.0), column - 2.0, "from surfaces and streams: see the notes");
            longer.push(format!("The water comes from {}.", sources.join(", ")));
        }
    });
    let mut end = x + from;
    x += column;
    let mut unit = None;
    let mut shut: Option<Point> = None;
    let mut fed: Option<Point> = None;
    for stop in single {
        let wide = if stop.what == What::Unit { own } else { column };
        let middle = pt(x + 0.5 * wide, line);
        let pen = if stop.asked { Pen::Phantom } else { Pen::Medium };
        scene.part(&stop.station.id, &stop.station.title, |scene| {
            let half = match stop.what {
                What::Unit => {
                    separator::draw(s, scene, middle);
                    unit = Some(middle);
                    0.5 * own
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
    let mut left = Column::new(Rect { x0: area.x0 + 3.5, y0: line + 58.0, x1: area.x0 + 153.0, y1: sheet.corner.y1 });
    if let Some(table) = table.filter(|table| !table.rows.is_empty()) {
        left.heading(&mut sheet.scene, "Instruments");
        left.table(&mut sheet.scene, &table);
    }
    let mut right = Column::new(Rect { x0: area.x0 + 160.0, y0: line + 58.0, x1: area.x1, y1: area.y1 });
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

/// What is to be known.
fn notes(s: &Section, stops: &[Stop]) -> Vec<String> {
    let mut all = vec![
        "Not to scale. Thick lines carry water or oil; thin broken lines from a switch are electric signals.".to_owned(),
        "Symbols after ISO 10628-2, letters after ISA-5.1: L level, A alarm, S switch, L low, H high, HH higher; V vent. A line through a circle: on the panel.".to_owned(),
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
    if !s.unit().arrangement.is_built_in() {
        all.push("One vent for each space of vapour that walls part, led to where the authority permits; sizes on the schedule of nozzles.".to_owned());
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

//! Where the water comes from and where it goes: surfaces and streams with their areas and flows, what stands on the way, the
//! sample point and the outfall, and whether anything passes the unit by. For who permits the discharge. Not to scale.

use super::{Made, block};
use crate::profile::stations::{Side, Stop, What, stations};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, TEXT, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::render::schedule::{Column, letters};
use crate::render::sheet::{Sheet, SheetSize};
use crate::render::text::{Table, lines, plain};
use crate::section::place::Section;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::chemicals::Which;
use stillrise_units::catalog::{FT2, IN_H, M2, MM_H, ONE};
use stillrise_units::{Typed, math, print};

/// Width of a box of a source, its height, and the room between two, mm.
const SOURCE: (f64, f64, f64) = (64.0, 13.8, 2.5);
/// Height of the drawing on the usual paper, mm.
const USUAL: f64 = 230.0;
/// Room for the diagram from above, mm.
const DIAGRAM: f64 = 104.0;
/// Widest and narrowest box of a station, mm, and the line between two.
const STATION: (f64, f64, f64) = (46.0, 20.0, 9.0);
/// Height of such a box, mm.
const HIGH: f64 = 34.0;

/// The sheet; `None` where more stands on the way than a sheet is wide.
pub fn sheet(s: &Section, size: SheetSize) -> Option<Made> {
    let stops = stations(s.settled);
    let mut sheet = Sheet::open(size, &block(s, "Catchment and flow", None), &description(&stops));
    let area = sheet.drawing;
    // On larger paper it does not hang under the edge.
    let top = area.y0 + 0.3 * math::max(area.height() - USUAL, 0.0);
    let whole = Rect { y0: top, y1: top + math::min(DIAGRAM, 0.52 * area.height()), ..area };
    let (sources, way): (Vec<&Stop>, Vec<&Stop>) =
        stops.iter().filter(|stop| drawn(stop.what)).partition(|stop| comes_from(stop.what));
    let count = f64::from(u8::try_from(way.len()).ok()?);
    let left = whole.x0 + SOURCE.0 + 22.0;
    let wide = math::min((whole.x1 - left - STATION.2 * (count - 1.0)) / count, STATION.0);
    if wide < STATION.1 {
        return None;
    }
    let line = whole.y0 + 0.5 * whole.height();
    let scene = &mut sheet.scene;
    let bus = gathered(scene, &whole, &sources, line);
    let spare = math::max(whole.x1 - left - wide * count - STATION.2 * (count - 1.0), 0.0);
    let mut x = left + math::min(0.35 * spare, 40.0);
    let mut from = pt(bus, line);
    let mut past: Option<(Point, Point)> = None;
    for stop in way {
        let area = Rect { x0: x, y0: line - 0.5 * HIGH, x1: x + wide, y1: line + 0.5 * HIGH };
        scene.part(&stop.station.id, &stop.station.title, |scene| {
            scene.on(Layer::Piping).arrow(from, pt(area.x0, line), Pen::Outline);
            let pen = match (stop.what, stop.asked) {
                (_, true) => Pen::Phantom,
                (What::Unit, _) => Pen::Frame,
                _ => Pen::Medium,
            };
            scene.on(Layer::Vessel).rect(&area, Some(pen), Fill::None);
            words(scene, &area, stop);
        });
        if stop.what == What::Unit {
            past = Some((pt(area.x0 - 0.5 * STATION.2, line), pt(area.x1 + 0.5 * STATION.2, line)));
        }
        from = pt(area.x1, line);
        x = area.x1 + STATION.2;
    }
    if let Some((ahead, behind)) = past {
        bypass(s, scene, ahead, behind);
    }
    let below = whole.y1 + 5.0;
    let foot = sheet.corner.y1;
    let wide = math::min(sheet.corner.x1 - area.x0, 0.62 * area.width());
    let mut first = Column::new(Rect { x0: area.x0 + 3.5, y0: below, x1: area.x0 + 0.56 * wide, y1: foot });
    let mut second = Column::new(Rect { x0: first.area.x1 + 6.0, y0: below, x1: area.x0 + wide, y1: foot });
    tabled(scene, &mut first, "Where the water comes from", &origins(s));
    tabled(scene, &mut second, "Flows", &flows(s));
    let mut third = Column::new(Rect { x0: second.area.x1 + 6.0, y0: below, x1: area.x1, y1: area.y1 });
    third.heading(scene, "Of this diagram");
    for (k, note) in notes(s).iter().enumerate() {
        third.item(scene, &(k + 1).to_string(), note);
    }
    Some(Made { name: "catchment-and-flow", kind: "Catchment and flow", scale: None, sheet })
}

/// Whether it is a place where water comes from; what is held back and let go comes so too.
fn comes_from(what: What) -> bool {
    what.side() == Side::Source || matches!(what, What::Containment(_) | What::MoreContainments)
}

/// Whether it has a box of its own: rain falls on surfaces, and what is built into the unit is told with it.
fn drawn(what: What) -> bool {
    !matches!(what, What::Rain | What::SandTrap | What::PumpOut)
}

/// Boxes of the sources, gathered on one line; answers where that leaves, x in mm.
fn gathered(scene: &mut Scene, whole: &Rect, sources: &[&Stop], line: f64) -> f64 {
    let (wide, high, between) = SOURCE;
    let most = (1..40_u8).take_while(|n| f64::from(*n) * (high + between) <= whole.height()).last().unwrap_or(1);
    let most = usize::from(most);
    let shown = if sources.len() > most { most - 1 } else { sources.len() };
    let rows = f64::from(u8::try_from(if sources.len() > most { most } else { shown }).unwrap_or(1));
    let bus = whole.x0 + wide + 9.0;
    let mut y = line - 0.5 * (rows * (high + between) - between);
    let mut ends: Vec<f64> = Vec::new();
    let size = lettering(sources);
    let mut one = |scene: &mut Scene, y: f64, id: &str, title: &str, says: &[String], pen: Pen| {
        let area = Rect::new(whole.x0, y, wide, high);
        scene.part(id, title, |scene| {
            scene.on(Layer::Vessel).rect(&area, Some(pen), Fill::None);
            told(scene, &area, title, says, size);
            scene.on(Layer::Piping).line(pt(area.x1, y + 0.5 * high), pt(bus, y + 0.5 * high), Pen::Outline);
        });
        ends.push(y + 0.5 * high);
    };
    for stop in sources.iter().take(shown) {
        let pen = if stop.asked { Pen::Phantom } else { Pen::Medium };
        one(scene, y, &stop.station.id, &stop.name, &stop.station.says, pen);
        y += high + between;
    }
    if sources.len() > shown {
        let title = format!("{} more", sources.len() - shown);
        one(scene, y, "more-sources", &title, &["see the table".to_owned()], Pen::Medium);
    }
    let low = ends.iter().copied().fold(line, math::max);
    let top = ends.iter().copied().fold(line, math::min);
    scene.on(Layer::Piping).line(pt(bus, top), pt(bus, low), Pen::Outline);
    bus
}

/// The larger lettering where the words of all boxes of sources find room so: they are read as a list.
fn lettering(sources: &[&Stop]) -> f64 {
    let (wide, high) = (SOURCE.0 - 3.2, SOURCE.1 - 3.2);
    let rows = |text: &str| lines(text, letters(wide, TEXT)).len();
    let fits = |stop: &&Stop| {
        let facts = f64::from(u8::try_from(rows(&stop.station.says.join(", "))).unwrap_or(u8::MAX));
        rows(&stop.name) == 1 && facts * 1.5 * TEXT + TEXT <= high
    };
    if sources.iter().all(fits) { TEXT } else { CAPTION }
}

/// A name over what is said of it, cut where the box ends.
fn told(scene: &mut Scene, area: &Rect, title: &str, says: &[String], size: f64) {
    scene.on(Layer::Note);
    let inner = area.grown(-1.6);
    let name = lines(title, letters(inner.width(), size)).into_iter().next().unwrap_or_default();
    scene.text(Text::new(pt(inner.x0, inner.y0 + size), &name).sized(size).bold());
    let most = if size == TEXT { 2 } else { 3 };
    for (k, fact) in lines(&says.join(", "), letters(inner.width(), size)).iter().take(most).enumerate() {
        let y = inner.y0 + size + 1.5 * size * f64::from(u8::try_from(k + 1).unwrap_or(1));
        scene.text(Text::new(pt(inner.x0, y), fact).sized(size));
    }
}

/// The words of a station in the middle of its box, in the larger lettering where they find room so; facts that find none in
/// either stand on the diagram of piping.
fn words(scene: &mut Scene, area: &Rect, stop: &Stop) {
    let inner = area.grown(-1.5);
    let high = |rows: usize, size: f64| f64::from(u8::try_from(rows).unwrap_or(u8::MAX)) * 1.5 * size;
    let set = |size: f64| {
        let room = letters(inner.width(), size);
        let mut all: Vec<(String, bool)> = lines(&stop.name, room).into_iter().map(|line| (line, true)).collect();
        let mut whole = true;
        for fact in &stop.station.says {
            let folded = lines(fact, room);
            if high(all.len() + folded.len(), size) > inner.height() {
                whole = false;
                break;
            }
            all.extend(folded.into_iter().map(|line| (line, false)));
        }
        (all, whole)
    };
    let (size, all) = match set(TEXT) {
        (all, true) => (TEXT, all),
        _ => (CAPTION, set(CAPTION).0),
    };
    scene.on(Layer::Note);
    let top = inner.y0 + 0.5 * math::max(inner.height() - high(all.len(), size), 0.0);
    for (k, (line, bold)) in all.iter().enumerate() {
        let text =
            Text::new(pt(inner.centre().x, top + size + high(k, size)), line).sized(size).anchored(Anchor::Middle);
        scene.text(if *bold { text.bold() } else { text });
    }
}

/// Whether anything passes the unit by.
fn bypass(s: &Section, scene: &mut Scene, ahead: Point, behind: Point) {
    let asked = s.settled.job.enquiry.european.as_ref().is_some_and(|block| *block.bypass == Some(true));
    let low = ahead.y + 0.5 * HIGH + 8.0;
    let middle = 0.5 * (ahead.x + behind.x);
    let text = if asked { "BYPASS: ASKED FOR, NOT DECIDED" } else { "NO BYPASS" };
    scene.part("bypass", "Bypass of the unit", |scene| {
        if asked {
            scene.on(Layer::Piping).polyline(&[ahead, pt(ahead.x, low), pt(behind.x, low), behind], Pen::Phantom);
        }
        let y = if asked { low + 1.6 * TEXT } else { ahead.y + 0.5 * HIGH + 2.0 * TEXT };
        scene.on(Layer::Note).text(Text::new(pt(middle, y), text).anchored(Anchor::Middle));
    });
}

/// A table under its heading, as many rows as find room; a last row tells how many are left out.
fn tabled(scene: &mut Scene, column: &mut Column, heading: &str, table: &Table) {
    column.heading(scene, heading);
    let mut keep = table.rows.len();
    loop {
        let mut part = Table { rows: table.rows.iter().take(keep).cloned().collect(), ..table.clone() };
        if keep < table.rows.len() {
            let mut last = vec![format!("and {} more", table.rows.len() - keep)];
            last.resize(table.columns(), "–".to_owned());
            part.rows.push(last);
        }
        if column.table(scene, &part) || keep == 0 {
            return;
        }
        keep -= 1;
    }
}

/// Surfaces and streams with what they bring.
fn origins(s: &Section) -> Table {
    let e = &s.settled.job.enquiry;
    let basis = s.settled.job.design.basis.as_ref();
    let mut table = Table::new(["Surface or stream", "Area", "Flow"]);
    let nothing = || "–".to_owned();
    for (k, surface) in e.surfaces.iter().enumerate() {
        let name = surface.name.as_deref().map_or_else(|| format!("surface {}", k + 1), plain);
        let area = surface.area.q().map_or_else(|| "not said".to_owned(), |q| say(s, q, (&FT2, &M2)));
        let counted = basis.and_then(|basis| basis.storm.as_ref()).is_some_and(|storm| storm.surfaces.contains(&k));
        table.row([name, area, if counted { "with the storm" } else { "held back" }.to_owned()]);
    }
    if let Some(storm) = basis.and_then(|basis| basis.storm.as_ref()) {
        table.row([
            "Storm over what is counted".to_owned(),
            say(s, storm.area.q, (&FT2, &M2)),
            say(s, storm.flow.q, FLOW_UNITS),
        ]);
    }
    for water in basis.map_or(&[][..], |basis| &basis.waters) {
        if water.which != Which::Rain {
            table.row([plain(&water.name), nothing(), say(s, water.flow.q, FLOW_UNITS)]);
        }
    }
    table
}

/// The cases that the unit is designed for.
fn flows(s: &Section) -> Table {
    let mut table = Table::new(["Case", "Arrives", "To the unit"]);
    let Some(basis) = &s.settled.job.design.basis else { return table };
    for case in &basis.cases {
        table.row([plain(&case.name), say(s, case.inflow.q, FLOW_UNITS), say(s, case.feed.q, FLOW_UNITS)]);
    }
    table
}

fn say<Q: Typed>(s: &Section, q: Q, (us, si): stillrise_design::provenance::Pair) -> String {
    print::in_prose(q.si(), s.system.pick((us, si)))
}

/// What is to be known.
fn notes(s: &Section) -> Vec<String> {
    let e = &s.settled.job.enquiry;
    let mut all = vec!["Not to scale. The water goes from left to right.".to_owned()];
    let basis = s.settled.job.design.basis.as_ref();
    if let Some(storm) = basis.and_then(|basis| basis.storm.as_ref()) {
        all.push(format!(
            "Storm: {} on the area that is counted, runoff coefficient {}.",
            say(s, storm.intensity.q, (&IN_H, &MM_H)),
            print::in_prose(storm.coefficient.q.si(), &ONE)
        ));
    }
    if let Some(flow) = basis.and_then(stillrise_design::basis::Basis::design_flow) {
        all.push(format!("Design flow to the unit or units: {}.", say(s, flow.q, FLOW_UNITS)));
    }
    all.push(match e.european.as_ref().is_some_and(|block| *block.bypass == Some(true)) {
        true => {
            "A bypass was asked for. It is no part of this design: what passes the unit by is not treated.".to_owned()
        }
        false => "No bypass: all the water that is drawn passes the unit.".to_owned(),
    });
    let sampled = stations(s.settled).iter().any(|stop| stop.what == What::SamplePoint);
    all.push(match sampled {
        true => {
            "Samples are taken at the sample point, behind the unit and ahead of where other water joins.".to_owned()
        }
        false => {
            "No sample point stands in this train; one has to be named before the discharge is permitted.".to_owned()
        }
    });
    if stations(s.settled).iter().any(|stop| stop.asked) {
        all.push("What is drawn in broken lines is asked for and not decided.".to_owned());
    }
    all
}

fn description(stops: &[Stop]) -> String {
    let named = |from: bool| {
        let names: Vec<&str> = stops
            .iter()
            .filter(|stop| drawn(stop.what) && comes_from(stop.what) == from)
            .map(|stop| stop.name.as_str())
            .collect();
        names.join(", ")
    };
    format!("Diagram of the catchment and the flow. Water comes from {}; it passes {}.", named(true), named(false))
}

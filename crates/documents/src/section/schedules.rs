//! Schedules of the sheet: nozzles, oil and water levels, parts.

use super::place::{Section, zero};
use super::vessel::{manways, oil_draw};
use crate::instruments::{Hangs, Switch, places, switches, tags};
use crate::render::geometry::{Point, pt};
use crate::render::text::Table;
use stillrise_design::performance::State;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_design::stages::Place;
use stillrise_design::stages::stage::Datum;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG, GAL, GPM, IN, KG, KG_M3, L, LB, LB_FT3, M3_H, MM, PERCENT};
use stillrise_units::print::digits;

/// One line of the list of parts; its place in the list is its number.
pub struct PartLine {
    pub(crate) name: String,
    pub(crate) data: String,
    /// How many are in one unit.
    pub(crate) count: f64,
    /// Where its number points to.
    pub tip: Point,
    /// Whether the number stands in the row above the vessel; else beside its part.
    pub in_row: bool,
}

/// Set points of each oil.
pub fn oils(s: &Section) -> Vec<(String, Table)> {
    let all = s.performance.map_or(&[][..], |p| &p.levels);
    let one = |oil: &stillrise_design::performance::levels::OilLevels| {
        let mut table = Table::new(["Set point", "Layer", "Interface", "Surface", "Volume"]);
        for level in &oil.levels {
            table.row([
                capital(level.point.word),
                s.write(level.thickness.q),
                s.write(level.interface.q),
                s.write(level.surface.q),
                s.show(level.volume.q, (&GAL, &L)),
            ]);
        }
        (format!("Oil: {}", oil.oil), table)
    };
    all.iter().map(one).collect()
}

/// Water levels by flow.
pub fn waters(s: &Section) -> Option<(String, Table)> {
    let profiles = &s.performance?.profiles;
    let mut table = Table::new(["Flow", "Well", "Oil zone", "Inlet"]);
    let same = |a: &Profile, b: &Profile| {
        (a.flow.q, a.well.q, a.chamber.q, a.inlet.q) == (b.flow.q, b.well.q, b.chamber.q, b.inlet.q)
    };
    for (k, p) in profiles.iter().enumerate() {
        // The design flow is mostly the largest one; one line says it.
        if profiles.iter().skip(k + 1).any(|later| same(p, later)) {
            continue;
        }
        let flow = || s.show(p.flow.q, (&GPM, &M3_H));
        let name = match p.at.state() {
            None => capital(p.at.name()),
            Some(State::Clean) => format!("{}, clean", flow()),
            Some(State::End) => format!("{}, end", flow()),
        };
        table.row([name, s.write(p.well.q), s.write(p.chamber.q), s.write(p.inlet.q)]);
    }
    Some(("Water levels".to_owned(), table))
}

/// The parts that get a number: vessel and manways, the internals in the direction of flow, the float.
pub fn items(s: &Section) -> Vec<PartLine> {
    let unit = s.unit();
    let l = |q| s.write(q);
    let mut all = Vec::new();
    let mut add = |name: &str, data: String, tip, in_row, count| {
        all.push(PartLine { name: name.to_owned(), data, count, tip, in_row });
    };
    let mut shell = vec![unit.body.inside(l)];
    shell.extend(unit.channels.as_ref().map(|channels| {
        format!(
            "{} channels of {} clear, the walls between them on top",
            digits(channels.count.q.si(), 2),
            l(channels.width.q)
        )
    }));
    shell.extend(unit.particulars.wall.map(|wall| format!("walls {}", s.show(wall.q, (&IN, &MM)))));
    shell.extend(unit.particulars.material.clone());
    shell.extend(unit.particulars.empty_weight.as_ref().map(|w| format!("{} empty", s.show(w.q, (&LB, &KG)))));
    let rim = unit.shape.height();
    let name = if unit.arrangement.is_built_in() { "Walls and floor" } else { "Shell" };
    add(name, shell.join("; "), s.at(s.end_at(rim * 0.96, false), rim * 0.96).by(-0.5 * s.wall(), 0.0), true, 1.0);
    if let Some(access) = &unit.access {
        let opening = l(access.opening.q);
        let at = s.at(manways(s).first().copied().unwrap_or_else(zero), s.top()).by(0.0, 1.5);
        let up = if s.cover().is_some() || unit.arrangement.is_in_ground() { ", up to the ground" } else { "" };
        let data = format!("clear opening {opening}{up}");
        add("Manways with risers", data, at, true, access.count.q.si());
    }
    for part in s.drawn() {
        let data: String = part.data.iter().map(|datum| written(s, datum)).collect();
        add(part.name, data, s.at(part.tip.0, part.tip.1), part.in_row, 1.0);
    }
    let float = s.show(unit.retention.float_density.q, (&LB_FT3, &KG_M3));
    let mut told: Vec<Switch> = Vec::new();
    for (x, _, switch) in places(s) {
        if told.contains(&switch) {
            continue;
        }
        told.push(switch);
        let count = switch.count(s);
        let each = if count > 1.0 { ", one in each channel" } else { "" };
        let data = format!("float of {float}, trips at {}{each}", l(switch.level));
        // On its stem, a little lower for each, so that leaders part.
        let share = if told.len() > 1 { 0.3 } else { 0.5 };
        let tip = s.at(x, unit.outlet.crest.q + (rim - unit.outlet.crest.q) * share);
        add(&format!("Level switch {}", switch.tag()), data, tip, true, count);
    }
    let pumps: Vec<Switch> = switches(s).into_iter().filter(|switch| switch.hangs == Hangs::Pumps).collect();
    if let Some(zone) = unit.compartment(Place::PumpOut).filter(|_| !pumps.is_empty()) {
        let levels: Vec<String> = pumps.iter().map(|switch| l(switch.level)).collect();
        // On their stem, over the water.
        let stem = zone.to - (zone.to - zone.from) * 0.12;
        let tip = s.at(stem, unit.outlet.crest.q + (rim - unit.outlet.crest.q) * 0.5);
        let count = f64::from(u8::try_from(pumps.len()).unwrap_or(u8::MAX));
        add(&format!("Level switches {}", tags(&pumps)), format!("trip at {}", levels.join(", ")), tip, true, count);
    }
    if unit.body.is_open() && !unit.arrangement.is_built_in() {
        let tip = lid(s, &all);
        let data = "over the whole rim; load class to be agreed".to_owned();
        all.insert(1, PartLine { name: "Cover".to_owned(), data, count: 1.0, tip, in_row: true });
    }
    all
}

/// Where the number of the cover points to: into the widest gap between others, so that no leaders cross.
fn lid(s: &Section, others: &[PartLine]) -> Point {
    let rim = s.at(zero(), s.unit().shape.height()).by(0.0, -0.5);
    let mut taken: Vec<f64> = others.iter().filter(|item| item.in_row).map(|item| item.tip.x).collect();
    taken.extend([oil_draw(s).0.x, s.at(s.unit().shape.length(), zero()).x]);
    taken.sort_by(f64::total_cmp);
    let gaps = taken.windows(2).map(|pair| (pair[1] - pair[0], 0.5 * (pair[0] + pair[1])));
    let x = gaps.max_by(|a, b| a.0.total_cmp(&b.0)).map_or(rim.x, |(_, x)| x);
    pt(x, rim.y)
}

/// A word or a number of the list, as the drawing writes it.
fn written(s: &Section, datum: &Datum) -> String {
    match datum {
        Datum::Words(words) => (*words).to_owned(),
        Datum::Length(q) => s.write(*q),
        // Eighths of an inch and whole millimetres are too coarse for it.
        Datum::Fine(q) => s.show(*q, (&IN, &MM)),
        Datum::Fibre(q) => s.show(*q, (&MM, &MM)),
        Datum::Share(q) => s.show(*q, (&PERCENT, &PERCENT)),
        Datum::Count(q) => digits(q.si(), 6),
        Datum::Mass(q) => s.show(*q, (&LB, &KG)),
        Datum::Density(q) => s.show(*q, (&LB_FT3, &KG_M3)),
        Datum::Flow(q) => s.show(*q, (&GPM, &M3_H)),
        Datum::Angle(q) => s.show(*q, (&DEG, &DEG)),
    }
}

/// The list of parts.
pub fn parts(s: &Section) -> Table {
    let mut table = Table::new(["No.", "Part", "Data"]);
    for (k, item) in items(s).into_iter().enumerate() {
        table.row([(k + 1).to_string(), item.name, item.data]);
    }
    table
}

/// With a capital at the beginning.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

//! Schedules of the sheet: nozzles, oil and water levels, parts.

use super::place::{Section, zero};
use super::vessel::manways;
use crate::render::geometry::{Point, pt};
use crate::render::text::Table;
use stillrise_design::performance::State;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_design::stages::stage::Datum;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG, GAL, GPM, IN, KG, KG_M3, L, LB, LB_FT3, M3_H, MM, PERCENT};
use stillrise_units::print::digits;

/// One line of the list of parts; its place in the list is its number.
pub struct PartLine {
    name: &'static str,
    data: String,
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
    let mut add = |name, data: String, tip, in_row| all.push(PartLine { name, data, tip, in_row });
    let mut shell = vec![unit.body.inside(l)];
    shell.extend(unit.channels.as_ref().map(|channels| {
        format!("{} channels of {} side by side", digits(channels.count.q.si(), 2), l(channels.width.q))
    }));
    shell.extend(unit.particulars.wall.map(|wall| format!("walls {}", s.show(wall.q, (&IN, &MM)))));
    shell.extend(unit.particulars.material.clone());
    shell.extend(unit.particulars.empty_weight.as_ref().map(|w| format!("{} empty", s.show(w.q, (&LB, &KG)))));
    let rim = unit.shape.height();
    let name = if unit.arrangement.is_built_in() { "Walls and floor" } else { "Shell" };
    add(name, shell.join("; "), s.at(zero(), rim * 0.96).by(-0.5 * s.wall(), 0.0), true);
    if let Some(access) = &unit.access {
        let (count, opening) = (digits(access.count.q.si(), 2), l(access.opening.q));
        let at = s.at(manways(s).first().copied().unwrap_or_else(zero), s.top()).by(0.0, 1.5);
        add("Manways with risers", format!("{count}, clear opening {opening}, up to the ground"), at, true);
    }
    for part in s.drawn() {
        let data: String = part.data.iter().map(|datum| written(s, datum)).collect();
        add(part.name, data, s.at(part.tip.0, part.tip.1), part.in_row);
    }
    if let Some(alarm) = s.alarm() {
        let float = s.show(unit.retention.float_density.q, (&LB_FT3, &KG_M3));
        let crest = unit.outlet.crest.q;
        let tip = pt(s.along(s.oil_end(), 0.3), s.at(zero(), crest + (rim - crest) * 0.5).y);
        add("Level float", format!("{float}, trips at {}", l(alarm.interface.q)), tip, true);
    }
    all
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
        table.row([(k + 1).to_string(), item.name.to_owned(), item.data]);
    }
    table
}

/// With a capital at the beginning.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

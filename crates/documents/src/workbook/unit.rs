//! Sheets about the unit: parts, dimensions, nozzles, levels, weights, materials.

use super::{Pair, in_unit, recorded, with_unit};
use crate::render::xlsx::{Cell, Grid};
use crate::section::place::Section;
use crate::section::schedules;
use crate::summary::shop::Says;
use stillrise_design::performance::State;
use stillrise_design::provenance::{Node, Val};
use stillrise_units::catalog::{FT, GAL, GPM, IN, KG, L, LB, M, M3_H, MM};
use stillrise_units::{Length, Mass, Typed};

const LEVEL: Pair = (&IN, &MM);
const DATUM: Pair = (&FT, &M);
const HELD: Pair = (&GAL, &L);
const FLOW: Pair = (&GPM, &M3_H);

/// The numbered parts, as the drawing lists them.
pub fn parts(s: &Section) -> Grid {
    let mut grid = Grid::new("Parts", ["No.", "Part", "Data"]);
    let table = schedules::parts(s);
    for (k, row) in (1_u32..).zip(0..table.rows.len()) {
        grid.row([Cell::Number(f64::from(k)), Cell::text(table.cell(row, 1)), Cell::text(table.cell(row, 2))]);
    }
    grid
}

/// Every dimension as given or chosen.
pub fn dimensions(s: &Section) -> Grid {
    let mut grid = Grid::new("Dimensions", ["Part", "Dimension", "Value", "Unit"]);
    for (part, all) in s.unit().dimensions() {
        for (name, at) in all {
            let [value, unit] = recorded(s.settled, at);
            grid.row([Cell::text(part), Cell::text(name), value, unit]);
        }
    }
    grid
}

/// An elevation over the floor, and in the site's datum where that is known.
fn elevations(s: &Section, level: Length) -> [Cell; 2] {
    let floor = s.performance.and_then(|p| p.site.floor.as_ref());
    let datum = floor.map_or(Cell::Empty, |floor| in_unit(floor.q + level, s.system, DATUM));
    [in_unit(level, s.system, LEVEL), datum]
}

/// Nozzles.
pub fn nozzles(s: &Section) -> Grid {
    let unit = s.unit();
    let mut grid = Grid::new("Nozzles", ["Mark", "Quantity in a unit", "Size", "Service", "", ""]);
    grid.header.truncate(4);
    grid.header.push(with_unit("Elevation above the floor", s.system, LEVEL));
    grid.header.push(with_unit("Elevation in the site's datum", s.system, DATUM));
    let (inlet, outlet) = &unit.particulars.nozzles;
    let mut all = vec![
        ("N1", inlet.as_str(), "Inlet, invert", unit.inlet.invert.q),
        ("N2", outlet.as_str(), "Outlet, invert", unit.outlet.invert.q),
        ("N3", "", "Oil draw-off", unit.retention.oil_draw.q),
    ];
    if s.hopper().is_some() {
        all.push(("N4", "", "Sludge drain", unit.shape.bottom()));
    }
    for (mark, size, service, level) in all {
        let [floor, datum] = elevations(s, level);
        let size = if size.is_empty() { "not stated" } else { size };
        grid.row([Cell::text(mark), Cell::Number(1.0), Cell::text(size), Cell::text(service), floor, datum]);
    }
    grid
}

/// Set points of each oil, in the order in which a growing layer meets them.
pub fn set_points(s: &Section) -> Grid {
    let mut grid = Grid::new("Set points", ["Oil", "Set point", "What is done"]);
    grid.header.push(with_unit("Layer", s.system, LEVEL));
    grid.header.push(with_unit("Interface above the floor", s.system, LEVEL));
    grid.header.push(with_unit("Surface above the floor", s.system, LEVEL));
    grid.header.push(with_unit("Oil held in a unit", s.system, HELD));
    for oil in s.performance.iter().flat_map(|p| &p.levels) {
        for level in &oil.levels {
            grid.row([
                Cell::text(&oil.oil),
                Cell::text(level.point.word),
                Cell::text(level.point.action),
                in_unit(level.thickness.q, s.system, LEVEL),
                in_unit(level.interface.q, s.system, LEVEL),
                in_unit(level.surface.q, s.system, LEVEL),
                in_unit(level.volume.q, s.system, HELD),
            ]);
        }
    }
    grid
}

/// Water levels by flow.
pub fn waters(s: &Section) -> Grid {
    let mut grid = Grid::new("Water levels", ["At", "State"]);
    grid.header.push(with_unit("Flow", s.system, FLOW));
    for place in ["Clear well", "Oil zone", "Inlet"] {
        grid.header.push(with_unit(&format!("{place}, above the floor"), s.system, LEVEL));
    }
    for p in s.performance.iter().flat_map(|p| &p.profiles) {
        let state = match p.at.state() {
            None => "",
            Some(State::Clean) => "clean",
            Some(State::End) => "end of the interval",
        };
        let mut row = vec![Cell::text(p.at.name()), Cell::text(state), in_unit(p.flow.q, s.system, FLOW)];
        row.extend([p.well.q, p.chamber.q, p.inlet.q].map(|level| in_unit(level, s.system, LEVEL)));
        grid.row(row);
    }
    grid
}

/// What watches the oil and, where there are pumps, the water: at which level, and what is done.
pub fn alarms(s: &Section) -> Grid {
    let mut grid = Grid::new("Alarms", ["What", "Oil", "What is done"]);
    grid.header.push(with_unit("Level above the floor", s.system, LEVEL));
    grid.header.push(with_unit("Level in the site's datum", s.system, DATUM));
    grid.header.push(with_unit("Oil layer there", s.system, LEVEL));
    if let Some(oil) = s.governing() {
        for level in &oil.levels {
            let [floor, datum] = elevations(s, level.interface.q);
            let what = format!("interface at {}", level.point.word);
            let layer = in_unit(level.thickness.q, s.system, LEVEL);
            grid.row([Cell::text(what), Cell::text(&oil.oil), Cell::text(level.point.action), floor, datum, layer]);
        }
    }
    // One float is mounted for the oil with the thinnest layer that is permitted; in others it trips elsewhere.
    for oil in s.performance.iter().flat_map(|p| &p.levels) {
        if let Some(trip) = oil.trip {
            let layer = in_unit(trip.q, s.system, LEVEL);
            let words = "the one float trips in this oil";
            grid.row([Cell::text("float"), Cell::text(&oil.oil), Cell::text(words), Cell::Empty, Cell::Empty, layer]);
        }
    }
    if let Some(pumps) = &s.unit().pump_out {
        for (what, level) in [("pumps stop", pumps.stop.q), ("pumps start", pumps.start.q), ("alarm", pumps.alarm.q)] {
            let [floor, datum] = elevations(s, level);
            let row = [Cell::text(format!("water in the pump-out compartment: {what}")), Cell::Empty, Cell::Empty];
            grid.row(row.into_iter().chain([floor, datum]));
        }
    }
    grid
}

/// What a unit weighs.
pub fn weights(s: &Section) -> Grid {
    let mut grid = Grid::new("Weights", ["What", "Value", "Unit", "Remark"]);
    let mut row = |what: &str, at: Node, remark: &str| {
        let [value, unit] = recorded(s.settled, at);
        grid.row([Cell::text(what), value, unit, Cell::text(remark)]);
    };
    let found = Says::of(s.settled).and_then(|says| says.shop.weights.as_ref());
    match found {
        Some(found) => {
            let options = if found.options_added { "; options added in proportion to their length" } else { "" };
            let remark = if found.stated { "as stated" } else { "estimated from the steel" };
            let empty = format!("{remark}{options}");
            let mass = |what: Option<Val<Mass>>| what.map(|mass| mass.at);
            let all = [
                ("Empty, as it is shipped", mass(found.empty), empty.as_str()),
                ("Water up to the crest", Some(found.water.at), ""),
                ("Sludge at its trigger, beyond the water in its place", mass(found.sludge), ""),
                ("Water up to the top", Some(found.full.at), ""),
                ("As it works", mass(found.operating), ""),
                ("Full of water to its top, as in the test", mass(found.test), ""),
                ("The same over its floor", found.bearing.map(|bearing| bearing.at), ""),
                ("The same on each of four legs", found.leg.map(|leg| leg.at), "where they share it evenly"),
                ("Centre of gravity of the empty unit, from the inlet end", found.centre.map(|x| x.at), ""),
            ];
            for (what, at, remark) in all {
                if let Some(at) = at {
                    row(what, at, remark);
                }
            }
        }
        None => {
            if let Some(empty) = &s.unit().particulars.empty_weight {
                row("Empty", empty.at, "as stated");
            }
        }
    }
    if let Some(module) = &s.unit().particulars.module_weight {
        row("Heaviest module of the pack, wet", module.at, "as stated");
    }
    grid
}

/// What is to be bought, with room for prices and their sums; a price that somebody stated stands there.
pub fn materials(s: &Section) -> Grid {
    let header = ["No.", "Item", "Data", "Quantity in a unit", "Units", "Quantity", "Price of one", "Price"];
    let mut grid = Grid::new("Bill of materials", header);
    let bill = crate::bill::bill(s);
    if let Some(currency) = &bill.currency {
        for priced in grid.header.iter_mut().filter(|head| head.starts_with("Price")) {
            priced.push_str(&format!(", {currency}"));
        }
    }
    let mass = s.system.pick((&LB, &KG));
    grid.header.extend([format!("Weight of one, {}", mass.symbol), "Brought by".to_owned()]);
    let units = s.train.bought();
    let lines = || bill.unit.iter().chain(&bill.beside);
    let last = lines().count() + 1;
    let mut whole = 0.0;
    for (k, line) in (2_u32..).zip(lines()) {
        let all = line.in_all.unwrap_or(0.0);
        let price = line.price.map_or(0.0, |price| price * all);
        whole += price;
        let weight = line.weight.map(|weight| mass.from_si(weight.si()));
        grid.row([
            Cell::text(&line.mark),
            Cell::text(&line.item),
            Cell::text(&line.data),
            line.in_a_unit.map_or(Cell::Room, Cell::Number),
            Cell::Number(units),
            Cell::Formula(format!("=D{k}*E{k}"), all),
            line.price.map_or(Cell::Room, Cell::Number),
            Cell::Formula(format!("=F{k}*G{k}"), price),
            weight.map_or(Cell::Room, |weight| Cell::number(Some(weight))),
            Cell::text(line.by.word()),
        ]);
    }
    let mut sum = vec![Cell::Empty, Cell::text("Sum")];
    sum.extend([Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty]);
    sum.push(Cell::Formula(format!("=SUM(H2:H{last})"), whole));
    grid.row(sum);
    grid
}

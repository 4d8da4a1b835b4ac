//! Schedules of the sheet: nozzles, oil and water levels, parts.

use super::place::Section;
use crate::render::text::Table;
use stillrise_design::enquiry::range::OutletControl;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_design::stages::underflow::Underflow;
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_units::catalog::{DEG, GAL, GPM, IN, KG, KG_M3, L, LB, M3_H, MM, PERCENT};
use stillrise_units::print::digits;
use stillrise_units::{System, Typed};

/// A part in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Id {
    Shell,
    Manway,
    Deflector,
    Baffle,
    Hopper,
    Pack,
    Mesh,
    OutletBaffle,
    Float,
    Downcomer,
    DipPipe,
    InletBend,
    Weir,
    SandTrap,
    PumpOut,
}

/// One line of the list of parts; its place in the list is its number.
pub struct PartLine {
    /// Which.
    pub id: Id,
    name: &'static str,
    data: String,
}

/// What is not stated.
const NOT_STATED: &str = "–";

/// Nozzles.
pub fn nozzles(s: &Section) -> Table {
    let unit = s.unit();
    let datum = s.datum(unit.outlet.crest.q).is_some();
    let mut table = Table::new(["Mark", "Qty", "Size", "Service", "Elevation"]);
    if datum {
        table.header.push("EL".to_owned());
    }
    let (inlet, outlet) = &s.unit().particulars.nozzles;
    let size = |word: &str| match (pipe_size(word), s.system) {
        (Some(row), System::Si) => row.metric_word(),
        (Some(row), System::Us) => row.word.to_owned(),
        (None, _) if word.is_empty() => NOT_STATED.to_owned(),
        (None, _) => word.to_owned(),
    };
    let mut row = |mark: &str, size: String, service: &str, z| {
        let mut cells = vec![mark.to_owned(), "1".to_owned(), size, service.to_owned(), s.write(z)];
        cells.extend(s.datum(z));
        table.row(cells);
    };
    row("N1", size(inlet), "Inlet invert", unit.inlet.invert.q);
    row("N2", size(outlet), "Outlet invert", unit.outlet.invert.q);
    row("N3", NOT_STATED.to_owned(), "Oil draw-off", unit.retention.oil_draw.q);
    if s.hopper().is_some() {
        row("N4", NOT_STATED.to_owned(), "Sludge drain", s.unit().shape.bottom());
    }
    table
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
        let state = p.name.rsplit_once(", ").map_or("", |(_, state)| state).replace(" of interval", "");
        let flow = s.show(p.flow.q, (&GPM, &M3_H));
        let name = if state.is_empty() { capital(&p.name) } else { format!("{flow}, {state}") };
        table.row([name, s.write(p.well.q), s.write(p.chamber.q), s.write(p.inlet.q)]);
    }
    Some(("Water levels".to_owned(), table))
}

/// The parts that get a number.
pub fn items(s: &Section) -> Vec<PartLine> {
    let unit = s.unit();
    let l = |q| s.write(q);
    let percent = |q| s.show(q, (&PERCENT, &PERCENT));
    let mut all = Vec::new();
    let mut add = |id, name, data: String| all.push(PartLine { id, name, data });
    let mut shell = vec![unit.body.inside(l)];
    shell.extend(unit.channels.as_ref().map(|channels| {
        format!("{} channels of {} side by side", digits(channels.count.q.si(), 2), l(channels.width.q))
    }));
    shell.extend(unit.particulars.material.clone());
    shell.extend(unit.particulars.empty_weight.as_ref().map(|w| format!("{} empty", s.show(w.q, (&LB, &KG)))));
    add(Id::Shell, "Shell", shell.join("; "));
    if let Some(access) = &unit.access {
        let (count, opening) = (digits(access.count.q.si(), 2), l(access.opening.q));
        add(Id::Manway, "Manways with risers", format!("{count}, clear opening {opening}, up to the ground"));
    }
    if let (Some(hopper), Some((a, b))) = (&unit.hopper, s.hopper()) {
        let (long, bottom, deep) = (l(hopper.length.q), l(b - a), l(hopper.depth.q));
        add(Id::Hopper, "Sludge hopper", format!("{long} long, {bottom} at the bottom, {deep} deep"));
    }
    match &unit.inlet_bend {
        Some(bend) => {
            add(Id::InletBend, "Inlet bend", format!("turned down, mouth {} above the floor", l(bend.mouth.q)))
        }
        None => add(Id::Deflector, "Inlet deflector", "45°, common practice".to_owned()),
    }
    if let Some(baffle) = &unit.baffle {
        add(
            Id::Baffle,
            "Diffusion baffle",
            if baffle.under.q.si() > 0.0 {
                format!("perforated, {} open, {} left under it", percent(baffle.open.q), l(baffle.under.q))
            } else {
                format!("perforated, {} open, closed to the floor below it", percent(baffle.open.q))
            },
        );
    }
    if let Some(pack) = &unit.pack {
        let mut data = format!(
            "{} plates, gap {}, {}, {}",
            digits(pack.follows.plates.q.si(), 6),
            fine(s, pack.laid.gap.q),
            s.show(pack.laid.angle.q, (&DEG, &DEG)),
            pack.laid.run.q.word(),
        );
        if let Some(n) = unit.particulars.modules {
            data += &format!("; {n} module{}", if n == 1 { "" } else { "s" });
        }
        if let Some(mass) = &unit.particulars.module_weight {
            data += &format!(", heaviest {} wet", s.show(mass.q, (&LB, &KG)));
        }
        add(Id::Pack, "Plate pack", data);
    }
    if let Some(mesh) = &unit.mesh {
        let data = format!(
            "{} thick, fibre {}, {} solid",
            l(mesh.laid.thickness.q),
            s.show(mesh.laid.fibre.q, (&MM, &MM)),
            percent(mesh.laid.solidity.q)
        );
        add(Id::Mesh, "Mesh", data);
    }
    if let Some(baffle) = &unit.outlet_baffle {
        let data = format!("perforated, {} open, as wide and as high as the pack", percent(baffle.open.q));
        add(Id::OutletBaffle, "Outlet baffle", data);
    }
    if let Some(alarm) = s.alarm() {
        let data =
            format!("{}, trips at {}", s.show(unit.retention.float_density.q, (&KG_M3, &KG_M3)), l(alarm.interface.q));
        add(Id::Float, "Level float", data);
    }
    let edge = l(unit.underflow.edge().q);
    match &unit.underflow {
        Underflow::Downcomer(_) => add(Id::Downcomer, "Downcomer baffle", format!("lip {edge} above the floor")),
        Underflow::DipPipe(pipe) => {
            add(Id::DipPipe, "Dip pipe", format!("mouth {edge} above the floor, bore {}", l(pipe.bore.q)));
        }
    }
    if let Some(trap) = &unit.sand_trap {
        add(Id::SandTrap, "Sand compartment", format!("{} long, opening {} high", l(trap.length.q), l(trap.opening.q)));
    }
    if let Some(pumps) = &unit.pump_out {
        let data = format!(
            "{} pumps, {} each; stop {}, start {}, alarm {}",
            digits(pumps.pumps.q.si(), 2),
            s.show(pumps.pump.q, (&GPM, &M3_H)),
            l(pumps.stop.q),
            l(pumps.start.q),
            l(pumps.alarm.q)
        );
        add(Id::PumpOut, "Effluent pumps", data);
    }
    if unit.outlet.control.q == OutletControl::Weir && unit.pump_out.is_none() {
        add(
            Id::Weir,
            "Outlet weir",
            format!("crest {}, {} long", l(unit.outlet.crest.q), l(unit.outlet.weir_length.q)),
        );
    }
    all
}

/// The list of parts.
pub fn parts(s: &Section) -> Table {
    let mut table = Table::new(["No.", "Part", "Data"]);
    for (k, item) in items(s).into_iter().enumerate() {
        table.row([(k + 1).to_string(), item.name.to_owned(), item.data]);
    }
    table
}

/// A small length, in its own digits: eighths of an inch and whole millimetres are too coarse for it.
fn fine(s: &Section, length: stillrise_units::Length) -> String {
    s.show(length, (&IN, &MM))
}

/// With a capital at the beginning.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

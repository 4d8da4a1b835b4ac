//! The data sheet: what the unit is for and what it is, in groups of values, two pages at most.

mod unit;

use super::common::{self, MG, NOT_STATED, ON_SITE, VOLUME, taken};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::blocks::{Table, number, slim, wide};
use crate::report::{Report, capital};
use crate::summary;
use stillrise_design::basis::cases::Case;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::train::Train;
use stillrise_units::catalog::{CST, DEG_C, DEG_F, KG_M3, LB_FT3, MM2_S, UM};
use stillrise_units::{Length, Typed, print};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "data-sheet",
    title: "Data sheet",
    about: "For whoever specifies, buys or checks the unit: its service and its data. Lengths and levels are inside, over the floor of the unit.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::unit,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let design = &r.settled.job.design;
    let Some(train) = &design.train else { return };
    r.out.section("Service");
    service(r, train);
    if let Some(basis) = &design.basis {
        liquids(r, basis);
        cases(r, basis);
    }
    if let Some(p) = &design.performance {
        unit::setting(r, train, p);
    }
    r.out.section("Unit");
    unit::unit(r, train);
    if let Some(p) = &design.performance {
        unit::levels(r, train, p);
    }
    unit::nozzles(r);
    unit::made_of(r, train);
    unit::around(r, train);
    common::invented(r);
    common::cautions(r, ON_SITE);
}

/// Pairs of name and value, two a line, under the title of their group.
struct Sheet {
    title: &'static str,
    cells: Vec<[String; 2]>,
}

impl Sheet {
    fn new(title: &'static str) -> Self {
        Self { title, cells: Vec::new() }
    }
    fn add(&mut self, name: &str, value: impl Into<String>) {
        self.cells.push([name.to_owned(), value.into()]);
    }
    /// A value, or what stands where nobody stated it.
    fn or(&mut self, name: &str, value: Option<String>, else_: &str) {
        self.add(name, value.filter(|v| !v.is_empty()).unwrap_or_else(|| else_.to_owned()));
    }
    fn set(self, r: &mut Report<'_>) {
        let mut table = Table::new([wide(self.title, 1.1), wide("", 1.2), wide("", 1.1), wide("", 1.2)]);
        let half = self.cells.len().div_ceil(2);
        for k in 0..half {
            let cell = |k: usize| self.cells.get(k).cloned().unwrap_or_default();
            let right = if half + k < self.cells.len() { cell(half + k) } else { Default::default() };
            table.row(cell(k).into_iter().chain(right));
        }
        r.out.table(&table);
    }
}

fn service(r: &mut Report<'_>, train: &Train) {
    let settled = r.settled;
    let mut sheet = Sheet::new("Duty");
    let e = &settled.job.enquiry;
    sheet.add(
        "Unit",
        format!("{}{}", summary::units(train), if e.unit_stands() { ", the unit that stands" } else { "" }),
    );
    let by = train.standby.map_or_else(|| "none".to_owned(), |spare| print::digits(spare.q.si(), 2));
    sheet.add("Units that run; stand by", format!("{}; {by}", print::digits(train.count.q.si(), 2)));
    sheet.add("Kind", train.unit.arrangement.word());
    sheet.or("Facility", e.head.facility.0.clone().map(|word| word.replace('-', " ")), NOT_STATED);
    sheet.or("Water goes to", e.outlet.to.0.map(|to| to.word().to_owned()), NOT_STATED);
    let fed = settled.job.design.basis.as_ref().map(|b| match (b.feed.pumped, b.feed.class) {
        (true, Some(class)) => format!("by pump ({})", class.word),
        (true, None) => "by pump, kind not stated".to_owned(),
        (false, _) => "by gravity".to_owned(),
    });
    sheet.or("Fed", fed, NOT_STATED);
    let rated = train
        .unit
        .particulars
        .rated
        .as_ref()
        .map(|(flow, basis)| format!("{} (\"{basis}\")", r.prose(flow.q, FLOW_UNITS)));
    sheet.or("Name-plate flow and its basis", rated, NOT_STATED);
    let limits = common::limits(settled);
    for limit in &limits {
        sheet.add(
            "Limit",
            format!(
                "{} ({})",
                limit.title,
                if limit.is_stated() { "performance stated" } else { "no performance stated" }
            ),
        );
    }
    if limits.is_empty() {
        sheet.add("Limit", NOT_STATED);
    }
    sheet.set(r);
    if !limits.is_empty() {
        r.out.remark("What is stated, and on which conditions: see the performance statement.");
    }
}

fn liquids(r: &mut Report<'_>, basis: &Basis) {
    let f = &basis.fluids;
    let mut table = Table::new([
        wide("Water and oils", 1.6),
        number(&format!("Density at {}", common::at_15(r)), r.symbol((&LB_FT3, &KG_M3))),
        number("Density, cold", r.symbol((&LB_FT3, &KG_M3))),
        number("Viscosity, cold", r.symbol((&CST, &MM2_S))),
        slim("Temperature"),
    ]);
    let density = |q| r.digits(q, (&LB_FT3, &KG_M3), 3);
    let range = format!(
        "{} to {}",
        r.prose(f.cold.temperature.q, (&DEG_F, &DEG_C)),
        r.prose(f.warm.temperature.q, (&DEG_F, &DEG_C))
    );
    table.row([
        "Water".to_owned(),
        "–".to_owned(),
        density(f.cold.density.q),
        r.digits(f.cold.kinematic.q, (&CST, &MM2_S), 3),
        range,
    ]);
    for oil in &f.oils {
        let (own, kind) = (capital(&oil.name), oil.oil.title);
        let name = if own.eq_ignore_ascii_case(kind) { own } else { format!("{own} (as {kind})") };
        let viscosity = oil.viscosity.map_or_else(|| "–".to_owned(), |v| r.digits(v.q, (&CST, &MM2_S), 3));
        table.row([name, density(oil.density_15.q), density(oil.cold.q), viscosity, "as the water".to_owned()]);
    }
    r.out.table(&table);
    let d = &basis.droplets;
    let s = &basis.solids;
    let mut sheet = Sheet::new("Droplets and solids");
    let um = |q: Length| r.prose(q, (&UM, &UM));
    sheet.add("Median droplet at the unit", format!("{}{}", um(d.d50.q), taken(r.settled, d.d50.at)));
    sheet.add(
        "Droplet the plates are sized for",
        format!("{}{}", um(basis.methods.droplet.q), taken(r.settled, basis.methods.droplet.at)),
    );
    sheet.add("Median grain", format!("{}{}", um(s.d50.q), taken(r.settled, s.d50.at)));
    sheet
        .add("Grain density", format!("{}{}", r.prose(s.density.q, (&LB_FT3, &KG_M3)), taken(r.settled, s.density.at)));
    let products: Vec<&str> = basis.dosed.iter().map(|d| d.name.as_str()).collect();
    sheet.add(
        "Products in the water",
        if products.is_empty() { "none declared".to_owned() } else { products.join(", ") },
    );
    let spill = basis.spill.as_ref().map(|spill| r.prose(spill.volume.q, VOLUME));
    sheet.or("Spill to hold", spill, "none declared");
    sheet.set(r);
}

/// Each event once, with the most that comes to the units in it, whichever pumps run.
fn cases(r: &mut Report<'_>, basis: &Basis) {
    let mut table = Table::new([
        wide("Flows by case", 2.2),
        number("Arrives", r.symbol(FLOW_UNITS)),
        number("To the units", r.symbol(FLOW_UNITS)),
        number("Total oil", "mg/L"),
        number("of it free", "mg/L"),
        number("Solids", "mg/L"),
    ]);
    let mut events: Vec<&Case> = Vec::new();
    for case in &basis.cases {
        match events.iter_mut().find(|other| other.event == case.event) {
            Some(other) if case.feed.q > other.feed.q => *other = case,
            Some(_) => {}
            None => events.push(case),
        }
    }
    let largest = basis.design_flow().map(|flow| flow.at);
    for case in events {
        let content = case.content.as_ref();
        let mg = |of: Option<stillrise_units::Concentration>| of.map_or_else(|| "–".to_owned(), |q| r.digits(q, MG, 3));
        let row = [
            capital(&case.event),
            r.digits(case.inflow.q, FLOW_UNITS, 3),
            r.digits(case.feed.q, FLOW_UNITS, 3),
            mg(content.map(|c| c.total.q)),
            mg(content.map(|c| c.free.q)),
            mg(content.map(|c| c.solids.q)),
        ];
        if largest == Some(case.feed.at) { table.strong_row(row) } else { table.row(row) }
    }
    r.out.table(&table);
    let pumped = if basis.feed.pumped { " To the units: while the pumps run." } else { "" };
    r.out.remark(&format!("Means while it lasts; bold: the largest flow.{pumped}"));
}

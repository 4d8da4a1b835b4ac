//! The data sheet: what the unit is for and what it is, in groups of values, two pages at most.

use super::common::{self, LENGTH, MAKER, MASS, MG, NOT_STATED, ON_SITE, VOLUME, taken};
use super::{EVERYBODY, Head, Paper};
use crate::drawings::tables;
use crate::report::blocks::{Table, number, slim, wide};
use crate::report::{Report, capital, sentence};
use crate::section::place::Section;
use crate::{reply, scope, summary};
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::performance::Performance;
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::Train;
use stillrise_units::catalog::{CST, DEG, DEG_C, DEG_F, FT, FT2, KG_M3, KPA, LB_FT3, M, M2, MM2_S, PERCENT, PSF, UM};
use stillrise_units::{Length, Typed, print};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "data-sheet",
    title: "Data sheet",
    about: "For whoever specifies, buys or checks the unit: its service and its data. Lengths and levels are inside, over the floor of the unit.",
    editions: EVERYBODY,
    head: Head::Band,
    applies: |settled| settled.job.design.train.is_some(),
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let design = &r.settled.job.design;
    let Some(train) = &design.train else { return };
    service(r, train);
    if let Some(basis) = &design.basis {
        liquids(r, basis);
        cases(r, basis);
    }
    unit(r, train);
    if let Some(p) = &design.performance {
        levels(r, train, p);
    }
    nozzles(r);
    made_of(r, train);
    if let Some(p) = &design.performance {
        setting(r, train, p);
    }
    around(r, train);
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
        r.out.heading(self.title);
        let mut table = Table::new([wide("Item", 1.1), wide("Value", 1.2), wide("Item", 1.1), wide("Value", 1.2)]);
        let half = self.cells.len().div_ceil(2);
        for k in 0..half {
            let cell = |k: usize| self.cells.get(k).cloned().unwrap_or_default();
            table.row(cell(k).into_iter().chain(cell(half + k)));
        }
        r.out.table(&table);
    }
}

fn service(r: &mut Report<'_>, train: &Train) {
    let settled = r.settled;
    let mut sheet = Sheet::new("Service");
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
    let rated =
        train.unit.particulars.rated.as_ref().map(|(flow, basis)| format!("{} ({basis})", r.prose(flow.q, FLOW_UNITS)));
    sheet.or("Name-plate flow and its basis", rated, NOT_STATED);
    let limits = common::limits(settled);
    for limit in &limits {
        sheet.add("Limit", format!("{}: {}", limit.title, if limit.is_stated() { "stated" } else { "not stated" }));
    }
    if limits.is_empty() {
        sheet.add("Limit", NOT_STATED);
    }
    sheet.set(r);
    if !limits.is_empty() {
        r.out.remark("Stated: in the performance statement, under its conditions.");
    }
}

fn liquids(r: &mut Report<'_>, basis: &Basis) {
    let f = &basis.fluids;
    let mut table = Table::new([
        wide("Water and oils", 1.6),
        number("Density at 15 °C", r.symbol((&LB_FT3, &KG_M3))),
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
        let viscosity = oil.viscosity.map_or_else(|| "–".to_owned(), |v| r.digits(v.q, (&CST, &MM2_S), 3));
        table.row([
            format!("{} ({})", capital(&oil.name), oil.oil.title),
            density(oil.density_15.q),
            density(oil.cold.q),
            viscosity,
            "as the water".to_owned(),
        ]);
    }
    r.out.heading("Liquids and what they carry");
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

fn cases(r: &mut Report<'_>, basis: &Basis) {
    let mut table = Table::new([
        wide("Flows by case", 2.2),
        number("Arrives", r.symbol(FLOW_UNITS)),
        number("To the units", r.symbol(FLOW_UNITS)),
        number("Total oil", "mg/L"),
        number("of it free", "mg/L"),
        number("Solids", "mg/L"),
    ]);
    let largest = basis.design_flow().map(|flow| flow.at);
    for case in &basis.cases {
        let content = case.content.as_ref();
        let mg = |of: Option<stillrise_units::Concentration>| of.map_or_else(|| "–".to_owned(), |q| r.digits(q, MG, 3));
        let row = [
            capital(&case.name),
            r.digits(case.inflow.q, FLOW_UNITS, 3),
            r.digits(case.feed.q, FLOW_UNITS, 3),
            mg(content.map(|c| c.total.q)),
            mg(content.map(|c| c.free.q)),
            mg(content.map(|c| c.solids.q)),
        ];
        if largest == Some(case.feed.at) { table.strong_row(row) } else { table.row(row) }
    }
    r.out.heading("Flows by case");
    r.out.table(&table);
}

fn unit(r: &mut Report<'_>, train: &Train) {
    let unit = &train.unit;
    let mut sheet = Sheet::new("One unit");
    let (what, sizes) = unit.body.sizes();
    sheet.add(&capital(what), sizes.iter().map(|q| r.show(*q, LENGTH)).collect::<Vec<_>>().join(" × "));
    let shipping = unit
        .particulars
        .shipping
        .as_ref()
        .map(|all| all.iter().map(|q| r.show(q.q, LENGTH)).collect::<Vec<_>>().join(" × "));
    if !unit.arrangement.is_built_in() {
        sheet.or("Shipping length × width × height", shipping, MAKER);
    }
    sheet.add("Water over the floor, to the outlet", r.prose(unit.layout.water_volume.q, VOLUME));
    if let Some(hopper) = &unit.hopper {
        sheet.add(
            "Sludge hopper below the floor",
            format!("{}, {} deep", r.prose(hopper.volume.q, VOLUME), r.show(hopper.depth.q, LENGTH)),
        );
    }
    for zone in &unit.compartments {
        sheet.add(
            &capital(zone.place.word()),
            format!("{} long, {}", r.show(zone.length.q, LENGTH), r.prose(zone.volume.q, VOLUME)),
        );
    }
    if let Some(pack) = &unit.pack {
        let l = &pack.laid;
        sheet.add(
            "Plates",
            format!(
                "{} at {} to the level",
                print::digits(pack.follows.plates.q.si(), 3),
                r.prose(l.angle.q, (&DEG, &DEG))
            ),
        );
        sheet.add("Clear gap; plate", format!("{}; {}", r.prose(l.gap.q, LENGTH), r.prose(l.plate.q, LENGTH)));
        sheet.add("Pack, length × height", format!("{} × {}", r.show(l.length.q, LENGTH), r.show(l.height.q, LENGTH)));
        sheet.add("Projected plate area", r.prose(pack.follows.area.q, (&FT2, &M2)));
        sheet.add("Flow through the plates", l.run.q.word());
        sheet.or("Modules of the pack", unit.particulars.modules.map(|n| n.to_string()), MAKER);
        sheet.or("Heaviest module", unit.particulars.module_weight.map(|m| r.prose(m.q, MASS)), MAKER);
    }
    if let Some(mesh) = &unit.mesh {
        sheet.add(
            "Mesh, along the flow",
            format!(
                "{}, fibre {}, {} solid",
                r.show(mesh.laid.thickness.q, LENGTH),
                r.prose(mesh.laid.fibre.q, LENGTH),
                r.prose(mesh.laid.solidity.q, (&PERCENT, &PERCENT))
            ),
        );
    }
    if let Some(pumps) = &unit.pump_out {
        sheet.add(
            "Effluent pumps",
            format!("{} of {}", print::digits(pumps.pumps.q.si(), 2), r.prose(pumps.pump.q, FLOW_UNITS)),
        );
    }
    sheet.set(r);
}

fn levels(r: &mut Report<'_>, train: &Train, p: &Performance) {
    let mut sheet = Sheet::new("Water levels and stores");
    let level = |q: Length| r.show(q, LENGTH);
    sheet.add("Water at rest (outlet crest)", level(train.unit.outlet.crest.q));
    let highest = p.highest();
    sheet.add(
        "At the largest flow: well; oil zone; inlet",
        format!("{}; {}; {}", level(highest.well.q), level(highest.chamber.q), level(highest.inlet.q)),
    );
    if let Some(volume) = p.storage.sludge_trigger {
        sheet.add("Sludge to be pumped out at, one unit", r.prose(volume.q, VOLUME));
    }
    sheet.or("To be emptied", reply::emptied_in_short(r.settled), "interval not known");
    if let Some(spill) = &p.storage.spill {
        sheet.add("Room for a spill, alarm to limit, all units", r.prose(spill.room.q, VOLUME));
    }
    if let Some(pumps) = &train.unit.pump_out {
        let [stop, start, alarm] = [pumps.stop, pumps.start, pumps.alarm].map(|v| level(v.q));
        sheet.add("Pumps: stop; start; second and alarm", format!("{stop}; {start}; {alarm}"));
    }
    sheet.set(r);
    let governing = p.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let Some(oil) = governing else { return };
    let unit = r.symbol(LENGTH);
    let mut table = Table::new([
        wide(&format!("Set points, {}", oil.oil), 1.4),
        number("Oil layer", unit),
        number("Interface", unit),
        number("Oil surface", unit),
        number("Held, one unit", r.symbol(VOLUME)),
        wide("Then", 2.0),
    ]);
    for l in &oil.levels {
        table.row([
            l.point.title.to_owned(),
            r.digits(l.thickness.q, LENGTH, 3),
            r.digits(l.interface.q, LENGTH, 4),
            r.digits(l.surface.q, LENGTH, 4),
            r.digits(l.volume.q, VOLUME, 3),
            l.point.action.to_owned(),
        ]);
    }
    r.out.table(&table);
    let others = if p.levels.len() > 1 { " Those of the other oils stand in the calculation report." } else { "" };
    r.out.remark(&format!("Water at rest; for the oil whose layer may be thinnest.{others}"));
}

fn nozzles(r: &mut Report<'_>) {
    let Some(section) = Section::new(r.settled, r.edition) else { return };
    let mut table = Table::new([
        slim("Nozzle"),
        slim("Number"),
        slim("Size"),
        wide("Service", 1.0),
        wide("Level of", 1.0),
        number("Over floor", r.symbol(LENGTH)),
    ]);
    for n in tables::all_nozzles(&section) {
        let size = if n.mark == "M" {
            section.unit().access.as_ref().map_or(n.size, |a| r.show(a.opening.q, LENGTH))
        } else {
            n.size
        };
        let level = n.level.map_or_else(|| "–".to_owned(), |z| r.digits(z, LENGTH, 4));
        table.row([n.mark.to_owned(), n.count, size, n.service.to_owned(), n.at.to_owned(), level]);
    }
    r.out.heading("Nozzles");
    r.out.table(&table);
    r.out.remark(&tables::nozzle_note(&section));
}

fn made_of(r: &mut Report<'_>, train: &Train) {
    let p = &train.unit.particulars;
    let mut sheet = Sheet::new("Materials and weights, one unit");
    sheet.or("Vessel", p.material.clone(), MAKER);
    sheet.or("Walls", p.wall.map(|wall| r.show(wall.q, LENGTH)), MAKER);
    sheet.or("Coating or lining", p.coating.clone(), MAKER);
    if train.unit.pack.is_some() {
        sheet.or("Plates", p.plate_material.clone(), MAKER);
    }
    let shop = r.settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref());
    let weights = shop.and_then(|shop| shop.weights.as_ref());
    let mass = |m: Option<stillrise_design::Val<stillrise_units::Mass>>| m.map(|m| r.prose(m.q, MASS));
    sheet.or("Empty", mass(weights.and_then(|w| w.empty).or(p.empty_weight)), MAKER);
    sheet.or("In service", mass(weights.and_then(|w| w.operating)), NOT_STATED);
    sheet.or("Full to its top, as in the test", mass(weights.and_then(|w| w.test)), NOT_STATED);
    if let Some(bearing) = weights.and_then(|w| w.bearing) {
        sheet.add("Under its whole floor, then", r.prose(bearing.q, (&PSF, &KPA)));
    }
    if let Some(lifting) = shop.and_then(|shop| shop.lifting.as_ref()) {
        sheet.add(
            "Lifting points",
            format!("{}{}", print::digits(lifting.points.q.si(), 2), taken(r.settled, lifting.points.at)),
        );
    }
    sheet.or("Flanges", p.flanges.clone(), MAKER);
    sheet.set(r);
}

fn setting(r: &mut Report<'_>, train: &Train, p: &Performance) {
    let site = &p.site.installation;
    let mut sheet = Sheet::new("Setting and instruments");
    sheet.add(
        "Stands",
        match site.stands.q {
            Stands::Unknown => "open: levels not stated".to_owned(),
            stands => stands.word().to_owned(),
        },
    );
    let datum = |q: Length| print::with_unit(q.si(), r.system.pick((&FT, &M)));
    sheet.or("Floor, site datum", p.site.floor.map(|floor| datum(floor.q)), NOT_STATED);
    if let Some(cover) = site.cover {
        sheet.add("Cover over its top", r.prose(cover.q, (&FT, &M)));
    }
    let e = &r.settled.job.enquiry;
    sheet.or("Ground, site datum", e.site.ground.q().map(datum), NOT_STATED);
    sheet.or("Groundwater, site datum", e.site.groundwater.q().map(datum), NOT_STATED);
    sheet.or("Coldest air", e.site.coldest_air.claim().map(|claim| claim.written.text.clone()), NOT_STATED);
    let way = p.fit.way();
    sheet.add(
        "Room in plan, walkway included",
        format!("{} × {}", r.prose(way.length.q, (&FT, &M)), r.prose(way.width.q, (&FT, &M))),
    );
    sheet.add("Clear height over the ground", r.prose(p.fit.headroom.q, (&FT, &M)));
    let float = (!p.levels.is_empty())
        .then(|| format!("{}, one a unit", r.prose(train.unit.retention.float_density.q, (&LB_FT3, &KG_M3))));
    sheet.or("Level float, density", float, NOT_STATED);
    sheet.add("Switch, panel, rating for the area", "by maker of the panel");
    let areas = p.shop.as_ref().and_then(|shop| shop.areas.oils.first());
    sheet.or(
        "Class of the most volatile oil",
        areas.map(|class| format!("{} ({})", class.shown(), class.oil)),
        NOT_STATED,
    );
    sheet.add("Price", "by quotation");
    sheet.set(r);
}

fn around(r: &mut Report<'_>, train: &Train) {
    let beside = reply::needed_beside(r.settled, train);
    if beside.is_empty() {
        return;
    }
    r.out.heading("Needed beside it");
    r.out.list(false, beside.into_iter().map(|text| (sentence(&text), String::new())));
    if !scope::rows(r.settled).is_empty() {
        r.out.remark("Who brings what: see the scope split.");
    }
}

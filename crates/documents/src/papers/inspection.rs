//! What the shop looks at before the unit leaves, what is packed, what stands on its plate, and spare parts.

use super::site::{MAKER, Site, schedule, signed};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::drawings::tables;
use crate::report::Report;
use crate::report::blocks::{Checks, Table, blank, slim, wide};
use crate::section::schedules;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG, GAL, IN, KG, LB, M3, MM};
use stillrise_units::print;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "inspection-and-packing",
    title: "Inspection, packing and nameplate list",
    about: "For the shop and whoever unpacks: what is looked at before the unit leaves, what goes with it, what its plate says.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::offer,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let Some(u) = Site::of(r) else { return };
    u.opening(r);
    r.out.section("Before it leaves the shop");
    if u.several() {
        r.out.para(&format!("One list for each of {} units.", print::digits(u.train.bought(), 2)));
    }
    let mut head =
        Table::new([wide("Serial number", 1.0), wide("Order", 1.0), wide("Inspector", 1.2), blank("Date", 26.0)]);
    head.row(["", "", "", ""]);
    r.out.form(&head, 5.0);
    let checks = inspected(&u);
    r.out.checks(&checks);
    r.out.heading("Nozzles, each gauged and ticked on this table");
    let table = schedule(u.system, &tables::nozzles(&u), 3);
    r.out.table(&table);
    r.out.remark(&tables::nozzle_note(&u));
    packing(r, &u);
    plate(r, &u);
    r.out.section("Spare parts, as proposed");
    let table = u.spares();
    r.out.table(&table);
    r.out.remark("Numbers are common practice for a unit that one crew keeps; part numbers by maker.");
    signed(r, &["Shop, inspected and packed", "Site, received and unpacked"]);
    u.cautions(r, &["lifting", "hot work", "confined space"]);
}

fn inspected(u: &Site<'_>) -> Checks {
    let unit = u.unit();
    let known = &unit.particulars;
    let mut c = Checks::new("To be seen");
    c.group("Papers");
    c.step("Drawings of the revision on this sheet are at the bench", "");
    let of = if u.built_in() { &known.plate_material } else { &known.material };
    c.step(
        "Certificates of materials, of welders and of the coating, as far as there are any",
        of.as_deref().unwrap_or(MAKER),
    );
    if !u.built_in() {
        c.group("Vessel");
        c.step("Inside dimensions", &unit.body.inside(|q| u.len(q)));
        let steel = known.steel.or(known.wall);
        let wall = steel.map_or_else(|| MAKER.to_owned(), |wall| u.say(wall.q, (&IN, &MM)));
        c.step("Thickness of wall or shell, gauged at five places", &wall);
        c.step("Welds and joints: all looked at; tested as the drawing says", "no crack, no undercut to be felt");
        c.step("Water test done and written down", "acceptance-test plan, shop");
        c.step("Drained, dried, inside clean", "");
        if u.coated() {
            c.step("Coating: looked at, gauged, searched for pinholes", known.coating.as_deref().unwrap_or(MAKER));
        }
    }
    c.group("Internals");
    if let Some(pack) = &unit.pack {
        let modules = known.modules.map_or_else(|| format!("modules {MAKER}"), |n| format!("{n} modules"));
        let value = format!(
            "{modules}, gap {}, {}",
            u.say(pack.laid.gap.q, (&IN, &MM)),
            u.say(pack.laid.angle.q, (&DEG, &DEG))
        );
        c.step("Plates: number, gap, angle, held down", &value);
        let weighs = known
            .module_weight
            .map_or_else(|| MAKER.to_owned(), |w| format!("{} at most, wet and fouled", u.say(w.q, (&LB, &KG))));
        if known.lifts_out != Some(false) {
            c.step("Modules lift out and go back; eyes for the hook", &weighs);
        }
    }
    if let Some(mesh) = &unit.mesh {
        c.step("Mesh: thickness, no way round it", &u.say(mesh.laid.thickness.q, (&IN, &MM)));
    }
    if u.weir() {
        c.step("Weir: straight, its crest above the floor", &u.len(unit.outlet.crest.q));
    }
    if let Some(alarm) = u.layer() {
        c.step("Float: mounted, changes over by hand; cable marked", &format!("at {}", u.len(alarm.interface.q)));
    }
    if let Some(pumps) = &unit.pump_out {
        c.step("Effluent pumps: turn by hand, cables and guide rails", &print::digits(pumps.pumps.q.si(), 2));
    }
    c.group("Ready to go");
    if let Some(lifting) = u.performance.and_then(|p| p.shop.as_ref()?.lifting.as_ref()) {
        c.step("Lifting points: marked, welds looked at", &print::digits(lifting.points.q.si(), 2));
    }
    c.step("Nozzles and openings closed, faces protected, loose parts tied or boxed", "");
    let painted = if u.built_in() {
        "Plate in the box"
    } else {
        "Plate on, readable from outside; weight and lifting points painted on"
    };
    c.step(painted, "");
    c
}

/// What goes on the truck.
fn packing(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Packing list");
    let mut table =
        Table::new([slim("No."), wide("Part", 1.2), wide("Data", 2.2), blank("Packed", 17.0), blank("Received", 17.0)]);
    // Walls and floor, the first of the parts, travel only where they are not built in their place.
    for row in schedules::parts(u).rows.into_iter().skip(usize::from(u.built_in())) {
        table.row(row.into_iter().chain([String::new(), String::new()]));
    }
    let mut loose = Vec::new();
    if !u.unit().body.is_open() {
        loose.push("Covers and risers of the manways, with gaskets and bolts");
    }
    if u.layer().is_some() {
        loose.push("Float with bracket and cable, if it travels apart; its label");
    }
    if u.unit().pump_out.is_some() {
        loose.push("Effluent pumps with guide rails, level switches and cables");
    }
    loose.push("Gaskets and bolts of the nozzles");
    loose.push("Spare parts, as ordered");
    loose.push("This submittal: drawings, acceptance tests, installation guide, start-up sheet, maintenance manual");
    for (k, part) in loose.iter().enumerate() {
        table.row([format!("L{}", k + 1), (*part).to_owned(), String::new(), String::new(), String::new()]);
    }
    r.out.form(&table, 4.0);
    let built = if u.built_in() { " Walls and floor, number 1 there, are built in their place by others." } else { "" };
    r.out.remark(&format!("Numbers are those of the sheets \"Internals\" and \"Schedules and notes\"; L is what travels loose. Empty data: by maker. Slings, anchors, pipes and the panel are not in it unless ordered.{built}"));
}

/// What its plate says.
fn plate(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Nameplate");
    let unit = u.unit();
    let known = &unit.particulars;
    let mut table = Table::new([wide("Line", 1.0), wide("Text", 2.2)]);
    let mut row = |line: &str, text: String| table.row([line.to_owned(), text]);
    row("What it is", "Oil-water separator".to_owned());
    row("Designation", known.model.clone());
    row("Maker, serial number, year", String::new());
    let rated = match &known.rated {
        Some((flow, basis)) => {
            let basis = if basis.is_empty() { "basis not stated" } else { basis };
            format!("{}; basis: {basis}", u.say(flow.q, FLOW_UNITS))
        }
        None => "none stated: the line is left out".to_owned(),
    };
    row("Rated flow and its basis", rated);
    row("Water up to the crest", u.fill());
    if let Some(alarm) = u.layer() {
        row("Oil held at the alarm", u.store(alarm.volume.q));
    }
    if let Some(sludge) = u.performance.and_then(|p| p.storage.sludge_trigger) {
        row("Sludge, to be pumped out at", u.say(sludge.q, (&GAL, &M3)));
    }
    if !u.built_in() {
        let weights = u.performance.and_then(|p| p.shop.as_ref()?.weights.as_ref());
        let mass = |q| u.say(q, (&LB, &KG));
        let empty = weights.and_then(|w| w.empty).map_or_else(|| MAKER.to_owned(), |w| mass(w.q));
        row("Weight empty", empty);
        if let Some(test) = weights.and_then(|w| w.test) {
            row("Weight full to the top", mass(test.q));
        }
    }
    row(
        "Material, coating",
        [known.material.as_deref(), known.coating.as_deref()].into_iter().flatten().collect::<Vec<_>>().join("; "),
    );
    row("Caution", "Confined space. Fill with clean water before use.".to_owned());
    r.out.form(&table, 4.0);
    r.out.remark("Empty: stamped by the maker. The plate claims no class of a standard and no oil content of what leaves: both take a test of the type or of the plant.");
}

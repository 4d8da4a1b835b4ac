//! What the unit is: dimensions, levels, nozzles, materials, setting, and what stands beside it.

use super::Sheet;
use crate::drawings::tables;
use crate::papers::common::{self, LENGTH, MAKER, MASS, NOT_STATED, VOLUME, length, length_digits, taken};
use crate::report::blocks::{Table, number, slim, wide};
use crate::report::{Report, capital};
use crate::section::place::Section;
use crate::{reply, scope};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::Performance;
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::show_in_prose;
use stillrise_design::train::{Stage, Train};
use stillrise_units::catalog::{DEG_C, DEG_F, FT, FT2, KG_M3, KPA, LB_FT3, M, M2, PERCENT, PSF};
use stillrise_units::{Length, Typed, print};

pub(super) fn unit(r: &mut Report<'_>, train: &Train) {
    let unit = &train.unit;
    let mut sheet = Sheet::new("Dimensions, one unit");
    let (what, sizes) = unit.body.sizes();
    sheet.add(&capital(what), sizes.iter().map(|q| length(r, *q)).collect::<Vec<_>>().join(" × "));
    let shipping = unit
        .particulars
        .shipping
        .as_ref()
        .map(|all| all.iter().map(|q| length(r, q.q)).collect::<Vec<_>>().join(" × "));
    if !unit.arrangement.is_built_in() {
        sheet.or("Shipping length × width × height", shipping, MAKER);
    }
    sheet.add("Water over the floor, to the outlet", r.prose(unit.layout.water_volume.q, VOLUME));
    if let Some(hopper) = &unit.hopper {
        sheet.add(
            "Sludge hopper below the floor",
            format!("{}, {} deep", r.prose(hopper.volume.q, VOLUME), length(r, hopper.depth.q)),
        );
    }
    for zone in &unit.compartments {
        sheet.add(
            &capital(zone.place.word()),
            format!("{} long, {}", length(r, zone.length.q), r.prose(zone.volume.q, VOLUME)),
        );
    }
    if let Some(pack) = &unit.pack {
        let l = &pack.laid;
        sheet.add(
            "Plates",
            format!(
                "{} one over another, at {} to the level",
                print::digits(pack.follows.plates.q.si(), 3),
                common::angle(l.angle.q)
            ),
        );
        sheet.add("Clear gap; plate", format!("{}; {}", length(r, l.gap.q), length(r, l.plate.q)));
        sheet.add("Pack, length × height", format!("{} × {}", length(r, l.length.q), length(r, l.height.q)));
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
                length(r, mesh.laid.thickness.q),
                length(r, mesh.laid.fibre.q),
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

pub(super) fn levels(r: &mut Report<'_>, train: &Train, p: &Performance) {
    let mut sheet = Sheet::new("Water levels and stores");
    let level = |q: Length| length(r, q);
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
        wide(&format!("Oil set points, {}", oil.oil), 1.4),
        number("Oil layer", unit),
        number("Interface", unit),
        number("Oil surface", unit),
        number("Held, one unit", r.symbol(VOLUME)),
        wide("Then", 2.0),
    ]);
    for l in &oil.levels {
        table.row([
            l.point.title.to_owned(),
            length_digits(r, l.thickness.q),
            length_digits(r, l.interface.q),
            length_digits(r, l.surface.q),
            r.digits(l.volume.q, VOLUME, 3),
            l.point.action.to_owned(),
        ]);
    }
    r.out.table(&table);
    let others = if p.levels.len() > 1 { " Those of the other oils stand in the calculation report." } else { "" };
    r.out.remark(&format!("Water at rest; for the oil whose layer may be thinnest.{others}"));
}

pub(super) fn nozzles(r: &mut Report<'_>) {
    let Some(section) = Section::new(r.settled, r.edition) else { return };
    let mut table = Table::new([
        slim("Nozzles"),
        slim("Number"),
        slim("Size"),
        wide("Service", 1.0),
        wide("Level of", 1.0),
        number("Over floor", r.symbol(LENGTH)),
    ]);
    for n in tables::all_nozzles(&section) {
        let size = if n.mark == "M" {
            section.unit().access.as_ref().map_or(n.size, |a| length(r, a.opening.q))
        } else {
            n.size
        };
        let level = n.level.map_or_else(|| "–".to_owned(), |z| length_digits(r, z));
        table.row([n.mark.to_owned(), n.count, size, n.service.to_owned(), n.at.to_owned(), level]);
    }
    r.out.table(&table);
    r.out.remark(&tables::nozzle_note(&section));
}

pub(super) fn made_of(r: &mut Report<'_>, train: &Train) {
    let p = &train.unit.particulars;
    let mut sheet = Sheet::new("Materials, weights");
    sheet.or("Vessel", p.material.clone(), MAKER);
    sheet.or("Walls", p.wall.map(|wall| length(r, wall.q)), MAKER);
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
    let legs = r.settled.job.design.performance.as_ref().is_some_and(|p| scope::has_supports(p, train));
    if let Some(leg) = weights.and_then(|w| w.leg).filter(|_| legs) {
        sheet.add("On each of four legs, evenly shared, then", r.prose(leg.q, MASS));
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

pub(super) fn setting(r: &mut Report<'_>, train: &Train, p: &Performance) {
    let site = &p.site.installation;
    let mut sheet = Sheet::new("Setting and instruments");
    sheet.add(
        "Stands",
        match site.stands.q {
            Stands::Unknown => "open: levels not stated".to_owned(),
            stands => stands.word().to_owned(),
        },
    );
    let datum = |q: Length| print::told(q.si(), r.system.pick((&FT, &M)));
    sheet.or("Floor, site datum", p.site.floor.map(|floor| datum(floor.q)), NOT_STATED);
    if let Some(cover) = site.cover {
        sheet.add("Cover over its top", r.prose(cover.q, (&FT, &M)));
    }
    let e = &r.settled.job.enquiry;
    sheet.or("Ground, site datum", e.site.ground.q().map(datum), NOT_STATED);
    sheet.or("Groundwater, site datum", e.site.groundwater.q().map(datum), NOT_STATED);
    sheet.or("Coldest air", e.site.coldest_air.q().map(|q| r.prose(q, (&DEG_F, &DEG_C))), NOT_STATED);
    let way = p.fit.way();
    sheet.add(
        "Room in plan, walkway included",
        format!("{} × {}", r.prose(way.length.q, (&FT, &M)), r.prose(way.width.q, (&FT, &M))),
    );
    sheet.add("Clear height over the ground", r.prose(p.fit.headroom.q, (&FT, &M)));
    let float = (!p.levels.is_empty()).then(|| r.prose(train.unit.retention.float_density.q, (&LB_FT3, &KG_M3)));
    sheet.or("Floats of the level switches, density", float, NOT_STATED);
    let section = Section::new(r.settled, crate::Edition::Client);
    if let Some(all) = section.map(|s| crate::instruments::switches(&s)).filter(|all| !all.is_empty()) {
        sheet.add("Level switches, tags as on the drawing", crate::instruments::tags(&all));
    }
    sheet.add("Switch, panel, rating for the area", "by maker of the panel");
    let areas = p.shop.as_ref().and_then(|shop| shop.areas.oils.first());
    sheet.or(
        "Class of the most volatile oil",
        areas.map(|class| format!("{} ({})", class.shown(), class.oil)),
        NOT_STATED,
    );
    sheet.set(r);
}

pub(super) fn around(r: &mut Report<'_>, train: &Train) {
    let one = |stage: &Stage| {
        let size = stage.size.as_ref().map_or_else(String::new, |(label, value, units)| {
            format!(" ({label} {})", show_in_prose(value, Some(*units), r.system))
        });
        format!("{}{size}", stage.name)
    };
    let beside: Vec<String> = train.stages.iter().filter(|stage| stage.asked_for).map(one).collect();
    if beside.is_empty() {
        return;
    }
    let who = if scope::rows(r.settled).is_empty() { "" } else { " Who brings what: see the scope split." };
    r.out.lead("Needed beside it:", &format!("{}.{who}", beside.join("; ")));
}

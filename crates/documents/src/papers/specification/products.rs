//! Part 2: the unit, its vessel, internals, nozzles, levels, instruments, accessories, tests in the shop.

use super::{TO_BE_STATED, clause, or_open};
use crate::drawings::tables;
use crate::papers::common::{LENGTH, VOLUME, angle, length, length_digits, no_less};
use crate::report::Report;
use crate::report::blocks::{Table, number, slim, wide};
use crate::section::place::Section;
use stillrise_design::performance::Performance;
use stillrise_design::train::Train;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::{DEG_C, DEG_F, FT2, IN, KG_M3, KN, KPA, KW, LB_FT3, LBF, M2, MM, PERCENT, PSF};
use stillrise_units::{Length, Typed, print};

pub(super) fn products(r: &mut Report<'_>, train: &Train) {
    r.out.section("Products");
    let p = r.settled.job.design.performance.as_ref();
    unit(r, train, p);
    vessel(r, train, p);
    internals(r, train);
    nozzles(r);
    stores(r, train, p);
    accessories(r, train, p);
    clause(r, "2.7 Tests in the shop", shop_tests(train));
}

fn unit(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let unit = &train.unit;
    let (what, sizes) = unit.body.sizes();
    let size = sizes.iter().map(|q| length(r, *q)).collect::<Vec<_>>().join(" × ");
    let mut texts = vec![format!(
        "Each unit shall hold no less than {} of water over its floor up to the outlet; {what} of the unit this is drawn from: {size}. Other dimensions shall be accepted if volume, plate area and levels are met.",
        no_less(r, unit.layout.water_volume.q, VOLUME)
    )];
    if let Some(p) = p {
        let (highest, top) = (p.highest().inlet.q, unit.body.height().q);
        let free = top - highest;
        if free.si() > 0.0 {
            texts.push(format!("At the largest flow, fouled, the water in the inlet chamber shall stand no higher than {} over the floor, {} below the top of the inside.", length(r, highest), length(r, free)));
        }
    }
    let by = if unit.pack.is_some() { "by the plates or the last baffle" } else { "by the last baffle" };
    texts.push(format!("Nothing inside shall let water pass {by} at any level up to that of the largest flow."));
    clause(r, "2.1 Unit", texts);
}

fn vessel(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let known = &train.unit.particulars;
    let wall = known.wall.map_or_else(|| TO_BE_STATED.to_owned(), |wall| length(r, wall.q));
    let mut texts = vec![
        format!("Material of the vessel: {}. Walls: {wall}, or more where the maker's calculation asks for it.", or_open(known.material.as_deref())),
        format!("Coating or lining, inside and outside: {}; it shall withstand the oils and products of clause 1.5.", or_open(known.coating.as_deref())),
        "The vessel shall bear water up to its top, and being empty with the ground and water outside it at their highest where it lies in the ground.".to_owned(),
    ];
    let shop = p.and_then(|p| p.shop.as_ref());
    let built_in = train.unit.arrangement.is_built_in();
    if let Some(bearing) = shop.and_then(|s| s.weights.as_ref()?.bearing).filter(|_| !built_in) {
        texts.push(format!(
            "Full to its top it shall load what it stands on with no more than {} in the mean.",
            print::at_least(bearing.q.si(), r.system.pick((&PSF, &KPA)))
        ));
    }
    if let Some(lifting) = shop.and_then(|s| s.lifting.as_ref()) {
        let pull =
            lifting.pulls.as_ref().map_or_else(|| TO_BE_STATED.to_owned(), |pulls| r.prose(pulls.lug.q, (&LBF, &KN)));
        texts.push(format!(
            "It shall have {} lifting points, each designed for {pull}, slings no flatter than {} from the level.",
            print::digits(lifting.points.q.si(), 2),
            angle(lifting.angle.q)
        ));
    }
    texts.push(match (&train.unit.access, train.unit.body.is_open()) {
        (Some(access), false) => format!("It shall have {} manways with a clear opening of no less than {} each, vapour-tight, with covers for a load of {TO_BE_STATED}.", print::digits(access.count.q.si(), 2), length(r, access.opening.q)),
        _ => format!("It shall have covers, in pieces that {TO_BE_STATED} can lift, for a load of {TO_BE_STATED}; they shall open over all that is measured, drawn off or cleaned."),
    });
    clause(r, "2.2 Vessel", texts);
}

fn internals(r: &mut Report<'_>, train: &Train) {
    let unit = &train.unit;
    let mut texts = vec![
        "The incoming stream shall be broken and spread over the section before it reaches the zone where oil rises."
            .to_owned(),
    ];
    if let Some(pack) = &unit.pack {
        let l = &pack.laid;
        texts.push(format!(
            "Plates: projected area no less than {}, clear gap {}, inclined {} to the level, {}; made of {}.",
            no_less(r, pack.follows.area.q, (&FT2, &M2)),
            length(r, l.gap.q),
            angle(l.angle.q),
            l.run.q.word(),
            or_open(unit.particulars.plate_material.as_deref())
        ));
        texts.push(
            "Flow between the plates shall be laminar at the largest flow, and shared evenly between the gaps."
                .to_owned(),
        );
        let weight = unit
            .particulars
            .module_weight
            .map_or_else(|| TO_BE_STATED.to_owned(), |m| r.prose(m.q, crate::papers::common::MASS));
        texts.push(format!("The plates shall come out, or shall be cleaned, without anybody entering the vessel; the heaviest module shall weigh no more than {weight}, wet and fouled."));
    } else {
        texts.push(
            "There are no plates: the open water between inlet and outlet separates; nothing shall stir it.".to_owned(),
        );
    }
    if let Some(hopper) = &unit.hopper {
        texts.push(format!("Sludge shall collect in a hopper of no less than {} ahead of the plates, and shall be drawn off while the unit is full.", no_less(r, hopper.volume.q, VOLUME)));
        texts.push("No water shall pass under the first baffle through the hopper.".to_owned());
    } else {
        texts.push("Sludge shall be drawn off the floor while the unit is full.".to_owned());
    }
    if let Some(trap) = &unit.sand_trap {
        texts.push(format!(
            "A compartment ahead, {} long, shall hold sand; no credit shall be taken for oil that rises in it.",
            length(r, trap.length.q)
        ));
    }
    if let Some(mesh) = &unit.mesh {
        texts.push(format!("Mesh: no thinner than {} along the flow, fibre {}, {} solid; no credit shall be taken for it unless it was measured.", length(r, mesh.laid.thickness.q), length(r, mesh.laid.fibre.q), r.prose(mesh.laid.solidity.q, (&PERCENT, &PERCENT))));
    }
    texts.push("The water shall leave from under the oil, by a baffle from wall to wall or a dip pipe; nothing shall siphon the unit empty.".to_owned());
    clause(r, "2.3 Internals", texts);
}

fn nozzles(r: &mut Report<'_>) {
    let Some(section) = Section::new(r.settled, r.edition) else { return };
    r.out.heading("2.4 Nozzles");
    let mut table = Table::new([
        slim("Mark"),
        slim("Number"),
        slim("Size"),
        wide("Service", 1.0),
        number("Over floor", r.symbol(LENGTH)),
    ]);
    for n in tables::all_nozzles(&section) {
        let size = match (n.mark, &section.unit().access) {
            ("M", Some(access)) => length(r, access.opening.q),
            _ if n.size == "by maker" => TO_BE_STATED.to_owned(),
            _ => n.size,
        };
        table.row([
            n.mark.to_owned(),
            n.count,
            size,
            format!("{}, {}", n.service, n.at),
            n.level.map_or_else(|| "–".to_owned(), |z| length_digits(r, z)),
        ]);
    }
    r.out.table(&table);
    let flanges = or_open(section.unit().particulars.flanges.as_deref());
    r.out.list(
        true,
        [
            format!("Flanges, rating and facing: {flanges}."),
            "Nozzles shall project far enough for bolts and insulation, and shall carry no load of the pipes."
                .to_owned(),
        ]
        .map(|text| (text, String::new())),
    );
}

fn stores(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let mut texts = Vec::new();
    if let Some(p) = p {
        let governing = p.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
        if let Some(oil) = governing {
            let at = |z: Length| length(r, z);
            texts.push(format!(
                "The unit shall hold a layer of {} ({}) without losing oil to its outlet.",
                length(r, oil.limit.q),
                oil.oil
            ));
            if let Some(alarm) = oil.level(Mark::Alarm) {
                texts.push(format!(
                    "The alarm shall trip when the interface falls to {} over the floor (a layer of {}, {} of oil in one unit, water at rest).",
                    at(alarm.interface.q), length(r, alarm.thickness.q), r.prose(alarm.volume.q, VOLUME)
                ));
            }
        }
        if let Some(spill) = &p.storage.spill {
            texts.push(format!(
                "Between alarm and limit there shall be room for {} of oil in all units together, water at rest.",
                no_less(r, spill.room.q, VOLUME)
            ));
        }
        if let Some(volume) = p.storage.sludge_trigger {
            texts.push(format!(
                "There shall be room for {} of sludge in one unit before it is to be pumped out.",
                no_less(r, volume.q, VOLUME)
            ));
        }
    }
    let section = Section::new(r.settled, crate::Edition::Client);
    let tags = section.map_or_else(String::new, |s| crate::instruments::tags(&crate::instruments::of_oil(&s)));
    let tags = if tags.is_empty() { tags } else { format!(" {tags}") };
    texts.push(format!(
        "Level switch{tags}: a float of {} that rides between oil and water, or one that does the same; its contact shall open on alarm and on failure, and shall be tested from outside.",
        r.prose(train.unit.retention.float_density.q, (&LB_FT3, &KG_M3))
    ));
    texts.push(
        "Alarm panel: seen and heard where somebody is, acknowledged by hand, with a contact to pass it on.".to_owned(),
    );
    texts.push(format!("All that is electrical in or at the unit shall be certified for the area as the authority classifies it: {TO_BE_STATED}."));
    if let Some(pumps) = &train.unit.pump_out {
        let [stop, start, alarm] = [pumps.stop, pumps.start, pumps.alarm].map(|v| length(r, v.q));
        texts.push(format!("Effluent pumps: {} of {} each, one standing by; stop at {stop}, start at {start}, second pump and alarm at {alarm} over the floor.", print::digits(pumps.pumps.q.si(), 2), r.prose(pumps.pump.q, stillrise_design::basis::FLOW_UNITS)));
    }
    clause(r, "2.5 Oil, sludge and instruments", texts);
}

fn accessories(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let shop = p.and_then(|p| p.shop.as_ref());
    let mut texts = vec![
        "A place for samples behind the unit, where its water falls freely, before any other water joins it, shall be reached without entering.".to_owned(),
        "A lug for earthing, and a name plate with flow, volumes, oil room, year and maker, shall be fixed where they can be seen.".to_owned(),
    ];
    if let Some(vent) = shop.and_then(|s| s.vent.as_ref()) {
        texts.push(format!(
            "Each closed room shall be vented by a bore of no less than {}, led to where no vapour gathers.",
            r.prose(vent.least.q, (&IN, &MM))
        ));
    }
    if let Some(frost) = shop.and_then(|s| s.frost.as_ref()) {
        texts.push(format!(
            "Against frost of {}: a heater of {} behind {} of insulation, or what does the same [by whom]; sample lines and float shall be protected too.",
            r.prose(frost.air.q, (&DEG_F, &DEG_C)), r.prose(frost.heater.q, (&KW, &KW)), length(r, frost.with.q)
        ));
    }
    if shop.is_some_and(|s| s.protection.is_some()) {
        texts.push("Steel in the ground shall be coated outside and protected by anodes, designed by a specialist on the soil as measured.".to_owned());
    }
    texts.push(format!(
        "Spare parts for {TO_BE_STATED} of service: gaskets, one level switch, {}.",
        if train.unit.mesh.is_some() { "one set of mesh" } else { "what wears" }
    ));
    clause(r, "2.6 Accessories", texts);
}

fn shop_tests(train: &Train) -> Vec<String> {
    if train.unit.arrangement.is_built_in() {
        return vec![
            "Internals shall be fitted together in the shop once and measured against the drawing.".to_owned(),
            "The level switch shall be tested in oil and in water before it leaves the shop.".to_owned(),
        ];
    }
    vec![
        format!(
            "Each vessel shall be filled with water to its top, coating inside not yet applied, and shall stand {TO_BE_STATED} without a leak or a lasting bulge."
        ),
        "Dimensions, nozzles, levels of crest, lips and float shall be measured against the drawing, and recorded."
            .to_owned(),
        "Coating shall be measured for thickness and tested for pores; faults shall be mended and tested again."
            .to_owned(),
        "The level switch shall be tested in oil and in water before it leaves the shop.".to_owned(),
    ]
}

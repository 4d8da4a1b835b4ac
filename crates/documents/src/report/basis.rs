//! What was said, and what is designed for.

use super::blocks::{Table, number, slim, wide};
use super::{Report, capital, sentence};
use stillrise_design::Val;
use stillrise_design::basis::fluids::{OilState, Season};
use stillrise_design::basis::rain_kept_out::is_barred;
use stillrise_design::basis::shear::Shear;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::provenance::{Chooser, Origin, Pair};
use stillrise_units::catalog::{CP, CST, DEG_C, DEG_F, GAL, KG_M3, LB_FT3, M3, MG_L, MM2_S, MN_M, MPA_S, UM};
use stillrise_units::{Concentration, Typed, print, spoken};

const MG: Pair = (&MG_L, &MG_L);
const DENSITY: Pair = (&LB_FT3, &KG_M3);

/// Section 2.
pub(super) fn basis(r: &mut Report<'_>) {
    r.out.section("Basis of design");
    r.out.para(
        "Every number below carries its place in the trail (No.), where its origin or its calculation stands in full.",
    );
    claims(r);
    let settled = r.settled;
    let Some(basis) = &settled.job.design.basis else {
        no_basis(r);
        return;
    };
    fluids(r, basis);
    storm(r, basis);
    waters(r, basis);
    r.out.heading("How the water is fed");
    let feed = &basis.feed;
    let kind = feed.class.map_or("the kind of pump was not said", |class| class.meaning);
    r.out.para(&if feed.pumped { sentence(&format!("by pump: {kind}")) } else { by_gravity(basis) });
    let nodes = [feed.one_pump, feed.all_pumps, feed.pump_flow, feed.cap].into_iter().flatten().map(|v| v.at);
    let table = r.rows(nodes.chain(feed.pulsation.map(|p| p.at)).chain(feed.sump.map(|v| v.at)));
    r.out.table(&table);
    droplets(r, basis);
    super::containment::containment(r, basis);
    super::european::european(r, basis);
    limits(r, basis);
    r.out.heading("Methods and margins");
    let m = &basis.methods;
    let nodes = [
        m.rise.at,
        m.tank.at,
        m.reynolds.at,
        m.grains.at,
        m.droplet.at,
        m.maldistribution.at,
        m.fouling.at,
        m.reserve.at,
    ];
    let table = r.rows(nodes.into_iter().chain(m.alarm.map(|a| a.at)));
    r.out.table(&table);
}

/// That water comes by gravity, but for what pumps of its own bring on the way.
fn by_gravity(basis: &Basis) -> String {
    let places = basis.arrivals.iter().filter_map(|arrival| arrival.shear.as_ref()).flat_map(Shear::places);
    let mut pumps: Vec<&str> = places.filter(|place| place.is_pump).map(|place| place.name.as_str()).collect();
    pumps.sort_unstable();
    pumps.dedup();
    match &pumps[..] {
        [] => "By gravity.".to_owned(),
        pumps => format!("By gravity, but for what is pumped on the way: {}.", pumps.join(", ")),
    }
}

/// Where the chain stopped before there was a basis.
fn no_basis(r: &mut Report<'_>) {
    let stops: Vec<_> = r.settled.job.design.stops.iter().map(|s| (sentence(&s.to_string()), String::new())).collect();
    r.out.lead("No basis could be found.", "The calculation stopped at:");
    r.out.list(false, stops);
}

/// Contradicting claims, and how the enquiry was read.
fn claims(r: &mut Report<'_>) {
    r.out.heading("Claims and contradictions");
    let ledger = &r.settled.job.ledger;
    let mut table = Table::new([
        wide("Quantity", 1.0),
        slim("Taken"),
        wide("Claims", 1.6),
        wide("Because", 1.4),
        number("No.", ""),
    ]);
    for (k, entry) in ledger.entries.iter().enumerate() {
        let Origin::Chosen { by, among, because, .. } = &entry.origin else { continue };
        if *by != Chooser::Method {
            let taken = entry.told(r.system);
            table.row([capital(&entry.label), taken, among.clone(), because.clone(), (k + 1).to_string()]);
        }
    }
    if table.is_empty() {
        r.out.para("No key of the enquiry holds two claims that contradict; whether figures of several keys fit together, the rules say.");
    }
    r.out.table(&table);
    let notes = &r.settled.job.enquiry.notes;
    if !notes.is_empty() {
        r.out.lead("Read with care.", "Where the enquiry had to be interpreted:");
        r.out.list(false, notes.iter().map(|(place, note)| (format!("{place}: {note}"), String::new())));
    }
}

fn fluids(r: &mut Report<'_>, basis: &Basis) {
    r.out.heading("Water and oils by season");
    let f = &basis.fluids;
    let mut table = Table::new([
        wide("Property", 2.2),
        number("Coldest water", ""),
        number("Warmest water", ""),
        number("No.", ""),
    ]);
    let cold = |q: f64, units: Pair| print::told(q, r.system.pick(units));
    for (name, units, a, b) in [
        (
            "Temperature of the water",
            (&DEG_F, &DEG_C) as Pair,
            (f.cold.temperature.q.si(), f.cold.temperature.at),
            (f.warm.temperature.q.si(), f.warm.temperature.at),
        ),
        (
            "Density of the water",
            DENSITY,
            (f.cold.density.q.si(), f.cold.density.at),
            (f.warm.density.q.si(), f.warm.density.at),
        ),
        (
            "Dynamic viscosity of the water",
            (&CP, &MPA_S),
            (f.cold.viscosity.q.si(), f.cold.viscosity.at),
            (f.warm.viscosity.q.si(), f.warm.viscosity.at),
        ),
        (
            "Kinematic viscosity of the water",
            (&CST, &MM2_S),
            (f.cold.kinematic.q.si(), f.cold.kinematic.at),
            (f.warm.kinematic.q.si(), f.warm.kinematic.at),
        ),
    ] {
        table.row([name.to_owned(), cold(a.0, units), cold(b.0, units), format!("{}, {}", r.no(a.1), r.no(b.1))]);
    }
    for oil in &f.oils {
        let role = role(basis, oil);
        table.row([
            format!("Density of {}{role}", oil.name),
            cold(oil.cold.q.si(), DENSITY),
            cold(oil.warm.q.si(), DENSITY),
            format!("{}, {}", r.no(oil.cold.at), r.no(oil.warm.at)),
        ]);
    }
    r.out.table(&table);
    for oil in &f.oils {
        let named = format!(
            "{} is taken as the handbook's {}: density at {} {}, interfacial tension {} without detergents",
            oil.name,
            oil.oil.title,
            spoken("{59 °F|15 °C}", r.system),
            r.show(oil.density_15.q, DENSITY),
            r.show(oil.tension.q, (&MN_M, &MN_M)),
        );
        r.out.remark(&sentence(&named));
    }
}

/// What an oil governs, where there are several.
fn role(basis: &Basis, oil: &OilState) -> &'static str {
    let f = &basis.fluids;
    if f.oils.len() < 2 {
        ""
    } else if core::ptr::eq(f.heaviest(Season::Cold), oil) {
        " (heaviest: governs rise and interface)"
    } else if core::ptr::eq(f.lightest(Season::Warm), oil) {
        " (lightest: governs the surface)"
    } else {
        ""
    }
}

fn storm(r: &mut Report<'_>, basis: &Basis) {
    if is_barred(&r.settled.job.enquiry) {
        r.out.heading("Surfaces and storm");
        r.out.remark("The owner of the sewer allows no rain in it: the unit is worked for the other waters alone, and the rain off the declared surfaces has to be kept out.");
    }
    let Some(storm) = &basis.storm else { return };
    r.out.heading("Surfaces and storm");
    let ledger = &r.settled.job.ledger;
    // The composite coefficient rests on the pairs of area and coefficient that were put together.
    let pairs = ledger.entry(storm.coefficient.at).and_then(|e| match &e.origin {
        Origin::Derived { inputs, .. } => ledger.entry(*inputs.first()?),
        _ => None,
    });
    if let Some(Origin::Chosen { inputs, .. }) = pairs.map(|e| &e.origin) {
        let mut table = Table::new([
            wide("Surface", 1.0),
            wide("Plan area as said", 1.2),
            slim("Counted"),
            wide("How", 1.2),
            slim("Runoff"),
            wide("Coefficient from", 2.0),
            number("No.", ""),
        ]);
        let surfaces = &r.settled.job.enquiry.surfaces;
        let counted = storm.surfaces.iter().filter_map(|place| Some((place + 1, surfaces.get(*place)?)));
        for (pair, (number, surface)) in inputs.chunks(2).zip(counted) {
            let [area, coefficient] = pair else { continue };
            let (Some(area_entry), Some(entry)) = (r.entry(*area), r.entry(*coefficient)) else { continue };
            let said = surface.area.claim().map_or_else(String::new, |c| {
                let from = c.from.as_ref().map_or_else(String::new, |from| format!(" ({from})"));
                format!("{}{from}", c.written.text)
            });
            let how = if surface.canopy.0 == Some(true) { "under a canopy: only rain blown in" } else { "whole area" };
            table.row([
                surface.name.0.clone().unwrap_or_else(|| format!("surface {number}")),
                said,
                area_entry.told(r.system),
                how.to_owned(),
                entry.told(r.system),
                super::trail::origin(r, entry),
                format!("{}, {}", r.no(*area), r.no(*coefficient)),
            ]);
        }
        r.out.table(&table);
    }
    let table =
        r.rows([storm.area.at, storm.coefficient.at, storm.concentration_time.at, storm.intensity.at, storm.flow.at]);
    r.out.table(&table);
}

fn waters(r: &mut Report<'_>, basis: &Basis) {
    // A flow that was only stated is a case and no water.
    if basis.waters.is_empty() {
        return;
    }
    r.out.heading("Waters");
    let flow = r.symbol(FLOW_UNITS);
    let day = (&GAL, &M3) as Pair;
    let mut table = Table::new([
        wide("Water", 1.0),
        number("Flow", flow),
        number("Total|oil", "mg/L"),
        number("Free", "mg/L"),
        number("Emulsified", "mg/L"),
        number("Dissolved", "mg/L"),
        number("Solids", "mg/L"),
        number("Average|day", r.symbol(day)),
        number("No.", ""),
    ]);
    for water in &basis.waters {
        let c = &water.content;
        let mg = |v: Val<Concentration>| r.digits(v.q, MG, 3);
        table.row([
            capital(&water.name),
            r.digits(water.flow.q, FLOW_UNITS, 3),
            mg(c.total),
            mg(c.free),
            mg(c.emulsified),
            mg(c.dissolved),
            mg(c.solids),
            r.digits(water.per_day.q, day, 3),
            r.no(water.flow.at),
        ]);
    }
    r.out.table(&table);
    let mut table =
        Table::new([wide("Where it comes from", 1.25), slim("Value"), wide("Origin", 2.0), number("No.", "")]);
    for water in &basis.waters {
        let c = &water.content;
        let peaks = water.peaks.into_iter().flat_map(|p| [p.day.at, p.sample.at]);
        for [label, value, origin, no] in [water.flow.at, c.total.at, c.emulsified.at, c.dissolved.at, c.solids.at]
            .into_iter()
            .chain(peaks)
            .filter_map(|at| r.row(at))
        {
            table.row([format!("{}: {label}", capital(&water.name)), value, origin, no]);
        }
    }
    r.out.table(&table);
}

fn droplets(r: &mut Report<'_>, basis: &Basis) {
    r.out.heading("Droplets, solids and spill");
    let d = &basis.droplets;
    let mut nodes = vec![d.law.at, d.d50.at];
    if d.table.q.0.is_empty() {
        nodes.push(d.shape.at);
    } else {
        nodes.push(d.table.at);
    }
    if let Some(shear) = &basis.shear {
        nodes.extend(shear.places().flat_map(|p| [p.dissipation.at, p.survives.at]));
        nodes.extend(shear.median.map(|m| m.at));
    }
    let s = &basis.solids;
    let sieved = !s.table.q.0.is_empty();
    nodes.push(s.d50.at);
    nodes.push(if sieved { s.table.at } else { s.spread.at });
    nodes.push(s.bare.at);
    if s.density.at != s.bare.at {
        nodes.push(s.density.at);
    }
    nodes.extend([s.in_sludge.at, s.sludge_density.at]);
    if let Some(spill) = &basis.spill {
        nodes.push(spill.volume.at);
        nodes.extend(spill.rate.map(|rate| rate.at));
    }
    let table = r.rows(nodes);
    r.out.table(&table);
    if let Some(shear) = basis.shear.as_ref().filter(|s| s.governs) {
        r.out.remark(&format!(
            "The {} breaks the droplets: what it leaves is finer than what arrives, and governs. Droplets below {} hardly rise out of a separator.",
            shear.hardest().name,
            r.show(stillrise_handbook::separation::floors::free_droplet().value, (&UM, &UM)),
        ));
    }
    if let Some(closure) = basis.closure.or(basis.spill.as_ref().map(|_| false)) {
        r.out.remark(if closure {
            "A closure shuts the outlet before a spill reaches it."
        } else {
            "No closure of the outlet is declared."
        });
    }
}

fn limits(r: &mut Report<'_>, basis: &Basis) {
    r.out.heading("Limits on what leaves");
    if basis.limits.is_empty() && basis.ph_limits.is_empty() {
        r.out.para("No limit is stated.");
    }
    let mut table = Table::new([
        wide("Limit on", 1.5),
        slim("Value"),
        wide("Statistic", 1.0),
        wide("Method", 1.0),
        wide("Authority", 1.0),
        wide("Long-term mean it asks for", 1.0),
        number("No.", ""),
    ]);
    for limit in &basis.limits {
        let mean = limit.scatter.as_ref().map_or_else(|| "–".to_owned(), |s| r.show(s.mean.q, MG));
        table.row([
            limit.title().to_owned(),
            crate::summary::allows(limit),
            limit.statistic.q.word().to_owned(),
            limit.method.clone().unwrap_or_else(|| "not stated".to_owned()),
            limit.authority.clone().unwrap_or_else(|| "not stated".to_owned()),
            mean,
            r.no(limit.value.at),
        ]);
    }
    for limit in &basis.ph_limits {
        table.row([
            limit.title().to_owned(),
            limit.shown(),
            limit.statistic().to_owned(),
            limit.method.clone().unwrap_or_else(|| "not stated".to_owned()),
            limit.authority.clone().unwrap_or_else(|| "not stated".to_owned()),
            "–".to_owned(),
            r.no(limit.low.at),
        ]);
    }
    r.out.table(&table);
}

//! Levels and stores: the hydraulic profile, the oil's caps and set points, what collects.

use super::Report;
use super::blocks::{Table, number, slim, wide};
use super::{capital, sentence};
use crate::summary::performance::may_bind;
use crate::summary::stands;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::Performance;
use stillrise_design::performance::levels::OilLevels;
use stillrise_design::performance::promise;
use stillrise_design::provenance::Pair;
use stillrise_units::catalog::{D, FT, FT_MIN, GAL, GPD, IN, KG_D, L, LB_D, LBF, M, MM, MM_S, NEWTON, PERCENT, UM};
use stillrise_units::{MassRate, Typed, print, spoken};

pub(super) const LEVEL: Pair = (&IN, &MM);
pub(super) const STORE: Pair = (&GAL, &L);
const SITE: Pair = (&FT, &M);
const MASS: Pair = (&LB_D, &KG_D);
const SPEED: Pair = (&FT_MIN, &MM_S);

/// The second half of section 5.
pub(super) fn hydraulics(r: &mut Report<'_>) {
    let settled = r.settled;
    let Some(p) = &settled.job.design.performance else { return };
    profile(r, p);
    site(r, p);
    for levels in &p.levels {
        oil(r, levels);
    }
    storage(r, p);
}

/// Solids by size: an annex.
pub(super) fn solids(r: &mut Report<'_>) {
    if let Some(p) = r.settled.job.design.performance.as_ref().filter(|p| !p.grains.is_empty()) {
        r.out.section("Solids by size");
        grains(r, p);
    }
}

fn profile(r: &mut Report<'_>, p: &Performance) {
    r.out.heading("Hydraulic profile");
    r.out.para(&format!("From the outlet upstream: the loss of each step and the level ahead of it, above the floor of the unit, in the coldest water; all in {}.", spoken("{inches|mm}", r.system)));
    let mut columns = vec![wide("Ahead of the", 1.0)];
    for (k, profile) in p.profiles.iter().enumerate() {
        if k > 0 {
            columns.push(number("Loss", ""));
        }
        let name = capital(profile.at.name()).replace(", ", ",|");
        columns.push(number(&format!("{name}|{}", r.digits(profile.flow.q, FLOW_UNITS, 3)), r.symbol(FLOW_UNITS)));
    }
    columns.push(number("No.", ""));
    let mut table = Table::new(columns);
    for (i, step) in p.highest().steps.iter().enumerate() {
        let mut row = vec![capital(step.name)];
        for (k, profile) in p.profiles.iter().enumerate() {
            let Some(step) = profile.steps.get(i) else { continue };
            if k > 0 {
                row.push(r.digits(step.loss.q, LEVEL, 2));
            }
            row.push(r.digits(step.level.q, LEVEL, 4));
        }
        row.push(p.profiles.last().and_then(|last| last.steps.get(i)).map_or_else(String::new, |s| r.no(s.level.at)));
        table.row(row);
    }
    r.out.table(&table);
    let highest = p.highest();
    let outlet = if highest.drowned { "is drowned by the water behind it" } else { "is not drowned" };
    let full = if highest.runs_full { "runs full" } else { "runs part full" };
    r.out.remark(&format!("At the largest flow the outlet {outlet} and its pipe {full}. The first step's loss is the head over the level without flow."));
    let mut table = Table::new([wide("Velocity at the largest flow", 2.0), slim("Value"), number("No.", "")]);
    for (_, at) in p.velocities.fields() {
        if let Some([label, value, _, no]) = r.row(at) {
            table.row([label, value, no]);
        }
    }
    r.out.table(&table);
}

fn site(r: &mut Report<'_>, p: &Performance) {
    let s = &p.site;
    let settled = r.settled;
    r.out.heading("How it stands, and the room it needs");
    let lines = [stands::how(settled), stands::room(settled)].into_iter().flatten().map(|line| sentence(&line));
    for line in lines.chain(stands::outlet(settled)) {
        r.out.para(&line);
    }
    if s.floor.is_none() {
        r.out.remark("The levels that were stated do not place the unit in the site's datum.");
    }
    let levels = [
        s.floor,
        s.spare_fall,
        s.floor_over_ground,
        s.tailwater,
        s.installation.water_over_crest,
        s.installation.highest_outfall,
    ];
    let fit = &p.fit;
    let room = [fit.access, fit.way().row_length, fit.way().row_width, fit.way().length, fit.way().width, fit.top];
    let nodes = levels.into_iter().flatten().chain(room).chain([fit.above, fit.headroom]).map(|v| v.at);
    let nodes: Vec<_> = nodes.chain(fit.choice.map(|v| v.at)).collect();
    let table = r.rows(nodes);
    r.out.table(&table);
    ground(r, p);
    pump_out(r, p);
    if let Some(floor) = s.floor {
        let highest = p.highest().inlet;
        // Both stand in the trail; only the datum differs.
        r.out.remark(&format!(
            "Floor of the unit at {} of the site's datum; add the levels above. The highest level, in the inlet chamber at the largest flow, is {} above the floor.",
            r.show(floor.q, SITE), r.show(highest.q, LEVEL)
        ));
    }
}

/// A unit in the ground: its cover, and whether it floats when it is emptied.
fn ground(r: &mut Report<'_>, p: &Performance) {
    let installation = &p.site.installation;
    let cover = [installation.least_cover, installation.cover].into_iter().flatten().map(|v| v.at);
    let Some(f) = &p.flotation else { return };
    r.out.heading("In the ground");
    let mut nodes: Vec<_> = cover.collect();
    nodes.extend([f.groundwater, f.floats_above].into_iter().flatten().map(|v| v.at));
    nodes.extend(f.uplift.map(|v| v.at));
    if let Some(held) = &f.held {
        nodes.push(held.weight.at);
        nodes.extend([held.soil, held.wedge, held.anchors].into_iter().flatten().map(|v| v.at));
        nodes.extend([held.factor.at, f.wanted.at, held.needed.at, held.concrete.at]);
    }
    nodes.extend(p.shell.iter().flat_map(|shell| shell.fields()).map(|(_, at)| at));
    let table = r.rows(nodes);
    r.out.table(&table);
    r.out.remark(&format!(
        "Preliminary. The empty unit against the groundwater at its highest: inside measures, no friction, nothing for what it holds. How soil counts: {}{}. {} The pit, the ground and the anchors are for a licensed engineer on the site's own soil report; the local code names the factor, and how soil counts.",
        f.counts.title.to_lowercase(),
        crate::summary::ground::planes(f),
        f.counts.note
    ));
}

/// How its effluent pumps run.
fn pump_out(r: &mut Report<'_>, p: &Performance) {
    let Some(runs) = &p.pump_out else { return };
    r.out.heading("Effluent pumps");
    let mut nodes = vec![runs.between.at, runs.cycle.at];
    nodes.extend(runs.run.map(|v| v.at));
    nodes.extend([runs.reserve.at, runs.lasts.at]);
    nodes.extend(runs.lift.map(|v| v.at));
    let table = r.rows(nodes);
    r.out.table(&table);
    r.out.remark("One pump lifts, one stands by. Friction in the discharge pipe comes on top of the lift; what stands behind the pumps gets their flow, and they break what oil is left.");
    r.out.remark(crate::summary::ground::RESERVE);
}

fn oil(r: &mut Report<'_>, levels: &OilLevels) {
    r.out.heading(&format!("Oil levels: {}", levels.oil));
    let unit = r.symbol(LEVEL);
    let train = r.settled.job.design.train.as_ref();
    let mut table =
        Table::new([wide("Cap on the layer", 1.4), number("Thickest layer", unit), wide("", 2.0), number("No.", "")]);
    for (k, cap) in levels.caps.iter().enumerate() {
        let governs = k == levels.governing;
        let row = [
            capital(cap.of.word()),
            r.digits(cap.thickness.q, LEVEL, 4),
            match train.filter(|train| !may_bind(cap, train)) {
                Some(_) => "deeper than the tank: never binds",
                None if governs => "governs",
                None => "",
            }
            .to_owned(),
            r.no(cap.thickness.at),
        ];
        if governs { table.strong_row(row) } else { table.row(row) }
    }
    r.out.table(&table);
    set_points(r, levels);
    let force = (&LBF, &NEWTON) as Pair;
    let f = &levels.float;
    let mut text = format!(
        "{} of it hang in the water; it is drawn down in the oil with {} and up in the water with {} (No. {}, {}, {})",
        r.show(f.submerged.q, (&PERCENT, &PERCENT)),
        r.show(f.down.q, force),
        r.show(f.up.q, force),
        r.no(f.submerged.at),
        r.no(f.down.at),
        r.no(f.up.at)
    );
    if let Some(trip) = levels.trip {
        text += &format!(
            ". Mounted for the governing oil, the alarm trips at a layer of {} (No. {})",
            r.show(trip.q, LEVEL),
            r.no(trip.at)
        );
    }
    r.out.lead("Float.", &sentence(&text));
    let mut text = format!(
        "the fixed draw-off leaves a layer of {} (No. {})",
        r.show(levels.residue.q, LEVEL),
        r.no(levels.residue.at)
    );
    if let Some(skim) =
        levels.skim.filter(|s| s.q.si() > 0.0 && train.is_none_or(|train| s.q.si() <= train.unit.body.height().q.si()))
    {
        text += &format!(
            "; a fixed lip at the inlet invert would begin to skim at {} and the largest flow (No. {})",
            r.show(skim.q, LEVEL),
            r.no(skim.at)
        );
    }
    r.out.lead("Draw-off.", &sentence(&text));
}

/// The set points of one oil.
pub(super) fn set_points(r: &mut Report<'_>, levels: &OilLevels) {
    let unit = r.symbol(LEVEL);
    let mut table = Table::new([
        wide("Set point", 1.0),
        number("Oil|layer", unit),
        number("Interface", unit),
        number("Oil|surface", unit),
        number("Held,|each", r.symbol(STORE)),
        wide("What happens", 2.0),
        number("No.", ""),
    ]);
    for l in &levels.levels {
        table.row([
            l.point.title.to_owned(),
            r.digits(l.thickness.q, LEVEL, 4),
            r.digits(l.interface.q, LEVEL, 4),
            r.digits(l.surface.q, LEVEL, 4),
            r.digits(l.volume.q, STORE, 3),
            l.point.action.to_owned(),
            r.no(l.thickness.at),
        ]);
    }
    r.out.table(&table);
}

fn storage(r: &mut Report<'_>, p: &Performance) {
    r.out.heading("What collects, and the spill");
    let s = &p.storage;
    let mut table = Table::new([wide("Quantity", 2.6), slim("Value"), number("No.", "")]);
    let per_day = (&GPD, &stillrise_units::catalog::L_D) as Pair;
    let mut add = |name: &str, value: String, at: stillrise_design::Node| table.row([name.to_owned(), value, r.no(at)]);
    add("Water on an average day, all units", r.show(s.average.q, per_day), s.average.at);
    add("Share of the solids that settles", r.show(s.settled.q, (&PERCENT, &PERCENT)), s.settled.at);
    add("Solids that leave, clean, by the calculation", promise::solids(s.solids_out.q), s.solids_out.at);
    if let Some(oil) = s.oil_on_solids {
        add("Oil that leaves on them, in no other line", r.show(oil.q, super::effluent::MG), oil.at);
    }
    add("Sludge in one unit", r.show(s.sludge_rate.q, per_day), s.sludge_rate.at);
    if let Some(volume) = s.sludge_trigger {
        add(&format!("Sludge that calls for pumping out: {}", s.trigger.title), r.show(volume.q, STORE), volume.at);
    }
    if let Some(days) = s.sludge_days {
        add("Days until sludge is pumped", days_of(days.q.in_unit(&D)), days.at);
    }
    if let Some(days) = s.behind_trap {
        add("The same behind a grit trap that holds the grains it is sized for", days_of(days.q.in_unit(&D)), days.at);
    }
    if let Some(days) = s.sand_days {
        add("Days until the sand compartment is half full", days_of(days.q.in_unit(&D)), days.at);
    }
    add("Free oil collected in one unit", r.show(s.oil_rate.q, per_day), s.oil_rate.at);
    if let Some(days) = s.oil_routine {
        add("Days to the routine pump-out of the oil", days_of(days.q.in_unit(&D)), days.at);
    }
    if let Some(days) = s.oil_soonest {
        add("The same if all free oil that arrives were held: to plan by", days_of(days.q.in_unit(&D)), days.at);
    }
    if let Some(days) = s.oil_days {
        add("Days to the high-oil alarm", days_of(days.q.in_unit(&D)), days.at);
    }
    if let Some(spill) = &s.spill {
        add("Room between alarm and limit, all units", r.show(spill.room.q, STORE), spill.room.at);
        add("Room less what of the spill comes to it", r.show(spill.spare.q, STORE), spill.spare.at);
        if let Some(water) = spill.displaced.filter(|water| water.q.si() > 0.0) {
            add("Water that the spill pushes out ahead of the oil", r.show(water.q, STORE), water.at);
        }
        if spill.spare.q.si() < 0.0 {
            add(
                "The spill does not find room by",
                r.digits(-spill.spare.q, STORE, 3) + " " + r.symbol(STORE),
                spill.spare.at,
            );
        }
    }
    r.out.table(&table);
    if p.storage.spill.is_some() {
        r.out.remark("The room for the spill is counted from the alarm at rest. While the largest flow lasts the float answers only near the limit: a spill in a storm may be announced only when the flow falls.");
    }
    r.out.remark(&format!(
        "Of suspended solids nothing is promised. The calculation follows grains of the declared sizes, each settling alone; silt and clay pass. {}.",
        capital(crate::summary::IN_SERVICE)
    ));
    r.out.remark("The sludge is all that settles, ahead of the pack and between its plates; what slides off the plates lies on the floor below them. Averages over a year, each water with its own content; measure oil and sludge at the intervals of the maintenance manual.");
}

/// Solids by size: what settles ahead of the pack, what between its plates, what leaves.
fn grains(r: &mut Report<'_>, p: &Performance) {
    if p.grains.is_empty() {
        return;
    }
    r.out.heading("Solids and sludge by size");
    let mass = r.symbol(MASS);
    let stages = p.grains.first().map_or(&[][..], |g| &g.stages);
    let behind = stages.iter().map(|s| number(&format!("Left behind|{}", s.stage), "%"));
    let settles = stages.iter().map(|s| number(&format!("Settles,|{}", s.stage), mass));
    let head = [wide("Grains", 1.2), number("Arrives", "%")].into_iter().chain(behind).chain(settles);
    let mut table = Table::new(head.chain([number("Scoured|above", r.symbol(SPEED)), number("No.", "")]));
    let share = (&PERCENT, &PERCENT) as Pair;
    let percent = |x: f64| print::digits(PERCENT.from_si(x), 3);
    let mut arrives = 0.0;
    let mut sums = vec![(0.0, 0.0); stages.len()];
    for g in &p.grains {
        let (from, to) = (UM.from_si(g.from.q.si()), UM.from_si(g.to.q.si()));
        let name = if to > 1e6 { format!("over {from:.0} µm") } else { format!("{from:.0} to {to:.0} µm") };
        arrives += g.arrives.q.si();
        for (sum, part) in sums.iter_mut().zip(&g.stages) {
            *sum = (sum.0 + part.left.q.si(), sum.1 + part.settles.q.si());
        }
        let small = |si: f64, text: String| if si > 0.0 && si < 5e-5 { "< 0.01".to_owned() } else { text };
        let part = |q: stillrise_units::Ratio| small(q.si(), r.digits(q, share, 3));
        let kept = |q: MassRate| {
            let text = r.digits(q, MASS, 3);
            let least = r.system.pick(MASS).from_si(q.si());
            if least > 0.0 && least < 5e-4 { "< 0.001".to_owned() } else { text }
        };
        let mut row = vec![name, part(g.arrives.q)];
        row.extend(g.stages.iter().map(|s| part(s.left.q)));
        row.extend(g.stages.iter().map(|s| kept(s.settles.q)));
        row.push(g.scour.map_or_else(|| "–".to_owned(), |v| r.digits(v.q, SPEED, 2)));
        row.push(g.stages.last().map_or_else(String::new, |s| r.no(s.left.at)));
        table.row(row);
    }
    let kg = |si: f64| r.digits(MassRate::from_si(si), MASS, 3);
    let mut row = vec!["All".to_owned(), percent(arrives)];
    row.extend(sums.iter().map(|(left, _)| percent(*left)));
    row.extend(sums.iter().map(|(_, settles)| kg(*settles)));
    row.extend([String::new(), String::new()]);
    table.strong_row(row);
    r.out.table(&table);
    let density = (&stillrise_units::catalog::LB_FT3, &stillrise_units::catalog::KG_M3);
    if let Some(basis) = &r.settled.job.design.basis {
        let along = r.show(p.velocities.along.q, SPEED);
        let grains = r.show(basis.solids.density.q, density);
        let sieved = if basis.solids.table.q.0.is_empty() {
            ""
        } else {
            " What is finer than the finest sieve counts as of that size here and in the sludge; in what leaves it counts as passing whole."
        };
        r.out.remark(&format!(
            "The case that runs most, cold, clean; the tank taken as mixed; dry solids in one unit on an average day. Grains of {grains}. Scoured above: the velocity along the floor that lifts the finest of the class again (Camp); the flow along the unit is {along} at its largest. A clean pack and grains of one density: lighter ones, flocs and a fouled pack let more pass, so that what is left behind the plates is no promise on suspended solids.{sieved}"
        ));
    }
}

/// A time without the digits that no forecast has.
fn days_of(days: f64) -> String {
    // A hundred years of days: beyond that the number says nothing but "never".
    if days > 36_525.0 { "more than 100 years".to_owned() } else { format!("{} d", print::digits(days, 2)) }
}

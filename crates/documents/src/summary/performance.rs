//! The unit, what comes out, levels and storage.

use super::{section, total_out};
use crate::render::text::{Table, hang, item};
use stillrise_design::performance::caps::Cap;
use stillrise_design::performance::promise::Promise;
use stillrise_design::train::Train;
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_search::Settled;
use stillrise_units::catalog::{D, FT, FT2, GAL, GPM_FT2, IN, KG, L, LB, M, M_H, M2, M3, MIN, MM, UM};
use stillrise_units::{System, Typed, Unit, print};

type Pair = (&'static Unit, &'static Unit);
const LEVEL: Pair = (&IN, &MM);
const STORE: Pair = (&GAL, &L);

pub(super) fn unit(out: &mut String, settled: &Settled, width: usize) {
    let Some(train) = &settled.job.design.train else { return };
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: Pair| print::told(si, system.pick(pair));
    out.push_str(&section("Train and unit"));
    for (i, stage) in train.stages.iter().enumerate() {
        let size = stage.size.as_ref().map_or_else(String::new, |(label, value, units)| {
            format!("; {label} {}", stillrise_design::provenance::told(value, Some(*units), system))
        });
        let asked = if stage.asked_for { " (needed, not in our scope until decided)" } else { "" };
        out.push_str(&item(&format!("{}", i + 1), &format!("{}{asked}: {}{size}", stage.name, stage.why), width));
    }
    for (what, says) in super::around::lines(settled) {
        out.push_str(&hang(&format!("{what}: {says}."), width, 0, 2));
    }
    let unit = &train.unit;
    let mut table = Table::new(["dimension", "value"]);
    let (what, sizes) = unit.body.sizes();
    let size = sizes.iter().map(|side| show(side.si(), LEVEL)).collect::<Vec<_>>().join(" x ");
    table.row([what.to_owned(), size]);
    table.row(["water, above the floor".to_owned(), show(unit.layout.water_volume.q.si(), (&GAL, &M3))]);
    if let Some(pack) = &unit.pack {
        let (count, gap) = (print::digits(pack.follows.plates.q.si(), 3), show(pack.laid.gap.q.si(), LEVEL));
        table.row(["plates".to_owned(), format!("{count} at a gap of {gap}")]);
        table.row(["projected plate area".to_owned(), show(pack.follows.area.q.si(), (&FT2, &M2))]);
    }
    table.row(["inlet and outlet".to_owned(), bores(&unit.particulars.nozzles, system)]);
    if let Some(weight) = train.unit.particulars.empty_weight {
        let options = train.unit.sand_trap.is_some() || train.unit.pump_out.is_some();
        let label = if options { "weight empty, each, without its options" } else { "weight empty, each" };
        table.row([label.to_owned(), show(weight.q.si(), (&LB, &KG))]);
    }
    out.push_str(&table.render(width));
    if let Some(pick) = &settled.pick {
        out.push_str(&hang(&format!("Taken: {}.", super::taken::because(settled, pick)), width, 0, 2));
    }
    if settled.candidates.len() > 1 {
        let influent = settled
            .job
            .design
            .performance
            .as_ref()
            .and_then(|p| p.worst())
            .map_or_else(stillrise_design::performance::promise::floor, |w| w.content.total.q);
        let mut table = Table::new(["unit", "", "total oil out, mg/L", "what bars it"]);
        for c in &settled.candidates {
            table.row([
                c.unit.name(),
                if c.taken { "taken".to_owned() } else { String::new() },
                c.effluent.map_or_else(|| "-".to_owned(), |e| total_out(e, influent)),
                stillrise_search::pick::barred_by(c).unwrap_or_else(|| "nothing".to_owned()),
            ]);
        }
        out.push_str(&table.render(width));
    }
}

pub(super) fn effluent(out: &mut String, settled: &Settled, width: usize) {
    let Some(performance) = &settled.job.design.performance else { return };
    let system = settled.job.enquiry.system();
    out.push_str(&section("What comes out, mg/L"));
    let overflow = system.pick((&GPM_FT2, &M_H));
    let mut table = Table::new([
        "case",
        "season",
        "state",
        &format!("plates {}", overflow.symbol),
        "gap Re",
        "free in",
        "free out",
        "emulsified",
        "dissolved",
        "total",
        "if mixed",
    ]);
    let n = |c: stillrise_units::Concentration| print::digits(stillrise_units::catalog::MG_L.from_si(c.si()), 3);
    for r in &performance.removals {
        let (plates, none) = (r.passage.plates(), || "-".to_owned());
        table.row([
            r.case.clone(),
            r.season.name().to_owned(),
            r.state.name().to_owned(),
            plates.map_or_else(none, |p| print::digits(overflow.from_si(p.v_0.q.si()), 3)),
            plates.map_or_else(none, |p| print::digits(p.reynolds.q.si(), 3)),
            n(r.content.free.q),
            n(r.free.expected.q),
            n(r.content.emulsified.q),
            n(r.content.dissolved.q),
            total_out(r.total.expected.q, r.content.total.q),
            r.total.mixed.map_or_else(none, |mixed| total_out(mixed.q, r.content.total.q)),
        ]);
    }
    out.push_str(&table.render(width));
    if let Some(b) = &performance.basin {
        let show = |si: f64, pair: Pair| print::in_prose(si, system.pick(pair));
        out.push_str(&hang(
            &format!(
                "Rule of thumb beside it: a plain API basin for droplets of 150 µm at the design flow has a surface of {} in {} channel(s) of {} by {} and {} of water{}. It says how large, not what comes out.",
                show(b.area.q.si(), (&FT2, &M2)), print::digits(b.channels.q.si(), 2), show(b.length.q.si(), (&FT, &M)), show(b.width.q.si(), (&FT, &M)), show(b.depth.q.si(), (&FT, &M)),
                if b.area.q.si() > 1.001 * b.least.q.si() {
                    format!("; the droplet alone asks for {}, the rest comes from the least depth and proportions that the rule allows", show(b.least.q.si(), (&FT2, &M2)))
                } else {
                    String::new()
                }
            ),
            width, 0, 2,
        ));
    }
    if let Some(worst) = performance.worst() {
        out.push_str(&hang(
            &format!(
                "Predicted, {} in the {} season at the end of the interval: {} of total oil, the influent at its mean.{} Emulsified and dissolved oil pass any separator.",
                worst.case, worst.season.name(), Promise::of(worst.total.expected.q, worst.content.total.q).sentence(),
                match worst.passage.mesh() {
                    Some(mesh) if mesh.counts => " Credit is taken for the mesh.",
                    Some(_) => " No credit is taken for the mesh.",
                    None => "",
                }
            ),
            width, 0, 2,
        ));
        if let Some(cut) = worst.cut {
            out.push_str(&format!(
                "Droplet that rises at the overflow rate of the plates there: {}.\n",
                print::told(cut.q.si(), &UM)
            ));
        }
        for line in super::unheld::unheld(settled) {
            out.push_str(&hang(&format!("{}.", super::capital(&line)), width, 0, 2));
        }
    }
}

pub(super) fn hydraulics(out: &mut String, settled: &Settled, width: usize) {
    let Some(performance) = &settled.job.design.performance else { return };
    let system = settled.job.enquiry.system();
    let unit = system.pick(LEVEL);
    let flow = system.pick(stillrise_design::basis::FLOW_UNITS);
    out.push_str(&section(&format!("Hydraulic profile, {} above the floor", unit.symbol)));
    let mut table = Table::new(["level ahead of"]);
    table.header.extend(performance.profiles.iter().map(|p| p.at.name().to_owned()));
    let flows = performance.profiles.iter().map(|p| print::digits(flow.from_si(p.flow.q.si()), 4));
    table.row(core::iter::once(format!("flow through one unit, {}", flow.symbol)).chain(flows));
    for (i, step) in performance.highest().steps.iter().enumerate() {
        let steps = performance.profiles.iter().filter_map(|p| p.steps.get(i));
        let levels = steps.map(|step| print::digits(unit.from_si(step.level.q.si()), 4));
        table.row(core::iter::once(step.name.to_owned()).chain(levels));
    }
    out.push_str(&table.render(width));
    if let Some(spare) = performance.site.spare_fall {
        // What is left of two equal levels is no height.
        let spare = if spare.q.si().abs() < 1e-6 { 0.0 } else { spare.q.si() };
        let text = print::told(spare, unit);
        out.push_str(&format!("Incoming invert over the unit's inlet invert: {text}.\n"));
    }
    if let Some(floor) = performance.site.floor {
        out.push_str(&format!(
            "Floor of the unit at {} of the site's datum.\n",
            print::told(floor.q.si(), system.pick((&FT, &M)))
        ));
    }
}

/// Whether a cap on the oil layer can bind: a layer thicker than the tank is high is none.
pub(crate) fn may_bind(cap: &Cap, train: &Train) -> bool {
    cap.thickness.q.si() <= train.unit.body.height().q.si()
}

/// The nominal bores of inlet and outlet; in SI by the metric size of the same pipe.
pub(crate) fn bores(nozzles: &(String, String), system: System) -> String {
    let word = |bore: &String| match pipe_size(bore) {
        Some(size) if system == System::Si => size.metric_word(),
        _ => bore.clone(),
    };
    format!("{} and {}", word(&nozzles.0), word(&nozzles.1))
}

pub(super) fn levels(out: &mut String, settled: &Settled, width: usize) {
    let Some(performance) = &settled.job.design.performance else { return };
    let system = settled.job.enquiry.system();
    let unit = system.pick(LEVEL);
    for levels in &performance.levels {
        out.push_str(&section(&format!("Oil levels: {}, {}", levels.oil, unit.symbol)));
        let caps: Vec<String> = levels
            .caps
            .iter()
            .map(|c| match settled.job.design.train.as_ref().filter(|train| !may_bind(c, train)) {
                Some(_) => format!("{} none, deeper than the tank", c.of.word()),
                None => format!("{} {}", c.of.word(), print::digits(unit.from_si(c.thickness.q.si()), 4)),
            })
            .collect();
        out.push_str(&hang(
            &format!(
                "Thickest layer by each cap: {}. Governing: {}.",
                caps.join(", "),
                levels.caps[levels.governing].of.word()
            ),
            width,
            0,
            2,
        ));
        let volume = system.pick(STORE);
        let mut table = Table::new([
            "set point",
            "oil layer",
            "interface",
            "oil surface",
            &format!("held, {}", volume.symbol),
            "action",
        ]);
        for l in &levels.levels {
            table.row([
                l.point.title.to_owned(),
                print::digits(unit.from_si(l.thickness.q.si()), 4),
                print::digits(unit.from_si(l.interface.q.si()), 4),
                print::digits(unit.from_si(l.surface.q.si()), 4),
                print::digits(volume.from_si(l.volume.q.si()), 4),
                l.point.action.to_owned(),
            ]);
        }
        out.push_str(&table.render(width));
    }
}

/// Days to fill; beyond ten years the number means nothing.
fn span(days: stillrise_units::Time) -> String {
    if days.in_unit(&D) > 3650.0 { "more than ten years".to_owned() } else { print::told(days.si(), &D) }
}

pub(super) fn storage(out: &mut String, settled: &Settled, width: usize) {
    let Some(performance) = &settled.job.design.performance else { return };
    let s = &performance.storage;
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: Pair| print::told(si, system.pick(pair));
    out.push_str(&section("Storage and days to fill"));
    let mut table = Table::new(["what", "value"]);
    if let (Some(volume), Some(days)) = (s.sludge_trigger, s.sludge_days) {
        table.row([
            format!("sludge to pump out, {}", s.trigger.title),
            format!("{} in {}", show(volume.q.si(), STORE), span(days.q)),
        ]);
    }
    if let Some(days) = s.behind_trap {
        table.row(["the same behind the grit trap ahead".to_owned(), span(days.q)]);
    }
    if let Some(days) = s.sand_days {
        table.row(["sand compartment to half of its water".to_owned(), span(days.q)]);
    }
    if let Some(days) = s.oil_routine {
        table.row(["oil to its routine pump-out".to_owned(), span(days.q)]);
    }
    if let Some(days) = s.oil_soonest {
        table.row(["the same if all free oil that arrives were held: to plan by".to_owned(), span(days.q)]);
    }
    if let Some(days) = s.oil_days {
        table.row(["oil to the alarm".to_owned(), span(days.q)]);
    }
    if let Some(spill) = &s.spill {
        table.row(["room for a spill between alarm and limit, at rest".to_owned(), show(spill.room.q.si(), STORE)]);
        table.row(["room less what of the spill comes to it".to_owned(), show(spill.spare.q.si(), STORE)]);
        if let Some(water) = spill.displaced.filter(|water| water.q.si() > 0.0) {
            table.row(["water that the spill pushes out ahead of the oil".to_owned(), show(water.q.si(), STORE)]);
        }
    }
    if let Some(worst) = performance.worst() {
        table.row([format!("time in the unit, {}", worst.case), print::told(worst.residence.q.si(), &MIN)]);
    }
    out.push_str(&table.render(width));
}

//! What stands around the separator, in words: lift pump, screen, polisher, one unit shut, oil tank, bypass.

use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::lift::Lift;
use stillrise_design::performance::Performance;
use stillrise_design::performance::promise::Promise;
use stillrise_design::provenance::Pair;
use stillrise_design::train::Train;
use stillrise_design::train::stages::screen::Screen;
use stillrise_search::Settled;
use stillrise_units::catalog::{D, FT, GAL, IN, M, M3, MG_L, MM, PERCENT};
use stillrise_units::{System, Typed, print};

/// A quantity in prose.
fn show<Q: Typed>(q: Q, units: Pair, system: System) -> String {
    let unit = system.pick(units);
    print::in_prose(unit.to_si(print::or_nothing(unit.from_si(q.si()))), unit)
}

const STORE: Pair = (&GAL, &M3);

/// Each in a sentence: what it is, and what was found of it.
pub(crate) fn lines(settled: &Settled) -> Vec<(&'static str, String)> {
    let system = settled.job.enquiry.system();
    let Some(train) = &settled.job.design.train else { return Vec::new() };
    let lift = settled.job.design.basis.as_ref().and_then(|basis| basis.feed.lift.as_ref());
    let all = [
        ("Feed pump", lift.and_then(|lift| pump(lift, system))),
        ("Screen", train.screen.as_ref().and_then(|screen| bars(screen, system))),
        ("Polisher", polisher(settled, train, system)),
        ("One unit shut", shut(train, settled.job.design.performance.as_ref(), system)),
        ("Oil holding tank", tank(train, system)),
        ("Bypass", bypass(train, system)),
    ];
    all.into_iter().filter_map(|(what, says)| Some((what, says?))).collect()
}

/// Who runs, in words.
fn runs(n: f64) -> String {
    if n > 1.5 { format!("{} pumps together", print::digits(n, 2)) } else { "one pump".to_owned() }
}

fn pump(lift: &Lift, system: System) -> Option<String> {
    let head = |q| show(q, (&FT, &M), system);
    let flow = |q| show(q, FLOW_UNITS, system);
    let mut says: Vec<String> = lift
        .duties
        .iter()
        .map(|d| format!("{} must give a head of {} at {}", runs(d.pumps.q.si()), head(d.head.q), flow(d.flow.q)))
        .collect();
    says.extend(lift.points.iter().map(|p| match p.at {
        Ok((q, h)) => format!(
            "by the curve {} run{} at {} and {}",
            runs(p.pumps.q.si()),
            if p.pumps.q.si() > 1.5 { "" } else { "s" },
            flow(q.q),
            head(h.q)
        ),
        Err(missed) => format!("{}: {}", runs(p.pumps.q.si()), missed.text()),
    }));
    if says.is_empty() {
        return None;
    }
    let lifts = lift.main.as_ref().map_or_else(String::new, |main| format!("; static lift {}", head(main.lift.q)));
    Some(format!("{}{lifts}", says.join("; ")))
}

fn bars(screen: &Screen, system: System) -> Option<String> {
    let bars = screen.bars.as_ref()?;
    let small = |q| show(q, (&IN, &MM), system);
    Some(format!(
        "clear openings of {}; at the velocity taken it holds the water up by {} when clean and {} with {} of its openings covered",
        small(bars.spacing.q),
        small(bars.clean.q),
        small(bars.dirty.q),
        show(bars.covered.q, (&PERCENT, &PERCENT), system)
    ))
}

fn polisher(settled: &Settled, train: &Train, system: System) -> Option<String> {
    let d = train.around.polisher.as_ref()?;
    let limits = &settled.job.design.basis.as_ref()?.limits;
    let mg_l = |q| show(q, (&MG_L, &MG_L), system);
    let flow = show(d.flow.q, FLOW_UNITS, system);
    let mut says = if d.pumped {
        format!("has to pass {flow}, what the effluent pumps give while they run")
    } else {
        format!("has to pass {flow}")
    };
    for out in &d.takes {
        let of = limits.get(out.limit).map_or("oil", |limit| limit.title());
        says.push_str(&format!(
            "; against the limit on {of} it is to be laid out for {} that reach it ({}) and {} that may leave: it must take out {}, {}",
            mg_l(out.reaches.q),
            out.case,
            mg_l(out.allows.q),
            mg_l(out.takes.q),
            show(out.share.q, (&PERCENT, &PERCENT), system)
        ));
    }
    if d.takes.is_empty() && limits.iter().enumerate().any(|(k, _)| !d.unpredicted.contains(&k)) {
        says.push_str(
            "; by the calculation what reaches it is within the limits on oil, without the assurance that they ask for",
        );
    }
    if !d.unpredicted.is_empty() {
        let of: std::collections::BTreeSet<&str> =
            d.unpredicted.iter().filter_map(|k| limits.get(*k)).map(|l| l.title()).collect();
        let of: Vec<&str> = of.into_iter().collect();
        says.push_str(&format!("; what reaches it of {} no calculation here says: samples have to", of.join(", ")));
    }
    if d.spill {
        says.push_str("; not sized for the spill");
    }
    Some(says)
}

fn shut(train: &Train, performance: Option<&Performance>, system: System) -> Option<String> {
    let shut = train.around.shut?;
    let each = show(shut.each.q, FLOW_UNITS, system);
    let n = shut.running.q.si();
    let worst = train.around.shut.and_then(|shut| shut.out).zip(performance.and_then(|p| p.worst()));
    let out = worst.map_or_else(String::new, |(out, worst)| {
        format!(
            "; {} then, in the case that is held against the limits",
            Promise::of(out.q, worst.content.total.q).sentence()
        )
    });
    Some(if shut.over.q.si() <= 1e-9 {
        format!("the one that stands by takes its place; {each} comes to each, as when all run")
    } else if n > 1.5 {
        format!(
            "{each} comes to each of the other {}, {} more than its share{out}",
            print::digits(n, 2),
            show(shut.over.q, (&PERCENT, &PERCENT), system)
        )
    } else {
        format!(
            "{each} comes to the other, {} more than its share{out}",
            show(shut.over.q, (&PERCENT, &PERCENT), system)
        )
    })
}

fn tank(train: &Train, system: System) -> Option<String> {
    let tank = train.around.oil_tank.as_ref()?;
    let days = |q| show(q, (&D, &D), system);
    let mut says = format!("takes {}", show(tank.room.q, STORE, system));
    match (tank.days, tank.soonest) {
        (Some(usual), Some(soonest)) if days(usual.q) != days(soonest.q) => says.push_str(&format!(
            "; to be emptied every {} by the oil that is reckoned, every {} if all free oil that arrives were held",
            days(usual.q),
            days(soonest.q)
        )),
        (Some(usual), _) => says.push_str(&format!("; to be emptied every {}", days(usual.q))),
        _ => says.push_str("; how fast it fills is not known"),
    }
    if let Some(draws) = tank.draws {
        says.push_str(&format!("; {} routine draw-offs of all units go into it", print::digits(draws.q.si(), 2)));
    }
    match tank.spare {
        Some(spare) if spare.q.si() < 0.0 => {
            let lacks = stillrise_units::Volume::from_si(-spare.q.si());
            says.push_str(&format!("; empty it lacks {} for the spill", show(lacks, STORE, system)));
        }
        Some(spare) => says.push_str(&format!("; empty it takes the spill and {} more", show(spare.q, STORE, system))),
        None => {}
    }
    Some(says)
}

fn bypass(train: &Train, system: System) -> Option<String> {
    let b = train.around.bypass.as_ref()?;
    let flow = |q| show(q, FLOW_UNITS, system);
    let barred = match b.barred {
        Some(why) => format!("barred: {why}"),
        None => "nothing that was said bars it; the permit and the owner of the outfall decide".to_owned(),
    };
    Some(format!(
        "without holding back ahead, {} of the {} that arrive ({}) would run past the unit untreated; {barred}",
        flow(b.past.q),
        flow(b.largest.q),
        b.case
    ))
}

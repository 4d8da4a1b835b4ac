//! What is done when: one interval for each task, in days, and where it comes from.

use super::super::site::{MAKER, Site, whole};
use super::STORE;
use crate::report::Report;
use crate::report::blocks::{Table, slim, wide};
use crate::summary::shop::Says;
use stillrise_design::train::StageKind;
use stillrise_handbook::sources::{CHARLOTTE_NC, EN_858_2_UPKEEP, MIL_HDBK_1138};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::{D, IN, MM};
use stillrise_units::{Time, Typed};

/// One task.
pub(super) struct Task {
    /// The column of the log, and the line of the inspection sheet.
    pub(super) letter: char,
    /// What is done.
    pub(super) what: String,
    /// How many days apart.
    pub(super) days: String,
    /// What is read.
    pub(super) read: String,
    /// At which reading somebody acts, and how.
    pub(super) limit: String,
    who: &'static str,
    from: String,
}

/// What the list of intervals calls its sources.
const EN: &str = "EN 858-2";
const HANDBOOK: &str = "MIL-HDBK-1138";
const CITY: &str = "City of Charlotte";

/// Most days between two looks at a depth: a quarter of a year. Our proposal.
const QUARTER: f64 = 91.0;
/// Days between them where nobody knows how fast it fills: a month. Our proposal.
const UNKNOWN: f64 = 30.0;
/// Most days between two pump-outs: a year, as a city asks for.
const YEAR: f64 = 365.0;

/// Whole days, no fewer than one.
fn days(days: f64) -> String {
    whole(if days < 1.0 { 1.0 } else { days })
}

/// How often a depth is gauged that fills in a time: four times, at least quarterly.
fn gauged(fills: Option<Time>) -> (String, String) {
    match fills.map(|t| D.from_si(t.si())) {
        Some(fills) => {
            let quarter = fills / 4.0;
            let fills = if fills > 3650.0 { "more than ten years".to_owned() } else { Site::span(Time::of(fills, &D)) };
            (
                days(if quarter < QUARTER { quarter } else { QUARTER }),
                format!(
                    "our proposal: four times while it fills, at least quarterly; by this job it takes {fills}; chosen from daily ({HANDBOOK}) to every six months ({EN})"
                ),
            )
        }
        None => (days(UNKNOWN), "our proposal: monthly until a rate is known".to_owned()),
    }
}

/// Days to a pump-out, a year at most.
fn pumped(fills: Option<Time>, by: &str) -> (String, String) {
    match fills.map(|t| D.from_si(t.si())).filter(|days| *days < YEAR) {
        Some(fills) => (days(fills), by.to_owned()),
        None => (days(YEAR), format!("{by}; by this job it takes longer, or is not known, so once a year ({CITY})")),
    }
}

/// Those of this job.
pub(super) fn tasks(u: &Site<'_>) -> Vec<Task> {
    let mut all = Vec::new();
    let mut add = |what: &str, (days, from): (String, String), read: &str, limit: &str, who: &'static str| {
        let letter = char::from_u32(u32::from('A') + u32::try_from(all.len()).unwrap_or(0)).unwrap_or('?');
        all.push(Task {
            letter,
            what: what.to_owned(),
            days,
            read: read.to_owned(),
            limit: limit.to_owned(),
            who,
            from,
        });
    };
    let fixed = |n: &str, from: &str| (n.to_owned(), from.to_owned());
    let unit = u.unit();
    let storage = u.performance.map(|p| &p.storage);
    let crest = u.len(unit.outlet.crest.q);
    add(
        "Look: inlet, outlet, sample point, covers",
        fixed("7", &format!("our proposal; chosen from daily ({HANDBOOK}) to every six months ({EN})")),
        "flow, film or sheen, smell",
        "any film on what leaves: stop, gauge the oil",
        "operator",
    );
    add(
        "Level at rest",
        fixed("7", "our proposal: with the look"),
        "water down from the rim",
        &format!("not at {crest}: find why, fill up"),
        "operator",
    );
    if u.stage(StageKind::Screen).is_some_and(|s| !s.asked_for) {
        add(
            "Screen",
            fixed("7", "our proposal: with the look"),
            "how much is covered",
            "half covered: rake it clean",
            "operator",
        );
    }
    let soonest = storage.and_then(|s| s.oil_soonest.or(s.oil_routine)).map(|t| t.q);
    if let Some(oil) = u.governing() {
        let routine = oil.level(Mark::PumpOut).filter(|_| u.layer().is_some());
        if u.layer().is_none() {
            let from = "our proposal: with the look, for there is no room for a layer";
            add(
                "Gauge the oil layer, with water-finding paste or a clear tube",
                fixed("7", from),
                "thickness of the layer",
                "any that can be gauged: have it pumped out",
                "operator",
            );
        }
        if let Some(level) = routine {
            let layer = u.say(level.thickness.q, (&IN, &MM));
            let held = u.say(level.volume.q, STORE);
            add(
                "Gauge the oil layer, with water-finding paste or a clear tube",
                gauged(soonest),
                "thickness of the layer",
                &format!("{layer} ({held}{}): have it pumped out", u.each()),
                "operator",
            );
            let by = "our proposal, at a quarter of the thickest permitted layer, counted as if all free oil that arrives were held; chosen from published rules between any oil at all and four fifths of the oil store";
            add(
                "Pump the oil out",
                pumped(soonest, by),
                "volume taken",
                &format!("layer of {layer}, or these days, or the alarm"),
                "licensed carrier",
            );
        }
        if u.layer().is_some() {
            add(
                "Test the alarm: push the float down, let it go",
                fixed("30", &format!("our proposal; chosen against every six months ({EN}), for all rests on it")),
                "lamp, horn, call",
                "does not sound: mend it before the next flow",
                "operator",
            );
        }
    }
    sludge(u, &mut add);
    heads(u, &mut add);
    if let Some(tank) = &u.train.around.oil_tank {
        add(
            "Empty the oil holding tank",
            pumped(tank.soonest.or(tank.days).map(|t| t.q), "days of this job"),
            "volume in it",
            &format!("before {} are full", u.say(tank.room.q, STORE)),
            "licensed carrier",
        );
    }
    if u.pumped() {
        add(
            "Feed pumps: run each by hand",
            fixed("91", "our proposal: quarterly"),
            "draw-down, noise, start and stop",
            "slower or faster than at start-up: find why",
            "operator",
        );
    }
    if let Some(pumps) = &unit.pump_out {
        let levels =
            format!("start {}, alarm {}, stop {}", u.len(pumps.start.q), u.len(pumps.alarm.q), u.len(pumps.stop.q));
        add(
            "Effluent pumps: change over, look at switches and non-return valve",
            fixed("91", "our proposal: quarterly"),
            &levels,
            "a pump that does not take over: mend it",
            "operator",
        );
    }
    if u.stage(StageKind::Closure).is_some_and(|s| !s.asked_for) {
        add(
            "Trip the outlet closure by hand",
            fixed("182", &format!("every six months ({EN})")),
            "shuts, opens",
            "does not shut tight: mend it",
            "service firm",
        );
    }
    let limits = u.settled.job.design.basis.as_ref().is_some_and(|b| !b.limits.is_empty());
    if limits {
        add(
            "Sample what comes and what leaves, the same day",
            fixed("15", &format!("at least twice a month ({HANDBOOK}); the permit's own interval comes first")),
            "results of the laboratory",
            "three in a row rising, or one over the limit: trouble-shooting",
            "sampler",
        );
    }
    let mut service = vec!["covers", "valves", "coating"];
    if !unit.body.is_open() {
        service.insert(0, "vents");
    }
    add(
        &format!("Service: {}", service.join(", ")),
        fixed("182", &format!("every six months ({EN})")),
        "condition",
        "damage: mend it",
        "service firm",
    );
    let shop = u.performance.and_then(|p| p.shop.as_ref());
    if shop.is_some_and(|shop| shop.protection.is_some()) {
        add(
            "Measure the cathodic protection",
            fixed("365", "yearly, common practice"),
            "potential to the ground",
            "as the specialist who designed it says",
            "specialist",
        );
    }
    if Says::of(u.settled).and_then(|says| says.frost()).is_some() {
        add(
            "Before the first frost: heater, lagging, cut-out",
            fixed("365", "once a year, before winter: our proposal"),
            "warm; cuts out at low level",
            "does not: mend it before the frost",
            "service firm",
        );
    }
    add("Clean the whole unit", fixed("365", &format!("at least once a year ({CITY}); chosen against when its limits are reached alone, for plates and walls are not seen otherwise").replace("plates and walls", if unit.pack.is_some() { "plates and walls" } else { "walls and floor" })), "volumes, what is found", "always, and at once after a spill", "licensed carrier");
    add(
        "General inspection of the emptied unit",
        fixed("1826", &format!("at most every five years ({EN})")),
        "tightness, structure, coating, internals",
        "findings: to the engineer",
        "specialist",
    );
    all
}

/// Head that can be read on a staff: less is seen as none. Judgement.
const SEEN: f64 = 0.003;

/// Levels before and behind what fouls.
fn heads(u: &Site<'_>, add: &mut impl FnMut(&str, (String, String), &str, &str, &'static str)) {
    let parts = [("plate pack", "the plates", u.unit().pack.is_some()), ("mesh", "the mesh", u.unit().mesh.is_some())];
    for (stage, name, _) in parts.into_iter().filter(|(_, _, there)| *there) {
        let limit = match u.fouled(stage).filter(|head| head.si() >= SEEN) {
            Some(head) => format!("over {} at the design flow: lift and clean", u.len(head)),
            None => "any difference to be seen at the design flow: lift and clean".to_owned(),
        };
        let from = format!("our proposal: quarterly; chosen against every six months ({EN})");
        add(
            &format!("Levels ahead of {name} and behind, while it flows"),
            ("91".to_owned(), from),
            "difference of the two",
            &limit,
            "operator",
        );
    }
}

/// What is gauged and pumped of the sludge.
fn sludge(u: &Site<'_>, add: &mut impl FnMut(&str, (String, String), &str, &str, &'static str)) {
    let Some(s) = u.performance.map(|p| &p.storage) else { return };
    let fills = s.sludge_days.map(|t| t.q);
    let where_to =
        if u.hopper().is_some() { "in the hopper and on the floor" } else { "on the floor, ahead and behind" };
    let limit = match (u.sludge(), s.sludge_trigger) {
        (Some(level), Some(volume)) => {
            let top = if level.si() < 0.0 {
                format!("{} below the floor, in the hopper", u.len(-level))
            } else {
                format!("{} above the floor", u.len(level))
            };
            format!("its top {top} ({}{}): have it pumped out", u.say(volume.q, STORE), u.each())
        }
        (None, Some(volume)) => format!("{}{}: have it pumped out", u.say(volume.q, STORE), u.each()),
        _ => format!("limit {MAKER}"),
    };
    add(
        &format!("Gauge the sludge {where_to}, with a pole or a clear tube"),
        gauged(fills),
        "depth of the sludge",
        &limit,
        "operator",
    );
    let set = u.settled.job.design.basis.as_ref().is_some_and(|b| b.methods.trigger.is_some());
    // A source that the list names anyway is named there.
    let source = match s.trigger.source {
        of if *of == EN_858_2_UPKEEP => EN.to_owned(),
        of if *of == MIL_HDBK_1138 => HANDBOOK.to_owned(),
        of => of.to_string(),
    };
    let by = if set {
        format!("{}, as stated for this job ({})", s.trigger.title, source)
    } else {
        format!(
            "{}: the strictest for this unit of the published rules that hold anywhere ({})",
            s.trigger.title, source
        )
    };
    add(
        "Pump the sludge out",
        pumped(fills, &by),
        "volume taken",
        "its limit above, or these days",
        "licensed carrier",
    );
    if let Some(sand) = s.sand_days {
        add(
            "Empty the sand compartment",
            pumped(Some(sand.q), &format!("when it is half full ({EN}), by the days of this job")),
            "depth of the sand",
            "half of its water depth",
            "licensed carrier",
        );
    }
}

/// The table, and where each interval comes from.
pub(super) fn told(r: &mut Report<'_>, tasks: &[Task]) {
    r.out.section("Routine tasks");
    r.out.intro("From the first day; after each quarter the days are set anew by what the log shows. Whatever comes first counts: the days or the limit. The letter is the line of the inspection sheet at the end.");
    let mut table = Table::new([
        slim("Log"),
        wide("Task", 1.7),
        slim("Days"),
        wide("Reading", 1.2),
        wide("Act when", 1.8),
        wide("Who", 0.8),
    ]);
    for task in tasks {
        table.row([
            task.letter.to_string(),
            task.what.clone(),
            task.days.clone(),
            task.read.clone(),
            task.limit.clone(),
            task.who.to_owned(),
        ]);
    }
    r.out.table(&table);
    r.out.heading("Where the days come from");
    let mut table = Table::new([slim("Log"), slim("Days"), wide("Why these", 1.0)]);
    for task in tasks {
        table.row([task.letter.to_string(), task.days.clone(), task.from.clone()]);
    }
    r.out.table(&table);
    r.out.remark(&format!(
        "{EN_858_2_UPKEEP}. {MIL_HDBK_1138}. {CHARLOTTE_NC}. \"Our proposal\" and \"by this job\" are of this submittal."
    ));
}

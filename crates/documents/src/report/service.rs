//! Start-up, alarm set points, acceptance test, cautions: the handbook's data, for this unit.

use super::Report;
use super::hydraulics::set_points;
use stillrise_design::enquiry::blocks::Status;
use stillrise_handbook::page::Source;
use stillrise_handbook::vessel::alarms::{FLOAT_NOTES, PUBLISHED};
use stillrise_handbook::vessel::cautions::{CAUTIONS, Caution};
use stillrise_handbook::vessel::testing::{ACCEPTANCE, SAMPLE_PAIRS, SAMPLING_HOURS, START_UP, Step, VOLUME_CHANGES};
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::print::digits;
use stillrise_units::{System, Typed, spoken};

/// Start-up and acceptance: an annex of the report, and papers of their own.
pub(super) fn service(r: &mut Report<'_>) {
    // Nothing is started up where nothing was sized.
    if r.settled.job.design.train.is_some() {
        start_up(r);
    }
}

fn start_up(r: &mut Report<'_>) {
    r.out.section("Start-up on clean water and acceptance test");
    r.out.heading("Start-up");
    r.out.list(true, steps(START_UP, r.system));
    let settled = r.settled;
    let design = &settled.job.design;
    if let Some(p) = &design.performance {
        r.out.heading("Alarm set points");
        for levels in &p.levels {
            r.out.lead(
                &format!("{}.", super::capital(&levels.oil)),
                "Levels without flow, above the floor of the unit.",
            );
            set_points(r, levels);
        }
        r.out.list(false, FLOAT_NOTES.iter().map(|note| ((*note).to_owned(), String::new())));
        let published: Vec<String> = PUBLISHED
            .iter()
            .map(|s| format!("{}: {} % of the oil store ({})", s.title, digits(s.share * 100.0, 3), s.source))
            .collect();
        r.out.remark(&format!(
            "The shares of the thickest permitted layer are a proposal. Published, and at odds with each other: {}.",
            published.join("; ")
        ));
    }
    r.out.heading("Acceptance test");
    let volume = design.train.as_ref().map_or_else(String::new, |t| {
        format!(", {} through each unit", r.show(t.unit.layout.water_volume.q * VOLUME_CHANGES, (&GAL, &M3)))
    });
    // On real water the changes take their time; nobody stays for weeks without being told.
    let days = design.train.as_ref().zip(design.performance.as_ref()).and_then(|(train, p)| {
        let all = train.unit.layout.water_volume.q * VOLUME_CHANGES * train.count.q;
        let days = all.si() / p.storage.average.q.si() / 86_400.0;
        (days.is_finite() && days > 2.0).then(|| digits(days, 2))
    });
    if let Some(days) = days {
        r.out.para(&format!(
            "On the water of average days that takes some {days} days. Where nobody waits so long, fill the unit with the water it is tested on, or test it with a fed flow; say so in the record."
        ));
    }
    r.out.para(&format!(
        "At least {} changes of the separator's volume{volume} before sampling; at least {SAMPLE_PAIRS} pairs of samples within {} hours.",
        digits(VOLUME_CHANGES, 3), digits(SAMPLING_HOURS, 3)
    ));
    r.out.list(true, steps(ACCEPTANCE, r.system));
    // The rule that the days to fill are counted to; how it differs from others is told with the method, not here.
    if let Some(trigger) = design.performance.as_ref().map(|p| &p.storage.trigger) {
        r.out.heading("When to pump out");
        r.out.para(&format!(
            "The days to fill are counted to this rule: {} ({}). {} Tasks and intervals stand in the operation and maintenance manual.",
            super::sentence(trigger.title).trim_end_matches('.'),
            trigger.source,
            super::sentence(trigger.note)
        ));
    }
}

fn steps(all: &'static [Step], system: System) -> impl Iterator<Item = (String, String)> {
    all.iter().map(move |step| (spoken(step.text, system), step.source.title.to_owned()))
}

/// What must be minded by whoever acts on it.
pub(super) fn cautions(r: &mut Report<'_>) {
    r.out.section("Cautions");
    let settled = r.settled;
    let preliminary = settled.job.enquiry.head.status.0.is_none_or(|s| s == Status::Preliminary);
    let over_ground = settled.job.design.performance.as_ref().and_then(|p| p.site.floor_over_ground);
    let buried = over_ground.is_none_or(|level| level.q.si() < 0.0);
    let applies = |c: &&Caution| match c.word {
        "preliminary" => preliminary,
        "flotation" => buried,
        _ => true,
    };
    for c in CAUTIONS.iter().filter(applies) {
        let source = c.source.map_or_else(String::new, |s: &Source| format!(" [{s}]"));
        r.out.lead(&format!("{}.", c.title), &format!("{}{source}", c.text));
    }
}

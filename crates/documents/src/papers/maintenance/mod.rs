//! The operation and maintenance manual, for this job alone: how the unit works, what is looked at when and by which number
//! somebody acts, how it is emptied, and what stands behind a symptom.

mod emptying;
mod sheet;
mod tasks;
mod trouble;
mod works;

use super::site::Site;
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::Report;
use crate::report::blocks::{Table, number, wide};
use crate::summary::shop::Says;
use stillrise_design::provenance::Pair;
use stillrise_handbook::vessel::alarms::FLOAT_NOTES;
use stillrise_units::Typed;
use stillrise_units::catalog::{GAL, IN, L, MM};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "maintenance-manual",
    title: "Operation and maintenance manual",
    about: "For whoever keeps the unit: how it works, normal levels, tasks with their days and limits, emptying, trouble-shooting, and a sheet to copy.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::unit,
    make: |r, _| make(r),
};

const STORE: Pair = (&GAL, &L);
const LEVEL: Pair = (&IN, &MM);

fn make(r: &mut Report<'_>) {
    let Some(u) = Site::of(r) else { return };
    u.opening(r);
    works::works(r, &u);
    levels(r, &u);
    let tasks = tasks::tasks(&u);
    tasks::told(r, &tasks);
    emptying::emptying(r, &u);
    winter(r, &u);
    r.out.section("Spare parts, as proposed");
    let table = u.spares();
    r.out.table(&table);
    trouble::trouble(r, &u);
    records(r);
    let mut words = vec![
        "confined space",
        "drain and ventilate",
        "vapour",
        "hot work",
        "lifting",
        "open covers",
        "fill first",
        "waste",
    ];
    if u.in_ground() {
        words.push("flotation");
    }
    u.cautions(r, &words);
    sheet::sheet(r, &tasks);
}

/// Normal levels, and what the alarm means.
fn levels(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Normal levels and the alarm");
    let table = super::site::schedule(u.system, &crate::drawings::levels::table(u), 1);
    r.out.table(&table);
    let Some(oil) = u.governing() else {
        r.out.para("No oil of this job makes a layer: nothing is to be watched by a float.");
        return;
    };
    if u.layer().is_none() {
        return;
    }
    let unit = r.symbol(LEVEL);
    let mut table = Table::new([
        wide(&format!("{}, one unit", crate::report::capital(&oil.oil)), 1.2),
        number("Oil|layer", unit),
        number("Interface", unit),
        number("Oil|surface", unit),
        number("Oil held", r.symbol(STORE)),
        wide("What is done", 2.2),
    ]);
    for level in &oil.levels {
        table.row([
            level.point.title.to_owned(),
            r.digits(level.thickness.q, LEVEL, 3),
            r.digits(level.interface.q, LEVEL, 4),
            r.digits(level.surface.q, LEVEL, 4),
            r.digits(level.volume.q, STORE, 3),
            level.point.action.to_owned(),
        ]);
    }
    r.out.table(&table);
    if u.layer().is_some() {
        let others = if u.performance.is_some_and(|p| p.levels.len() > 1) {
            " The one float hangs for this oil; another oil trips it at another layer, see the calculation report."
        } else {
            ""
        };
        r.out.para(&format!("The alarm means one of two things, and its label says both: {}. Look first whether the water stands at the crest. If it does, there is oil: gauge it, and have it pumped out.{others}", Site::LABEL));
        let plates = u.unit().pack.is_some();
        let notes = FLOAT_NOTES.iter().filter(|note| plates || !note.contains("plates"));
        r.out.list(false, notes.map(|note| ((*note).to_owned(), String::new())));
    }
    if let Some(spill) = u.performance.and_then(|p| p.storage.spill.as_ref()) {
        let room = u.store(spill.room.q);
        let more = if spill.spare.q.si() < 0.0 { "; that is less than the spill that was declared" } else { "" };
        r.out.para(&format!("Between alarm and limit the units still take {room} of oil at rest{more}. After a spill the oil is pumped out at once, for that room is wanted for the next."));
    }
}

/// Winter, and a unit that rests.
fn winter(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Winter, and out of service");
    match Says::of(r.settled).and_then(|says| says.frost()) {
        Some(text) => r.out.para(&text),
        None if u.cover().is_some() => r.out.para("In the ground the water hardly freezes; covers, vents, float cables and sample lines do: look at them in frost."),
        None => r.out.para("How cold the air gets was not said: before the first frost the owner decides on heating and lagging. Sample lines and floats freeze first."),
    }
    let mut all = vec![
        "In frost: lift the float by hand each week; ice holds it. Never break ice with a flame.".to_owned(),
        "Out of service for more than a month (our proposal): pump out oil and sludge, rinse, fill up with clean water to the crest, shut the inlet, leave the alarm on.".to_owned(),
        "Before it comes back: look at the level, fill up, and begin with the start-up sheet.".to_owned(),
    ];
    if u.in_ground() {
        all.insert(2, "It is not left empty in the ground: groundwater may lift it.".to_owned());
    } else {
        all.insert(
            2,
            "Where it would freeze, it is left empty, clean and dry, its drain open, with a sign at the inlet."
                .to_owned(),
        );
    }
    r.out.list(false, all.into_iter().map(|text| (text, String::new())));
}

fn records(r: &mut Report<'_>) {
    r.out.section("Records for the authority");
    let keep = stillrise_handbook::sources::CHARLOTTE_NC.to_string();
    r.out.list(
        false,
        [
            ("Inspection sheets, alarms with their cause, repairs.".to_owned(), String::new()),
            (
                "Pump-outs: date, volumes of oil, water and sludge, carrier, number of the waste paper.".to_owned(),
                String::new(),
            ),
            (
                "Samples: date, place, who took them, method, laboratory, result, flow and weather.".to_owned(),
                String::new(),
            ),
            ("Spills: when, what, how much, who was told.".to_owned(), String::new()),
            (
                "Kept for three years, longer if the permit says so; chosen because the permit was not seen."
                    .to_owned(),
                keep,
            ),
        ],
    );
}

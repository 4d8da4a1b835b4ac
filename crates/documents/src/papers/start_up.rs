//! The start-up sheet: the steps in order with the job's numbers, to be ticked at the unit.

use super::site::{Site, signed};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::Report;
use crate::report::blocks::{Checks, Table, wide};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::train::StageKind;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_handbook::vessel::testing::SETTLING_IN_DAYS;
use stillrise_units::{Typed, print};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "start-up",
    title: "Start-up sheet",
    about: "For whoever puts the unit to work, and after every emptying: step by step, to be ticked and kept.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::unit,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let Some(u) = Site::of(r) else { return };
    u.opening(r);
    let mut head = Table::new([
        wide("Serial number", 1.0),
        wide("Place of the unit", 1.4),
        wide("Begun, date and time", 1.2),
        wide("In charge", 1.2),
    ]);
    head.row(["", "", "", ""]);
    r.out.form(&head, 5.0);
    r.out.section("Never");
    r.out.list(false, never(&u).into_iter().map(|text| (text.to_owned(), String::new())));
    r.out.section("Steps");
    let mut steps = Checks::new("To be seen");
    before(&u, &mut steps);
    filling(&u, &mut steps);
    proving(&u, &mut steps);
    running(&u, &mut steps);
    r.out.checks(&steps);
    signed(r, &["Whoever started it", "Owner or operator"]);
    u.cautions(r, &["confined space", "vapour", "open covers"]);
}

/// What is never done.
fn never(u: &Site<'_>) -> Vec<&'static str> {
    let mut all = vec![
        "No oily water before the unit is full of clean water: an empty one passes oil straight to the outlet.",
        "No detergent, degreaser or emulsifier, neither in the unit nor ahead of it: oil held by soap does not rise.",
    ];
    if u.in_ground() {
        all.push("No emptying before somebody has looked how high the groundwater stands and asked whether the empty unit floats.");
    }
    all.push("No entry, no flame and no spark: see the cautions at the end.");
    all
}

fn before(u: &Site<'_>, steps: &mut Checks) {
    let unit = u.unit();
    steps.group("Before the water");
    steps.step("Debris, packing and tools are out of every compartment", "empty and clean");
    let mut inside = Vec::new();
    inside.extend(unit.pack.as_ref().map(|_| "plates"));
    inside.extend(unit.mesh.as_ref().map(|_| "mesh"));
    if !inside.is_empty() {
        steps.step(&format!("In place and held down: {}", inside.join(" and ")), "nothing moves by hand");
    }
    let mut shut = vec!["oil draw-off"];
    if u.hopper().is_some() {
        shut.push("sludge drain");
    }
    steps.step(&format!("Shut: {}; inlet shut and locked", shut.join(" and ")), "");
    if u.stage(StageKind::Closure).is_some() {
        steps.step("Outlet closure open and set", "open");
    }
    if !unit.body.is_open() {
        steps.step("Vents open, covers guarded", "air passes");
    }
    if u.cover().is_some() {
        steps.step("Hold-down tight; fill around the unit as the installation guide says", "signed by the contractor");
    }
    if u.layer().is_some() {
        steps
            .step("Lift and drop the float by hand, dry; read its contact with the meter", "contact changes both ways");
    }
}

fn filling(u: &Site<'_>, steps: &mut Checks) {
    let crest = u.unit().outlet.crest.q;
    steps.group("Filling with clean water");
    steps.step("Meter of the supply read; rate of the supply", "rate:");
    let count = if u.several() {
        format!(", {} units one after the other", print::digits(u.train.count.q.si(), 2))
    } else {
        String::new()
    };
    steps.step(
        &format!("Fill by the inlet side until water runs out at the outlet{count}. The volume over the rate of the supply is the time it takes"),
        &format!("{}{}; time:", u.fill(), u.each()),
    );
    if u.in_ground() {
        steps.step("While it fills: nothing shifts, settles or leaks", "");
    }
    steps.step("Inlet shut: the water stands at the crest", &u.level(crest));
    if u.weir() {
        steps.step("Level the weir under water", "water runs over all of it at once");
    }
    steps.step(
        "Let it stand; look at nozzles, joints and drains (how long: as the acceptance-test plan says)",
        "no drop, level stays",
    );
}

fn proving(u: &Site<'_>, steps: &mut Checks) {
    let (Some(oil), Some(alarm)) = (u.governing(), u.layer()) else { return };
    steps.group("Alarm");
    steps.step("Panel under power; label at the lamp", Site::LABEL);
    steps.step("Float afloat in clean water", "no alarm");
    steps.step(
        &format!("Draw water off slowly {} until it sounds", u.drain()),
        &format!("sounds with the water at {}", u.level(alarm.interface.q)),
    );
    if let Some(shut) = oil.level(Mark::ShutOff) {
        let stops = match (u.stage(StageKind::Closure).is_some(), u.pumped()) {
            (true, _) => "closure shuts",
            (false, true) => "feed pumps stop",
            (false, false) => "valve ahead is shut",
        };
        steps.step("Go on down to the shut-off", &format!("{stops} at {}", u.len(shut.interface.q)));
    }
    steps.step("Fill up again to the crest; alarm reset", &u.len(u.unit().outlet.crest.q));
    steps.step("Who is called by the alarm, by day and by night", "");
}

fn running(u: &Site<'_>, steps: &mut Checks) {
    steps.group("First flow");
    if let Some(pumps) = &u.unit().pump_out {
        let levels = format!("start {}, stop {}", u.len(pumps.start.q), u.len(pumps.stop.q));
        steps.step("Effluent pumps on automatic; first start and stop", &levels);
    }
    steps.step("Open the inlet a little; look at inlet, levels and outlet", "no oil, no foam at the outlet");
    if let Some(highest) = u.highest().filter(|p| p.inlet.q <= u.unit().shape.height()) {
        steps.step(
            &format!("Up to the largest flow, {} through one unit", u.say(highest.flow.q, FLOW_UNITS)),
            &format!("inlet chamber below {}, oil zone below {}", u.len(highest.inlet.q), u.len(highest.chamber.q)),
        );
    }
    if u.several() {
        steps.step("Units take like shares of the flow", "");
    }
    if u.stage(StageKind::SamplePoint).is_some() {
        steps.step("First sample, for comparison later", "number:");
    }
    steps.step(
        &format!("Brought to its best running within {} working days", print::digits(SETTLING_IN_DAYS, 2)),
        "done on:",
    );
    steps.step("This sheet, the maintenance manual and the inspection sheet are with the operator", "");
}

//! The regulation sheet: what an authority asks of a discharge, answered where the job answers it, with the methods that were
//! asked for in their sources' notation, and what is to be confirmed with it.

use super::common::{self, NOT_STATED};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::blocks::{Table, slim, wide};
use crate::report::{self, Report, capital, sentence};
use crate::scope::{self, By};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::train::StageKind;
use stillrise_search::Settled;
use stillrise_units::catalog::{GAL, M3};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "regulation-sheet",
    title: "Regulation sheet",
    about: "For the authority at the place of discharge: where the water goes, under which limits, how much of it, how it is sampled, what happens in a spill; and what is to be confirmed.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::basis,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    discharge(r, settled);
    limits(r, settled);
    spill(r, settled);
    report::methods(r);
    confirm(r, settled);
    common::cautions(r, "The authority's permit and its own manual govern; nothing here speaks for it.");
}

/// Where the water goes, and how much.
fn discharge(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("The discharge");
    let e = &settled.job.enquiry;
    let mut table = Table::new([wide("What is asked", 1.2), wide("Answer", 2.4)]);
    let said = |text: Option<String>| text.unwrap_or_else(|| NOT_STATED.to_owned());
    let level = |q: Option<stillrise_units::Length>| {
        // An elevation is no quantity of three digits: it is told to the hundredth of a foot or of a metre.
        said(q.map(|q| crate::profile::elevation(settled.job.enquiry.system(), q)))
    };
    table.row(["Receiver".to_owned(), said(e.outlet.to.0.map(|to| to.word().to_owned()))]);
    table.row(["Invert at the outfall, site datum".to_owned(), level(e.outlet.invert.q())]);
    table.row(["Water there, site datum".to_owned(), level(e.outlet.tailwater.q())]);
    let cap = e.outlet.flow_cap.q().map(|q| r.prose(q, FLOW_UNITS));
    table.row(["Most that may leave".to_owned(), said(cap)]);
    if let Some(basis) = &settled.job.design.basis {
        for case in &basis.cases {
            let kind = if case.kind == Kind::Spill { ", a spill" } else { "" };
            let (arrives, goes) = (r.prose(case.inflow.q, FLOW_UNITS), r.prose(case.feed.q, FLOW_UNITS));
            let flow = if arrives == goes {
                format!("{goes}, all of it through the separator")
            } else {
                format!("{arrives} arrive, {goes} go through the separator at a time")
            };
            table.row([format!("Flow, {}{kind}", case.name), flow]);
        }
    }
    let surfaces: Vec<String> = e
        .surfaces
        .iter()
        .filter_map(|surface| Some(format!("{}, {}", surface.name.as_deref()?, surface.area.claim()?.written.text)))
        .collect();
    if !surfaces.is_empty() {
        table.row(["Surfaces that drain to it".to_owned(), surfaces.join("; ")]);
    }
    // What passes a separator, or keeps one from its work, is what a permit writer looks for first.
    let products: Vec<String> =
        settled.job.design.triage.iter().map(|line| format!("{}: {}", line.subject, sentence(&line.says))).collect();
    let products =
        if products.is_empty() { "none was declared that stands against it".to_owned() } else { products.join(" ") };
    table.row(["What the water carries beside free oil".to_owned(), products]);
    if let Some(train) = &settled.job.design.train {
        let passed: Vec<&str> = train.stages.iter().map(|stage| stage.name.as_str()).collect();
        let stands = settled.job.enquiry.unit_stands();
        let unnamed = train.stages.iter().filter(|stage| !stands && scope::of_stage(stage) == By::Open);
        let unnamed: Vec<&str> = unnamed.map(|stage| stage.name.as_str()).collect();
        let unnamed = match &unnamed[..] {
            [] => String::new(),
            unnamed => format!("; nobody is named yet to bring: {}", unnamed.join(", ")),
        };
        table.row(["The water passes".to_owned(), passed.join(", ") + &unnamed]);
        let bypass = match &train.around.bypass {
            Some(_) => "asked for; see the calculation report on what would pass it",
            None => "none laid out: all water passes the separator",
        };
        table.row(["Bypass".to_owned(), bypass.to_owned()]);
    }
    r.out.table(&table);
}

/// The limits as the permit writes them, with method and place of sampling.
fn limits(r: &mut Report<'_>, settled: &Settled) {
    let all = common::limits(settled);
    r.out.section("Limits and sampling");
    if all.is_empty() {
        r.out.para("No limit is stated.");
        return;
    }
    let mut table = Table::new([
        wide("Limit", 1.4),
        wide("Set by", 0.9),
        wide("Method of analysis", 0.9),
        slim("By the calculation"),
        wide("Why", 2.2),
    ]);
    for limit in &all {
        table.row([
            capital(&limit.title),
            limit.authority.unwrap_or(NOT_STATED).to_owned(),
            limit.method.unwrap_or(NOT_STATED).to_owned(),
            limit.says.to_owned(),
            sentence(&limit.why),
        ]);
    }
    r.out.table(&table);
    let train = settled.job.design.train.as_ref();
    let has = |kind| train.is_some_and(|train| train.stages.iter().any(|stage| stage.kind == kind));
    let point = has(StageKind::SamplePoint);
    let polished = has(StageKind::Polisher);
    let place = if polished {
        "behind the polisher, at the sample point of the installation profile and of the diagram; what the separator does is sampled ahead of the polisher"
    } else {
        "behind the unit, at the sample point of the installation profile and of the diagram"
    };
    r.out.para(&if point {
        format!("Samples are taken {place}; single samples by hand, in bottles that are not rinsed, for oil clings to them. How often is the permit's to say.")
    } else {
        "No place of sampling is laid out.".to_owned()
    });
}

/// What happens in a spill, and where what is held goes.
fn spill(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("Spills, and what is pumped out");
    let basis = settled.job.design.basis.as_ref();
    match basis.and_then(|basis| basis.spill.as_ref()) {
        Some(spill) => {
            let volume = r.prose(spill.at_unit().q, (&GAL, &M3));
            let judged = settled.judged(&stillrise_checks::rules::spill_above_room::RULE);
            let says = judged.map_or_else(String::new, |judged| format!(" {}", sentence(judged.verdict.says())));
            r.out.para(&format!("A spill of {volume} is counted on at the unit.{says}"));
        }
        None => r.out.para("No spill is stated, and none is counted on beyond what lies above the alarm."),
    }
    if let Some(often) = crate::reply::emptied_in_short(settled) {
        r.out.para(&sentence(&format!("to be emptied: {often}")));
    }
    r.out.para("Oil, sludge and the water pumped out with them are regulated wastes: characterised, handed to a licensed carrier with the papers that the law asks for, never put back into a drain.");
}

/// What is to be confirmed.
fn confirm(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("To be confirmed with the authority");
    let e = &settled.job.enquiry;
    let mut all: Vec<&str> = Vec::new();
    if e.outlet.to.0.is_none() {
        all.push("where the water may go, storm drain or sewer");
    }
    if common::limits(settled).iter().any(|limit| limit.method.is_none()) {
        all.push("the method of analysis behind each limit");
    }
    if e.limits.iter().any(|limit| limit.statistic.0.is_none()) {
        all.push("the statistic of each limit: any sample, the largest day, or an average of how many samples");
    }
    all.extend([
        "where, how often and by whom samples are taken, single or composite",
        "whether rain on the surfaces may go the same way, and up to which storm",
        "which manual or standard of its own it wants the unit held against, with its figures",
        "records to be kept, for how long, and whom to call in a spill",
        "who signs: name, licence, seal",
    ]);
    let mut table = Table::new([wide("What", 2.6), wide("Confirmed by, date", 1.4)]);
    for what in all {
        table.row([capital(what), String::new()]);
    }
    r.out.table(&table);
}

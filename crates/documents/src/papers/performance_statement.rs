//! The performance statement: what is stated for each limit, under which conditions, what is left out, where it differs from
//! what was asked, and how it would be shown.

use super::common::{self, Met, Stated, taken};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::blocks::{Table, number, wide};
use crate::report::{Report, capital, sentence};
use crate::{reply, summary};
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::heard::ASKED_OF_KEPT;
use stillrise_design::performance::promise::Promise;
use stillrise_design::train::{StageKind, Train};
use stillrise_handbook::vessel::testing::{SAMPLE_PAIRS, SAMPLING_HOURS, VOLUME_CHANGES};
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, GAL, KG_M3, LB_FT3, M3, PERCENT, UM};
use stillrise_units::{Typed, print};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "performance-statement",
    title: "Performance statement",
    about: "For whoever contracts for it or permits it: what is stated for each limit, under which conditions, what it leaves out, and how it would be shown.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::basis,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    let all = common::limits(settled);
    stated(r, &all);
    if let (Some(basis), Some(train)) = (&settled.job.design.basis, &settled.job.design.train) {
        conditions(r, basis, train, all.iter().any(Stated::is_stated));
    }
    // Without a unit nothing is stated that something could be left out of.
    if settled.job.design.train.is_some() {
        excluded(r, settled);
        exceptions(r, settled, &all);
        if !all.is_empty() {
            shown(r, &all);
        }
    }
    common::cautions(r, "No warranty is given by this paper: terms are those of the contract.");
}

/// What is stated of each limit, and what is not.
fn stated(r: &mut Report<'_>, all: &[Stated<'_>]) {
    r.out.section("What is stated");
    let settled = r.settled;
    let design = &settled.job.design;
    r.out.para(&match &design.train {
        Some(train) if settled.job.enquiry.unit_stands() => {
            format!("Of the unit that stands ({}), by calculation and by what was measured; nothing is offered in its place.", summary::units(train))
        }
        Some(train) => format!("Of {}, by calculation; not measured on this water.", summary::units(train)),
        None => "No unit was laid out, so that no performance is stated at all; what is asked stands below.".to_owned(),
    });
    if let Some(worst) = design.performance.as_ref().and_then(|p| p.worst()).filter(|_| all.is_empty()) {
        let leaves = Promise::of(worst.total.expected.q, worst.content.total.q).sentence();
        r.out.para(&format!(
            "No limit is named, so that nothing is held against one. Expected at the outlet on the mean: {leaves} of total oil ({}). That is an expectation, not a statement of performance.",
            worst.case
        ));
    }
    let behind = place(design.train.as_ref());
    let mut table = Table::new([
        wide("Limit, and who sets it", 1.7),
        wide("Statement", 1.2),
        wide("Sampled where, by which method", 1.5),
        number("By calculation", "mg/L"),
        wide("Results within it", 1.0),
    ]);
    for limit in all {
        let by = limit.authority.map_or_else(|| "; who sets it was not said".to_owned(), |by| format!("; {by}"));
        table.row([
            format!("{}{by}", limit.title),
            if limit.is_stated() {
                "Stated: kept".to_owned()
            } else {
                format!("No performance is stated ({})", limit.says)
            },
            format!("{behind}; {}", limit.method.map_or_else(|| "method not stated".to_owned(), str::to_owned)),
            limit.found.clone(),
            limit.share.clone().unwrap_or_else(|| "–".to_owned()),
        ]);
    }
    r.out.table(&table);
    if all.is_empty() {
        return;
    }
    let asked = print::in_prose(ASKED_OF_KEPT, &PERCENT);
    r.out.remark(&format!(
        "A performance is stated only where the limit holds by the calculation, with every other plausible answer to what nobody has confirmed, in {asked} of the results at least, and against no result that was measured; the weakest of these decides. The share of results counts all that is uncertain at once, the scatter of single results included; it is an estimate, no warranty. It can be high where nothing is stated: the statement bears the worst plausible answer alone, the share weighs all of them. By calculation: what leaves in the worst case at the end of the interval between pump-outs, against what it is held to."
    ));
    for limit in all.iter().filter(|limit| !limit.is_stated()) {
        let change = limit.change.trim_end_matches('.');
        let change = if change.is_empty() { String::new() } else { format!(" What would change it: {change}.") };
        r.out.lead(
            &format!("No performance is stated for {}.", limit.title.split(',').next().unwrap_or(&limit.title)),
            &format!("{}{change}", sentence(&limit.why)),
        );
    }
}

/// Where samples are taken: behind the unit, ahead of what stands behind it.
fn place(train: Option<&Train>) -> &'static str {
    let has = |kind| train.is_some_and(|train| train.stages.iter().any(|stage| stage.kind == kind));
    if has(StageKind::Polisher) {
        "Behind the unit, ahead of the polisher, in the falling stream"
    } else {
        "Behind the unit, in the falling stream"
    }
}

/// Under which conditions it holds.
fn conditions(r: &mut Report<'_>, basis: &Basis, train: &Train, is_stated: bool) {
    r.out.section(if is_stated { "Conditions under which it holds" } else { "Conditions of the calculation" });
    let settled = r.settled;
    let performance = settled.job.design.performance.as_ref();
    let mut all: Vec<String> = Vec::new();
    if let Some(flow) = basis.design_flow() {
        let n = train.count.q.si();
        let each = performance.map(|p| p.highest().flow.q).filter(|_| n > 1.5);
        let each = each.map_or_else(String::new, |q| {
            format!(", and through none of the {} units more than {}", print::digits(n, 2), r.prose(q, FLOW_UNITS))
        });
        all.push(format!("The flow to the unit is not above {}{each}.", r.prose(flow.q, FLOW_UNITS)));
    }
    all.push(
        "Each water comes at no more than its flow and carries no more in the mean than the table below says."
            .to_owned(),
    );
    let peaks = performance.iter().flat_map(|p| &p.limits).filter_map(|l| l.peak);
    if let Some(peak) = peaks.max_by(|a, b| a.q.si().total_cmp(&b.q.si())).filter(|peak| peak.q.si() > 1.0005) {
        all.push(format!(
            "No sample of the influent is above {} times its mean{}.",
            print::digits(peak.q.si(), 3),
            taken(settled, peak.at)
        ));
    }
    let fluids = &basis.fluids;
    let oils: Vec<String> = fluids
        .oils
        .iter()
        .map(|oil| {
            format!(
                "{} of no more than {} at {}",
                oil.name,
                r.prose(oil.density_15.q, (&LB_FT3, &KG_M3)),
                common::at_15(r)
            )
        })
        .collect();
    if !oils.is_empty() {
        let named = if stillrise_checks::ask::oil_is_named(&settled.subject()) {
            ""
        } else {
            " (nobody named an oil; this one was taken)"
        };
        all.push(format!("The oils are {}{named}.", listed(&oils)));
    }
    let d50 = basis.droplets.d50;
    all.push(format!(
        "Half of the free oil at the unit comes in droplets of {} or larger{}.",
        r.prose(d50.q, (&UM, &UM)),
        taken(settled, d50.at)
    ));
    let (cold, warm) = (fluids.cold.temperature, fluids.warm.temperature);
    all.push(format!(
        "The water is between {} and {}.",
        r.prose(cold.q, (&DEG_F, &DEG_C)),
        r.prose(warm.q, (&DEG_F, &DEG_C))
    ));
    if let Some(p) = performance {
        let often =
            reply::emptied_in_short(settled).map_or_else(String::new, |often| format!(" ({often} on these figures)"));
        let sludge = p
            .storage
            .sludge_trigger
            .map_or_else(String::new, |v| format!("sludge before it fills {} of a unit, ", r.prose(v.q, (&GAL, &M3))));
        all.push(format!("It is cleaned in time: {sludge}oil before the alarm{often}; plates and mesh with it; then filled with clean water before anything oily comes."));
    }
    let products: Vec<&str> = basis.dosed.iter().map(|d| d.name.as_str()).collect();
    all.push(if products.is_empty() {
        "No detergent, degreaser, solvent, foam, glycol or other product that holds oil in water reaches it: none was declared.".to_owned()
    } else {
        format!("No product that holds oil in water reaches it but as declared: {}.", products.join(", "))
    });
    all.push(if basis.feed.pumped {
        let class = basis.feed.class.map_or("pump", |class| class.word);
        format!("The water is fed as declared ({class}); no other pump, valve or fall breaks the oil on its way.")
    } else {
        "The water comes by gravity; no pump, throttled valve or high fall breaks the oil on its way.".to_owned()
    });
    if train.unit.pack.is_some() {
        let m = &basis.methods;
        let share = |q: stillrise_units::Ratio| print::in_prose(q.si(), &PERCENT);
        all.push(format!(
            "The flow is even: no gap between the plates gets more than {} over its share, and no more than {} of the plates is lost to fouling before they are cleaned.",
            share(m.maldistribution.q), share(m.fouling.q)
        ));
    }
    all.push("It is set level, its outlet runs free, and nothing bypasses it.".to_owned());
    r.out.list(true, all.into_iter().map(|text| (text, String::new())));
    let table = common::waters(r, basis);
    r.out.table(&table);
}

fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [all @ .., last] => format!("{} and {last}", all.join(", ")),
    }
}

/// What no statement covers.
fn excluded(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("Not covered");
    let design = &settled.job.design;
    let mut all = vec![
        "Oil that is emulsified or dissolved, soaps, detergents, glycols, solvents, metals, salts, oxygen demand: gravity leaves them in the water.".to_owned(),
        "Suspended solids, beyond what is stated for a limit on them: how fine they are decides.".to_owned(),
        "Anything but the waters above: other waters, more of them, other oils, colder water, baths let go at once.".to_owned(),
    ];
    let spill = design.performance.as_ref().and_then(|p| p.storage.spill.as_ref());
    all.push(spill.map_or_else(
        || match design.basis.as_ref().is_some_and(|basis| basis.spill.is_some()) {
            true => "Spills: no room in the unit is counted for the one that was declared.".to_owned(),
            false => "Spills: none was declared, and no room is counted for one.".to_owned(),
        },
        |spill| format!("A spill, or slug of oil, of more than {} between two pump-outs, the room between alarm and limit with the water at rest.", r.prose(spill.room.q, (&GAL, &M3))),
    ));
    let mesh = design.performance.as_ref().and_then(|p| p.worst()?.passage.mesh());
    if mesh.is_some_and(|mesh| !mesh.counts) {
        all.push("What the mesh may catch besides: no credit is taken for it.".to_owned());
    }
    all.push("Results by another method than the one named: methods do not convert into each other.".to_owned());
    r.out.list(false, all.into_iter().map(|text| (text, String::new())));
}

/// Where the offer differs from what was asked.
fn exceptions(r: &mut Report<'_>, settled: &Settled, all: &[Stated<'_>]) {
    let mut table = Table::new([wide("Clause", 0.9), wide("Asked", 1.2), wide("Offered", 2.2)]);
    for limit in all.iter().filter(|limit| !limit.is_stated()) {
        let clause = limit.authority.unwrap_or("limit, source not stated");
        table.row([capital(clause), limit.title.clone(), format!("no performance stated ({})", limit.says)]);
    }
    for answer in common::answers(settled).into_iter().filter(|answer| answer.met != Met::Yes) {
        table.row(["Enquiry, what was named".to_owned(), answer.asked, sentence(first(&answer.says))]);
    }
    let offers = !settled.job.enquiry.unit_stands();
    for judged in
        settled.verdicts.iter().filter(|judged| offers && judged.stands_failed()).filter(|judged| judged.rule.bars_pick)
    {
        table.row([
            "Enquiry, site and flows".to_owned(),
            format!("a unit without this: {}", judged.rule.title.to_lowercase()),
            sentence(judged.verdict.says()),
        ]);
    }
    r.out.section("Exceptions to what was asked");
    if table.is_empty() {
        r.out.para("None: every limit that was named is stated, and nothing else that was named is refused.");
    }
    r.out.table(&table);
}

/// The first two sentences of an answer: the second gives the number.
fn first(answer: &str) -> &str {
    let second = answer.match_indices(". ").nth(1).map(|(k, _)| k + 1);
    second.and_then(|end| answer.get(..end)).unwrap_or(answer)
}

/// How it would be shown.
fn shown(r: &mut Report<'_>, all: &[Stated<'_>]) {
    r.out.section("How it would be shown");
    let settled = r.settled;
    let Some(train) = &settled.job.design.train else { return };
    let volume = r.prose(train.unit.layout.water_volume.q * VOLUME_CHANGES, (&GAL, &M3));
    let start =
        if settled.job.enquiry.unit_stands() { "With the unit cleaned and put right," } else { "After start-up," };
    let mut steps = vec![
        format!("{start} on the real water, under the conditions above: at least {} volumes of the unit ({volume} through each) before the first sample.", print::digits(VOLUME_CHANGES, 2)),
        format!("At least {SAMPLE_PAIRS} pairs of samples, influent and effluent, at regular intervals within {} h, with flow, water temperature, oil layer and sludge recorded; whole bottles from the falling stream, a duplicate and a blank.", print::digits(SAMPLING_HOURS, 2)),
        "Taken by the buyer or a third party in the presence of the maker; analysed by an independent certified laboratory by the method of the limit.".to_owned(),
    ];
    let averages = all
        .iter()
        .filter_map(|limit| limit.samples)
        .fold(None, |most: Option<f64>, n| Some(most.map_or(n, |m| m.max(n))));
    if let Some(n) = averages {
        steps.push(format!("A day's test shows no monthly average: for that the mean of a month's samples counts ({} were taken to make one).", print::digits(n, 2)));
    }
    let single = settled
        .job
        .design
        .basis
        .iter()
        .flat_map(|b| &b.limits)
        .any(|l| matches!(l.statistic.q, Statistic::AnySample | Statistic::DailyMaximum));
    if single {
        steps.push("Samples of an influent outside the conditions count neither for nor against it.".to_owned());
    }
    r.out.list(true, steps.into_iter().map(|text| (text, String::new())));
    r.out.remark("Volumes, pairs and hours: UFGS 46 25 14. Samples are taken from outside: the inside of the unit is a confined space, and vapour over the liquid may ignite.");
}

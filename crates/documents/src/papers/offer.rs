//! The offer summary: what is bought, what it needs, what it will do and on which conditions, what is left out, what must be
//! answered. Two pages for whoever decides.

use super::{EVERYBODY, Head, Paper, lacks, questions};
use crate::reply;
use crate::report::blocks::{Table, slim, wide};
use crate::report::{Report, cover, sentence};
use crate::summary;
use stillrise_checks::{Grade, Judged};
use stillrise_design::performance::limit::Word;
use stillrise_search::Settled;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "offer-summary",
    title: "Offer summary",
    about: "For whoever decides: what is bought, what it needs, what it will do and on which conditions, what is left out, what must be answered.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::nothing,
    make: |r, _| make(r),
};

/// Assumptions that are told here; the calculation report has the others.
const CONDITIONS: usize = 8;
/// Questions that are asked here; the calculation report has the others.
const QUESTIONS: usize = 8;

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    bought(r, settled);
    does(r, settled);
    needs(r, settled);
    conditions(r, settled);
    excluded(r, settled);
    answers(r, settled);
    r.out.remark("Preliminary, no quotation. For review by a licensed engineer; local codes and the permit govern. Confined space, flammable vapour and lifting: by permit and by trained people only.");
}

/// What is bought.
fn bought(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("What is bought");
    let Some(train) = &settled.job.design.train else {
        r.out.para("Nothing is offered on what was said; the answers wanted below come first.");
        return;
    };
    if settled.job.enquiry.unit_stands() {
        r.out.para("Nothing: the unit stands. What follows is what it does, and what must be known to better it.");
        return;
    }
    let (lead, facts) = reply::offered(settled, train);
    let fails: Vec<String> = failing(settled).map(|judged| summary::lower(judged.rule.title)).collect();
    r.out.lead(&lead, "");
    r.out.list(false, facts.into_iter().map(|fact| (sentence(&fact), String::new())));
    if !fails.is_empty() {
        r.out.lead("What stands against it:", &format!("{}.", fails.join("; ")));
    }
}

/// Rules that fail and that nobody accepted or took over.
fn failing(settled: &Settled) -> impl Iterator<Item = &Judged> {
    settled.verdicts.iter().filter(|judged| judged.stands_failed())
}

/// What it will do.
fn does(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("What it will do");
    for line in cover::headline(r) {
        r.out.para(&sentence(&line));
    }
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else { return };
    let mut table = Table::new([wide("Limit", 1.1), slim("Word"), wide("Why", 2.6), wide("What would change it", 1.2)]);
    for verdict in &p.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        let by = limit.authority.as_ref().map_or_else(String::new, |by| format!(", set by {by}"));
        let what = format!("{}: {}, {}{by}", limit.title(), summary::allows(limit), limit.statistic.q.word());
        let change =
            if verdict.word == Word::Kept { String::new() } else { sentence(&crate::rating::change(settled, verdict)) };
        let beside = summary::beside_the_word(verdict).map_or_else(String::new, |text| sentence(&text) + " ");
        table.row([what, verdict.says().to_owned(), format!("{beside}{}", sentence(&verdict.reason())), change]);
    }
    for limit in &basis.ph_limits {
        let why = sentence(limit.pollutant.explains);
        table.row([
            format!("{}, {}", limit.shown(), limit.statistic()),
            Word::NotByGravity.text().to_owned(),
            why,
            sentence(limit.pollutant.what_could),
        ]);
    }
    for (title, says) in summary::in_a_cone(settled).into_iter().chain(summary::numberless(settled)) {
        table.row([title, "open".to_owned(), sentence(&says), String::new()]);
    }
    r.out.table(&table);
    if !table.is_empty() {
        r.out.remark("Kept: by the calculation, and over the plausible range of each figure that nobody has confirmed. Likely: by the calculation, not over all of that range. Not shown: the calculation does not show it. Not by gravity: no separator alone does it.");
    }
    for text in summary::measured::lines(settled) {
        r.out.lead("Measured.", &sentence(&text));
    }
}

/// What it needs.
fn needs(r: &mut Report<'_>, settled: &Settled) {
    let mut all: Vec<(String, String)> = Vec::new();
    let emptied = reply::emptied_in_days(settled);
    if !emptied.is_empty() {
        let says = format!(
            "on these figures {}; the maintenance manual has the limits and the other tasks",
            emptied.join(", ")
        );
        all.push((sentence(&says), String::new()));
    }
    all.extend(reply::must_change(settled).into_iter().map(|text| (sentence(&text), String::new())));
    if all.is_empty() {
        return;
    }
    r.out.section("What it needs");
    r.out.list(false, all);
}

/// On which conditions.
fn conditions(r: &mut Report<'_>, settled: &Settled) {
    let based = reply::assumed(settled);
    let twice = reply::contradictions(settled);
    let warns: Vec<&Judged> =
        settled.verdicts.iter().filter(|judged| judged.grade() == Grade::Warns && !judged.is_settled()).collect();
    if based.is_empty() && twice.is_empty() && warns.is_empty() {
        return;
    }
    r.out.section("On which conditions");
    let more = based.len().saturating_sub(CONDITIONS);
    let told = twice.into_iter().chain(based.into_iter().take(CONDITIONS));
    r.out.list(false, told.map(|text| (sentence(&text), String::new())));
    if more > 0 {
        r.out.remark(&format!("{more} more stand in the calculation report."));
    }
    if !warns.is_empty() {
        let names: Vec<String> = warns.iter().map(|judged| summary::lower(judged.rule.title)).collect();
        r.out.lead("Warnings, each explained in the calculation report:", &format!("{}.", names.join("; ")));
    }
}

/// What is left out.
fn excluded(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("What is not in it");
    let mut all: Vec<String> = Vec::new();
    if let Some(train) = &settled.job.design.train
        && !settled.job.enquiry.unit_stands()
    {
        all.extend(
            reply::needed_beside(settled, train).into_iter().map(|text| format!("needed beside the unit: {text}")),
        );
    }
    all.push("foundation or pit, anchors, piping, power and wiring, unloading and setting, first filling, disposal of oil and sludge".to_owned());
    all.push(
        "structure, wind and earthquake, explosion protection and the classification of areas: designed by others"
            .to_owned(),
    );
    all.push(
        "any assurance on emulsified or dissolved oil, detergents, solvents and metals, which gravity does not touch"
            .to_owned(),
    );
    r.out.list(false, all.into_iter().map(|text| (sentence(&text), String::new())));
}

/// What must be answered.
fn answers(r: &mut Report<'_>, settled: &Settled) {
    let questions: Vec<String> = reply::every_question(settled).into_iter().map(|one| one.text).collect();
    if questions.is_empty() {
        return;
    }
    r.out.section("What must be answered");
    let more = questions.len().saturating_sub(QUESTIONS);
    let mut table = Table::new([wide("Question", 3.0), wide("Answer", 1.6)]);
    for question in questions.into_iter().take(QUESTIONS) {
        table.row([sentence_or_question(&question), String::new()]);
    }
    r.out.table(&table);
    if more > 0 {
        r.out.remark(&format!(
            "{more} more stand in the paper \"{}\"; none of them moves the offer as much.",
            questions::PAPER.title
        ));
    }
}

/// A question stays one; what is no question ends in a full stop.
fn sentence_or_question(text: &str) -> String {
    if text.trim_end().ends_with('?') { text.trim_end().to_owned() } else { sentence(text) }
}

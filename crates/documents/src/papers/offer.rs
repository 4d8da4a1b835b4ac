//! The offer summary: what is bought, what it needs, what it will do and on which conditions, what is left out, what must be
//! answered. Two pages for whoever decides.

use super::{EVERYBODY, Head, Paper, lacks, questions};
use crate::reply::{self, Of};
use crate::report::blocks::{Table, slim, wide};
use crate::report::{Report, cover, sentence};
use crate::scope::{self, By, Group};
use crate::summary;
use stillrise_checks::rules::limit_not_shown;
use stillrise_checks::{Grade, Judged};
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::promise::{Promise, number};
use stillrise_search::Settled;
use stillrise_units::Typed;

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
    excluded(r);
    answers(r, settled);
    r.out.remark("Preliminary, no quotation. For review by a licensed engineer; local codes and the permit govern. Confined space, flammable vapour and lifting: by permit and by trained people only.");
}

/// What is bought, in a sentence first.
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
    let name = facts.iter().find(|(of, _)| *of == Of::Name).map(|(_, name)| name.as_str()).unwrap_or_default();
    let (what, is) =
        if train.count.q.si() > 1.0 { ("Oil-water separators", "each ") } else { ("One oil-water separator", "") };
    r.out.lead(&format!("{what}, {name}:"), &format!("{is}{}.", train.unit.arrangement.meaning()));
    // How it is meant stands ahead of what follows from it, unless it is offered without a condition.
    if settled.pick.as_ref().is_none_or(|pick| !pick.fits) || settled.fails() {
        r.out.para(&format!("{}.", lead.trim_end_matches(':')));
    }
    let mut all = told(&facts, Of::Bought);
    let with: Vec<String> = scope::rows(settled)
        .into_iter()
        .filter(|row| row.group == Group::Unit && row.by == By::Maker)
        .map(|row| summary::lower(&row.item))
        .collect();
    if !with.is_empty() {
        all.push((format!("It comes with: {}.", with.join("; ")), String::new()));
    }
    r.out.list(false, all);
    let fails: Vec<String> = failing(settled).map(|judged| summary::lower(judged.rule.title)).collect();
    if !fails.is_empty() {
        r.out.lead("What stands against it:", &format!("{}.", fails.join("; ")));
    }
}

/// The facts that speak of one thing, as items of a list.
fn told(facts: &[(Of, String)], what: Of) -> Vec<(String, String)> {
    facts.iter().filter(|(of, _)| *of == what).map(|(_, fact)| (sentence(fact), String::new())).collect()
}

/// The same of the unit offered; none where none is.
fn of_the_unit(settled: &Settled, what: Of) -> Vec<(String, String)> {
    let train = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands());
    train.map_or_else(Vec::new, |train| told(&reply::offered(settled, train).1, what))
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
    let mut rows: Vec<[String; 5]> = Vec::new();
    for verdict in &p.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        let by = limit.authority.as_ref().map_or_else(String::new, |by| format!(", set by {by}"));
        let what = format!("{}: {}, {}{by}", limit.title(), summary::allows(limit), limit.statistic.q.word());
        // Where the numbers alone tell why, no sentence tells it again.
        let plain = verdict.word == Word::Kept
            || (verdict.predicted && verdict.solids.is_none() && verdict.most.expected.q > verdict.against.q);
        let why = if plain { String::new() } else { sentence(&verdict.reason()) + " " };
        // A word that an open figure holds back is changed by that figure, which the sentence has named.
        let open = verdict.word == Word::Kept || verdict.calculated < verdict.word;
        let change = if open { String::new() } else { sentence(&crate::rating::change(settled, verdict)) };
        let more = format!("{why}{change}");
        rows.push([what, verdict.says().to_owned(), leaves(verdict), share(verdict), more]);
    }
    for limit in &basis.ph_limits {
        let more = format!("{} {}", sentence(limit.pollutant.explains), sentence(limit.pollutant.what_could));
        let what = format!("{}, {}", limit.shown(), limit.statistic());
        rows.push([what, Word::NotByGravity.text().to_owned(), DASH.to_owned(), DASH.to_owned(), more]);
    }
    for (title, says) in summary::in_a_cone(settled).into_iter().chain(summary::numberless(settled)) {
        rows.push([title, "open".to_owned(), DASH.to_owned(), DASH.to_owned(), sentence(&says)]);
    }
    if !rows.is_empty() {
        let explained = rows.iter().any(|row| !row[4].is_empty());
        let mut columns =
            vec![wide("Limit", 1.5), slim("Word"), wide("Leaves, worst case", 1.0), wide("Results that keep it", 0.9)];
        if explained {
            columns.push(wide("Why, or what would change it", 3.0));
        }
        let mut table = Table::new(columns);
        for row in rows {
            table.row(row.into_iter().take(if explained { 5 } else { 4 }));
        }
        r.out.table(&table);
        r.out.remark(&legend(&p.limits));
    }
    r.out.list(false, of_the_unit(settled, Of::Does));
    for text in summary::measured::lines(settled) {
        r.out.lead("Measured.", &sentence(&text));
    }
}

/// What stands where there is no number.
const DASH: &str = "–";

/// What the words in the table mean that stand in it, and its numbers.
fn legend(limits: &[LimitVerdict]) -> String {
    let means = |word: Word| match word {
        Word::Kept => {
            "Kept: by the calculation, over the plausible range of each figure that nobody has confirmed, and in at least 95 of 100 results."
        }
        Word::Likely => "Likely: by the calculation, but not over all that is plausible.",
        Word::NotShown => "Not shown: the calculation, or a figure that nobody has confirmed, does not let it be said.",
        Word::NotByGravity => "Not by gravity: no separator alone does it.",
    };
    let words = [Word::Kept, Word::Likely, Word::NotShown, Word::NotByGravity].into_iter();
    let mut all: Vec<&str> = words.filter(|word| limits.iter().any(|v| v.word == *word)).map(means).collect();
    all.push("Leaves: as expected in the hardest case, just ahead of a pump-out; where single samples count, with the influent at its peak.");
    if limits.iter().any(|v| leaves(v).starts_with('≤')) {
        all.push("No less than 10 mg/L is promised of plates, or than what arrives where that is less.");
    }
    if limits.iter().any(|v| share(v) != DASH) {
        all.push("Results that keep it: over all that is plausible.");
    }
    all.join(" ")
}

/// What leaves, as it is held against a limit.
fn leaves(verdict: &LimitVerdict) -> String {
    if !verdict.predicted || verdict.solids.is_some() {
        return DASH.to_owned();
    }
    // The most of all cases, which may be another than the one from which the word comes.
    let bound = Promise::of(verdict.most.expected.q, verdict.most.influent.q).brief();
    let stays = Some(verdict.stays.q).filter(|stays| *stays > verdict.against.q).map(number);
    match stays {
        None => format!("{bound} mg/L"),
        Some(stays) if verdict.most.case == verdict.case => format!("{bound} mg/L, of which {stays} cannot rise"),
        Some(stays) => format!("{bound} mg/L in {}; in {} {stays} cannot rise", verdict.most.case, verdict.case),
    }
}

/// How many results keep it, as far as it was looked at.
fn share(verdict: &LimitVerdict) -> String {
    let chance = verdict.chance.filter(|_| verdict.word != Word::NotByGravity);
    chance.map_or_else(|| DASH.to_owned(), |chance| chance.percent())
}

/// What it needs.
fn needs(r: &mut Report<'_>, settled: &Settled) {
    let mut all = of_the_unit(settled, Of::Needs);
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
    r.out.section("What it needs of you");
    r.out.list(false, all);
    let beside = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands());
    let beside = beside.map_or_else(Vec::new, |train| reply::needed_beside(settled, train));
    if !beside.is_empty() {
        r.out.lead("Beside the unit, not part of it:", &sentence(&beside.join("; ")));
    }
}

/// On which conditions.
fn conditions(r: &mut Report<'_>, settled: &Settled) {
    let based = reply::assumed(settled);
    let twice = reply::contradictions(settled);
    let warns: Vec<&Judged> = settled
        .verdicts
        .iter()
        .filter(|judged| {
            judged.grade() == Grade::Warns && !judged.is_settled() && *judged.rule != limit_not_shown::RULE
        })
        .collect();
    if based.is_empty() && twice.is_empty() && warns.is_empty() {
        return;
    }
    r.out.section("On which conditions");
    let more = based.len().saturating_sub(CONDITIONS);
    let items = |texts: Vec<String>| texts.into_iter().map(|text| (sentence(&text), String::new()));
    if !twice.is_empty() {
        r.out.lead("Said in two ways:", "");
        r.out.list(false, items(twice));
    }
    if !based.is_empty() {
        r.out.lead("What we reckoned with:", "");
        r.out.list(false, items(based.into_iter().take(CONDITIONS).collect()));
    }
    if more > 0 {
        r.out.remark(&format!("{more} more stand in the calculation report."));
    }
    if !warns.is_empty() {
        let names: Vec<String> = warns.iter().map(|judged| summary::lower(judged.rule.title)).collect();
        r.out.lead("Warnings, each explained in the calculation report:", &format!("{}.", names.join("; ")));
    }
}

/// What is left out.
fn excluded(r: &mut Report<'_>) {
    r.out.section("What is not in it");
    let all = [
        "foundation or pit, anchors, piping, power and wiring, unloading and setting, first filling, disposal of oil and sludge",
        "structure, wind and earthquake, explosion protection and the classification of areas: designed by others",
        "any assurance on emulsified or dissolved oil, detergents, solvents and metals, which gravity does not touch",
    ];
    r.out.list(false, all.into_iter().map(|text| (sentence(text), String::new())));
    let open: Vec<String> = scope::rows(r.settled)
        .into_iter()
        .filter(|row| row.by == By::Open)
        .map(|row| summary::lower(&row.item))
        .collect();
    if !open.is_empty() {
        r.out.lead("Not decided yet who brings it, and not in it until then:", &sentence(&open.join("; ")));
    }
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
    r.out.remark("In the order in which the answers move the offer.");
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

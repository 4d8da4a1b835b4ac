//! The compliance matrix: each limit, each thing that was named, each rule that applies, with what was found, on which page of
//! which paper it stands, and its status. Those papers are typeset ahead of it, and nothing of its texts is cut.

use super::common::{self, Answer, Met, Stated};
use super::{EVERYBODY, Head, Paper, Places, lacks, of_rule};
use crate::Edition;
use crate::report::blocks::{Table, slim, wide};
use crate::report::{Report, capital, sentence};
use stillrise_checks::rules::{frost_outdoors, spill_without_closure};
use stillrise_checks::{Grade, Judged, Rule};
use stillrise_design::enquiry::blocks::{Decision, Settled as Decided};
use stillrise_design::performance::limit::Word;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "compliance-matrix",
    title: "Compliance matrix",
    about: "For whoever checks that what was asked is met: each limit, each thing that was named, each rule that applies, with what was found, on which page it stands, and whether it is met.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[STATEMENT, REPORT, ANNEX],
    lacks: lacks::rules,
    make: |r, beside| make(r, beside.places),
};

/// The statuses of a row, in print.
const MEETS: &str = "meets";
/// That it is met as somebody said, of which the calculation knows no more.
const SAID: &str = "meets, as stated";
const FAILS: &str = "does not meet";
const UNKNOWN: &str = "cannot be judged";
const OPEN: &str = "open";

/// Rules that pass where somebody said that a thing is there or will be, whoever brings it.
static ON_A_WORD: &[&Rule] = &[&frost_outdoors::RULE, &spill_without_closure::RULE];

/// The papers that it leads to.
const STATEMENT: &str = "performance-statement";
const REPORT: &str = "calculation-report";
const ANNEX: &str = "calculation-annex";

fn make(r: &mut Report<'_>, places: &Places) {
    let settled = r.settled;
    let limits = common::limits(settled);
    let answers = common::answers(settled);
    in_short(r, &limits);
    asked(r, places, &limits, &answers);
    wanting(r, places);
    passing(r, places);
    common::cautions(r, "A rule that is met shows no more than that this fault was looked for and not found.");
}

/// How many rows have which status.
fn in_short(r: &mut Report<'_>, limits: &[Stated<'_>]) {
    let settled = r.settled;
    let of = |grade| settled.verdicts.iter().filter(|j| j.grade() == grade).count();
    let kept = limits.iter().filter(|l| l.is_stated()).count();
    let decided = settled.verdicts.iter().filter(|j| j.is_settled()).count();
    let decided = if decided > 0 { format!(" {decided} accepted or taken over by others.") } else { String::new() };
    r.out.para(&format!(
        "Limits met: {kept} of {}. Rules met: {}; not met: {}; to be decided: {}; not to be judged on what was said: {}.{decided} {} rules do not apply: what they look at is not there.",
        limits.len(),
        of(Grade::Passes),
        of(Grade::Fails),
        of(Grade::Warns),
        of(Grade::CannotJudge),
        of(Grade::NotApplicable)
    ));
}

fn columns(what: &str) -> Table {
    Table::new([wide("Clause", 1.4), wide(what, 1.0), wide("Found", 2.0), wide("Document, page", 1.3), slim("Status")])
}

/// The column of the place.
const PLACE: usize = 3;

/// The cell of a place, which leads there; empty where the paper is none of this package.
fn place(table: &mut Table, places: &Places, paper: &str, what: &str) -> String {
    let Some(found) = places.find(paper, what) else { return String::new() };
    table.link(PLACE, &found.link);
    found.says
}

/// The status of a limit.
fn of_limit(limit: &Stated<'_>) -> &'static str {
    match limit.word {
        Some(Word::Kept) => MEETS,
        Some(Word::NotByGravity) => FAILS,
        _ if limit.is_over => FAILS,
        Some(Word::Likely | Word::NotShown) => OPEN,
        None => UNKNOWN,
    }
}

/// The status of what was named.
fn of_answer(answer: &Answer) -> &'static str {
    match answer.met {
        Met::Yes => MEETS,
        Met::No => FAILS,
        Met::Unknown => UNKNOWN,
        Met::Open => OPEN,
    }
}

/// Limits, and what was named.
fn asked(r: &mut Report<'_>, places: &Places, limits: &[Stated<'_>], answers: &[Answer]) {
    if limits.is_empty() && answers.is_empty() {
        return;
    }
    r.out.section("What was asked");
    let mut table = columns("Requirement");
    for limit in limits {
        let found = if limit.found.is_empty() { String::new() } else { format!("{} mg/L by calculation", limit.found) };
        let share = limit.share.as_ref().map_or_else(String::new, |share| format!("; within it: {share}"));
        let found = match (limit.is_stated(), found.is_empty()) {
            (true, _) => format!("{found}{share}"),
            (false, true) => format!("{}; {}", limit.says, limit.why.trim_end_matches('.')),
            (false, false) => format!("{}; {found}{share}", limit.says),
        };
        let stands = place(&mut table, places, STATEMENT, "What is stated");
        table.row([
            capital(limit.authority.unwrap_or("source not stated")),
            format!("{}; {}", limit.title, limit.method.unwrap_or("method not stated")),
            capital(found.trim_start_matches("; ")),
            stands,
            of_limit(limit).to_owned(),
        ]);
    }
    for answer in answers {
        let stands = place(&mut table, places, REPORT, "What was named and asked");
        table.row([
            "Enquiry, named".to_owned(),
            answer.asked.clone(),
            sentence(&answer.says),
            stands,
            of_answer(answer).to_owned(),
        ]);
    }
    r.out.table(&table);
}

/// Its status; who decided is told in our own edition alone.
fn status(edition: Edition, judged: &Judged) -> String {
    if let Some(decision) = judged.decision.as_ref().filter(|_| judged.is_settled()) {
        return decided(edition, decision);
    }
    match judged.grade() {
        Grade::Passes if judged.rule.is_among(ON_A_WORD) => SAID,
        Grade::Passes | Grade::NotApplicable => MEETS,
        Grade::Fails => FAILS,
        Grade::Warns => OPEN,
        Grade::CannotJudge => UNKNOWN,
    }
    .to_owned()
}

fn decided(edition: Edition, decision: &Decision) -> String {
    let who = decision.who.as_deref().filter(|_| edition.is_internal());
    match (decision.decision.0, who) {
        (Some(Decided::ByOthers), _) => "by others".to_owned(),
        (_, Some(who)) => format!("accepted by {who} on [date]"),
        (_, None) => "accepted by [name] on [date]".to_owned(),
    }
}

/// Rules that are not met, ask for a decision, or cannot be judged.
fn wanting(r: &mut Report<'_>, places: &Places) {
    let settled = r.settled;
    let mut table = columns("Without this fault");
    for grade in [Grade::Fails, Grade::Warns, Grade::CannotJudge] {
        for judged in settled.verdicts.iter().filter(|j| j.grade() == grade && !together(j)) {
            let because = judged.decision.as_ref().and_then(|d| d.because.as_deref());
            let because =
                because.map_or_else(String::new, |text| format!(" Decision: {}.", text.trim_end_matches('.')));
            let stands = place(&mut table, places, REPORT, &of_rule(judged.rule.id));
            table.row([
                judged.rule.source.to(r.system),
                judged.rule.title.to_owned(),
                format!("{}{because}", sentence(judged.verdict.says())),
                stands,
                status(r.edition, judged),
            ]);
        }
    }
    let stopped = settled.verdicts.iter().filter(|j| together(j)).count();
    if table.is_empty() && stopped == 0 {
        return;
    }
    r.out.section("Rules that are not met or not settled");
    r.out.remark("Each rule looks for a fault that a unit must not have; the page named explains it. A row that is open or not met is settled by a change, or accepted by a named engineer on a date, with the reason; that then stands here.");
    r.out.table(&table);
    if let Some(first) = settled.verdicts.iter().find(|j| together(j)) {
        r.out.para(&format!(
            "{stopped} more cannot be judged for one reason: {}.",
            first.verdict.says().trim_end_matches('.')
        ));
    }
}

/// Whether a rule waits for what stopped all of them.
fn together(judged: &Judged) -> bool {
    judged.verdict.stopped_ahead() && judged.decision.is_none()
}

/// Rules that are met, by where they come from.
fn passing(r: &mut Report<'_>, places: &Places) {
    let mut all: Vec<(String, &Judged)> = Vec::new();
    for judged in r.settled.verdicts.iter().filter(|j| j.grade() == Grade::Passes) {
        all.push((family(&judged.rule.source.to(r.system)), judged));
    }
    if all.is_empty() {
        return;
    }
    // What the same publication asks for stands together, the most first.
    let many = |name: &str| all.iter().filter(|(other, _)| other == name).count();
    let mut order: Vec<(core::cmp::Reverse<usize>, &str, &Judged)> =
        all.iter().map(|(name, judged)| (core::cmp::Reverse(many(name)), name.as_str(), *judged)).collect();
    order.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)));
    r.out.section("Rules that are met");
    let mut table = columns("Without this fault");
    for (_, _, judged) in order {
        let stands = place(&mut table, places, ANNEX, &of_rule(judged.rule.id));
        table.row([
            judged.rule.source.to(r.system),
            judged.rule.title.to_owned(),
            capital(judged.verdict.says()),
            stands,
            if judged.rule.is_among(ON_A_WORD) { SAID } else { MEETS }.to_owned(),
        ]);
    }
    r.out.table(&table);
}

/// What the sources of several rules have in common: the publication, or the kind of reasoning.
fn family(source: &str) -> String {
    const KINDS: [(&str, &str); 17] = [
        ("Geometry", "Geometry of unit and site"),
        ("Hydrostatics", "Hydrostatics"),
        ("Common practice", "Common practice"),
        ("Engineering judgement", "Engineering judgement"),
        ("Our proposal", "Proposed here"),
        ("Handbook", "Lists and formulas of the handbook"),
        ("From memory", "From memory"),
        ("Needs no authority", "Arithmetic"),
        ("Volumes of", "Geometry of unit and site"),
        ("Grit trap", "Proposed here"),
        ("The rule for", "Proposed here"),
        ("The ranges of", "Engineering judgement"),
        ("Abstract", "A published abstract"),
        ("Plate coefficients", "Lists and formulas of the handbook"),
        ("Set points", "Lists and formulas of the handbook"),
        ("Gravity removes", "MIL-HDBK-1005/9A, 1997"),
        ("Balance of levels", "Hydrostatics"),
    ];
    if let Some((_, name)) = KINDS.iter().find(|(begins, _)| source.starts_with(begins)) {
        return (*name).to_owned();
    }
    let first = source.split([';', ':', '(']).next().unwrap_or(source).trim();
    if first.chars().count() <= LONGEST {
        first.to_owned()
    } else {
        first.split(',').next().unwrap_or(first).to_owned()
    }
}

/// Letters of a source that still name a family.
const LONGEST: usize = 60;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sources_of_one_kind_stand_together() {
        assert_eq!(
            family("Geometry of the enquiry's levels; 6 in for a foundation is our proposal"),
            "Geometry of unit and site"
        );
        assert_eq!(family("UFGS 44 42 53: 40 to 60 degrees; MIL-HDBK-1005/9A, 1997: 45 to 55"), "UFGS 44 42 53");
        assert_eq!(family("API Publication 421 (1990), as articles quote it"), "API Publication 421");
    }
}

//! The questions to the client: what moves something and he can answer, a box for each answer; the others by their number alone.

use super::common;
use super::{EVERYBODY, Head, Paper, lacks};
use crate::reply::{self, Posed};
use crate::report::Report;
use crate::report::blocks::{Table, blank, slim, wide};
use crate::report::verdicts::{STAYS, changes};
use crate::summary::{also_asked, lower};
use stillrise_checks::ask::Ask;
use stillrise_search::Settled;
use stillrise_search::questions::Question;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "questions",
    title: "Questions to the client",
    about: "For whoever knows the place and the water: what is still asked, most important first, what each answer would change, and room to write it.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::questions,
    make: |r, _| make(r),
};

/// Whether something is asked at all.
pub(super) fn is_empty(settled: &Settled) -> bool {
    reply::every_question(settled).is_empty() && reply::contradictions(settled).is_empty()
}

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    let twice = reply::contradictions(settled);
    if !twice.is_empty() {
        r.out.section("Two answers to one question");
        let mut table = Table::new([wide("What was said; which of the two holds?", 2.6), wide("Answer", 1.4)]);
        twice.into_iter().for_each(|text| table.row([text, String::new()]));
        r.out.form(&table, BOX);
    }
    let posed = reply::every_question(settled);
    if !posed.is_empty() {
        r.out.section("Please answer");
        let moves: Vec<String> = posed.iter().map(|one| what_moves(settled, one)).collect();
        // Where nothing was sized nothing can be told of most of them.
        let told = moves.iter().any(|text| !text.is_empty());
        let columns = [slim("No."), wide("Question, and what was taken meanwhile", 2.6)];
        let columns = columns.into_iter().chain(told.then(|| {
            wide("What the answer would change: oil that leaves, the unit, what cannot be judged without it", 2.0)
        }));
        let mut table = Table::new(columns.chain([blank("Answer", 46.0)]));
        for (one, moves) in posed.iter().zip(moves) {
            let row = [one.number.to_string(), one.text.clone()].into_iter();
            table.row(row.chain(told.then_some(moves)).chain([String::new()]));
        }
        r.out.form(&table, BOX);
    }
    if let Some(text) = others(settled, &posed) {
        r.out.para(&text);
    }
    let mut by = Table::new([wide("Answered by", 1.4), wide("Position", 1.2), wide("Date", 0.8)]);
    by.row(["", "", ""]);
    r.out.form(&by, BOX);
    common::cautions(r, "");
}

/// Height of an empty box, mm.
const BOX: f64 = 9.0;

/// What the answers to a question would change: of the assumptions behind it the one that moves most; else which rules wait for it.
fn what_moves(settled: &Settled, posed: &Posed) -> String {
    let behind = settled.questions().iter().filter(|q| posed.keys.contains(&q.key));
    let most = behind.fold(None, |most: Option<&Question>, q| match most {
        Some(other) if other.weight >= q.weight => Some(other),
        _ => Some(q),
    });
    let tells = |q: &&Question| q.weight >= STAYS && !q.outcomes.is_empty() || !q.flows.is_empty();
    if let Some(most) = most.filter(tells) {
        return changes(settled, most);
    }
    let waits = |ask: &Ask| match &ask.key {
        Some(key) => posed.keys.iter().any(|own| own == key),
        None => posed.text.starts_with(&*ask.question),
    };
    let mut rules: Vec<String> = Vec::new();
    for judged in settled.verdicts.iter().filter(|judged| judged.verdict.asks().iter().any(waits)) {
        rules.push(lower(judged.rule.title));
    }
    match (rules.is_empty(), settled.job.design.performance.is_some()) {
        (false, _) => format!("Not judged yet: {}.", rules.join("; ")),
        (true, true) => {
            "No other answer was worked through; on it hangs whether the calculation holds for this water.".to_owned()
        }
        (true, false) => String::new(),
    }
}

/// How many figures were taken beside, and where they stand.
fn others(settled: &Settled, posed: &[Posed]) -> Option<String> {
    let asked = |key: &str| posed.iter().any(|one| one.keys.iter().any(|own| own == key));
    let taken = settled.questions().iter().filter(|q| !q.contradiction && !asked(&q.key)).count();
    let ranked: Vec<&Question> = settled.questions().iter().collect();
    let open = also_asked(settled, &ranked);
    let open = open.iter().filter(|u| !u.ask.key.as_deref().is_some_and(asked)).count();
    let taken = match taken {
        0 => None,
        1 => Some("One more figure was taken without being asked for here: another one would move the result by less than a twentieth, or it is ours to choose. It stands".to_owned()),
        n => Some(format!("{n} more figures were taken without being asked for here: others would move the result by less than a twentieth, or they are ours to choose. They stand")),
    };
    let taken = taken
        .map(|text| format!("{text} in the calculation report, \"Assumptions and open questions\", and in the trail."));
    let open = match open {
        0 => None,
        1 => Some("One more question stands with the rules that cannot judge, in the same report.".to_owned()),
        n => Some(format!("{n} more questions stand with the rules that cannot judge, in the same report.")),
    };
    let both: Vec<String> = taken.into_iter().chain(open).collect();
    (!both.is_empty()).then(|| both.join(" "))
}

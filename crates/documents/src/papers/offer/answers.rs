//! What must be answered.

use crate::papers::questions;
use crate::reply;
use crate::report::{Report, sentence};
use stillrise_search::Settled;

/// Questions that are asked here; the paper of the questions has the others.
const QUESTIONS: usize = 8;
/// Those of them that stand here however much else does.
const FIRST: usize = 4;

/// The questions, those first that move most.
pub(super) fn texts(settled: &Settled) -> Vec<String> {
    reply::every_question(settled).into_iter().map(|one| one.text).collect()
}

/// The section.
pub(super) fn section(r: &mut Report<'_>) {
    let questions = texts(r.settled);
    if questions.is_empty() {
        return;
    }
    r.out.section("What you must answer");
    let all = questions.len();
    let mut items = questions.into_iter().take(QUESTIONS).map(|question| {
        let ends = question.trim_end();
        (if ends.ends_with('?') { ends.to_owned() } else { sentence(&question) }, String::new())
    });
    let first: Vec<_> = items.by_ref().take(FIRST).collect();
    let then: Vec<_> = items.collect();
    r.out.list(false, first);
    if !then.is_empty() {
        r.out.list(false, then);
        r.out.spare();
    }
    let paper = questions::PAPER.title;
    let remark = |told: usize| match all.saturating_sub(told) {
        0 => {
            format!("Those first whose answers move the offer most. Room for the answers is in the paper \"{paper}\".")
        }
        n => format!(
            "Those first whose answers move the offer most. {n} more, and room for the answers, are in the paper \"{paper}\"."
        ),
    };
    r.out.remark_or(&remark(QUESTIONS), &remark(FIRST));
}

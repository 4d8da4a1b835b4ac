//! What must be answered.

use crate::papers::questions;
use crate::reply;
use crate::report::{Report, sentence};
use stillrise_search::Settled;

/// Questions that are asked here; the paper of the questions has the others.
const QUESTIONS: usize = 8;

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
    let more = questions.len().saturating_sub(QUESTIONS);
    let items = questions.into_iter().take(QUESTIONS).map(|question| {
        let ends = question.trim_end();
        (if ends.ends_with('?') { ends.to_owned() } else { sentence(&question) }, String::new())
    });
    r.out.list(true, items);
    let more = match more {
        0 => format!(" Room for the answers is in the paper \"{}\".", questions::PAPER.title),
        n => format!(" {n} more, and room for the answers, are in the paper \"{}\".", questions::PAPER.title),
    };
    r.out.remark(&format!("Those first whose answers move the offer most.{more}"));
}

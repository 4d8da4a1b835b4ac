//! A revision that is issued: what bars it, what is kept of it, and what has changed since.

mod changes;
mod manifest;
mod numbers;
mod words;

pub use changes::{Because, By, Changes, Number, changes};
pub use manifest::{Input, Kind, Manifest, RESULTS, manifest, read_manifest, what_differs};
pub use numbers::{results, results_bytes};
pub use words::{changes_json, changes_text};

use stillrise_checks::{By as Decides, Judged};
use stillrise_design::enquiry::blocks::Status;
use stillrise_search::Settled;
use stillrise_units::Fault;

/// What bars a revision from being issued, all of it.
#[must_use]
pub fn bars(settled: &Settled) -> Vec<Fault> {
    let head = &settled.job.enquiry.head;
    let is_blank = |text: Option<&str>| text.is_none_or(|text| text.trim().is_empty());
    let mut all = Vec::new();
    if is_blank(head.revision.as_deref()) {
        let remedy = format!("write revision = {}", head.revision().spec.like);
        all.push(Fault::new(head.revision().place(), "is blank: a revision that is issued has a name", remedy));
    }
    if is_blank(head.date.as_deref()) {
        let remedy = format!("write date = {}, the day of issue; nothing is dated by a clock", head.date().spec.like);
        all.push(Fault::new(head.date().place(), "is blank: a revision that is issued has a date", remedy));
    }
    if matches!(head.status.0, None | Some(Status::Preliminary)) {
        let words: Vec<String> =
            [Status::ForApproval, Status::Issued, Status::AsBuilt].map(|s| format!("\"{}\"", s.word())).into();
        let remedy = format!("write what it is issued as: status = {}", words.join(" or "));
        all.push(Fault::new(head.status().place(), "is preliminary, which is for discussion alone", remedy));
    }
    all.extend(settled.verdicts.iter().filter_map(barred));
    all
}

/// A rule that fails undecided, or by a decision that nobody signed.
fn barred(judged: &Judged) -> Option<Fault> {
    let place = format!("rule {}", judged.rule.id);
    if judged.stands_failed() {
        let reason = format!("fails, and nobody decided on it: {}", judged.verdict.says());
        let remedy = format!("{} Or decide on it, with reason, name and date", judged.rule.remedy);
        return Some(Fault::new(place, reason, remedy));
    }
    let decision = judged.decision.as_ref().filter(|_| judged.by == Decides::Engineer && judged.is_settled())?;
    let lacks = match (decision.who.as_deref().is_none_or(|who| who.trim().is_empty()), decision.date.0.is_none()) {
        (true, true) => "neither name nor date",
        (true, false) => "no name",
        (false, true) => "no date",
        (false, false) => return None,
    };
    let remedy = "add who = \"..\" and date = \"..\" to the decision";
    Some(Fault::new(place, format!("was decided with {lacks}"), remedy))
}

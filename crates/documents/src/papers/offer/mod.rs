//! The offer summary: what is bought, what it needs, what it will do and on which conditions, what is left out, what must be
//! answered. Two pages for whoever decides; the five answers in short stand first.

mod answers;
mod conditions;
mod does;
mod excluded;
mod needs;
mod short;

use super::{EVERYBODY, Head, Paper, lacks};
use crate::reply::{self, Of};
use crate::report::{Report, sentence};
use crate::scope::{self, By, Group};
use crate::summary::lower;
use stillrise_design::performance::limit::LimitVerdict;
use stillrise_design::performance::promise::{Promise, number};
use stillrise_design::triage::Weight;
use stillrise_search::Settled;
use stillrise_search::pick;

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

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    r.out.other(short::block(settled));
    bought(r, settled);
    needs::section(r, settled);
    does::section(r, settled);
    conditions::section(r, settled);
    answers::section(r);
    r.out.remark("Preliminary, no quotation. For review by a licensed engineer; local codes and the permit govern. Confined space, flammable vapour and lifting: by permit and by trained people only.");
}

/// How a unit is meant.
enum Condition {
    /// It is offered.
    None,
    /// Once findings are settled.
    Settled,
    /// Once something ahead of it takes care of this.
    Ahead(String),
    /// With something beside it that keeps the limits.
    Beside,
    /// With something ahead or behind, as what comes is no duty for gravity alone.
    Blocked,
}

/// How the unit of a job is meant; the mail says the same at length.
fn condition(settled: &Settled) -> Condition {
    let blocked = settled.job.design.triage.iter().any(|line| line.weight == Weight::Blocks);
    match settled.pick.as_ref().and_then(|pick| pick.condition.as_ref()) {
        _ if blocked => Condition::Blocked,
        Some(pick::Condition::Ahead(rule)) => Condition::Ahead(lower(rule.title)),
        Some(pick::Condition::Limit) => Condition::Beside,
        None if settled.fails() => Condition::Settled,
        None => Condition::None,
    }
}

/// What is bought, beyond what the answers in short say.
fn bought(r: &mut Report<'_>, settled: &Settled) {
    let Some(train) = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands()) else {
        return;
    };
    r.out.section("What you buy");
    let (lead, facts) = reply::offered(settled, train);
    if !lead.is_empty() {
        r.out.para(&lead);
    }
    let mut all = told(&facts, Of::Bought);
    let rows = scope::rows(settled);
    let with: Vec<String> =
        rows.iter().filter(|row| row.group == Group::Unit && row.by == By::Maker).map(|row| lower(&row.item)).collect();
    if !with.is_empty() {
        all.push((format!("It comes with: {}.", with.join("; ")), String::new()));
    }
    r.out.list(false, all);
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

/// What leaves at most, of all cases, which may be another than the one from which the word comes; nothing where it is not
/// predicted. "10 mg/L or less", where that is the floor of what can be promised.
fn leaves_at_most(verdict: &LimitVerdict) -> Option<String> {
    if !verdict.predicted || verdict.solids.is_some() {
        return None;
    }
    let most = Promise::of(verdict.most.expected.q, verdict.most.influent.q).brief();
    Some(match most.strip_prefix("≤ ") {
        Some(floor) => format!("{floor} mg/L or less"),
        None => format!("some {most} mg/L"),
    })
}

/// What arrives in the case in which most leaves, at its peak where that counts; nothing where it is not predicted.
fn arrives_then(verdict: &LimitVerdict) -> Option<String> {
    leaves_at_most(verdict)?;
    Some(number(verdict.most.influent.q))
}

/// Of it, what cannot rise, where that alone lies above the limit.
fn stays(verdict: &LimitVerdict) -> Option<String> {
    let stays = Some(verdict.stays.q).filter(|stays| *stays > verdict.against.q && verdict.solids.is_none());
    stays.filter(|_| verdict.predicted).map(number)
}

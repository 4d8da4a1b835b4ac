//! Why a job does not give a document: in the words in which the list of documents tells it.

use stillrise_search::Settled;

/// What keeps a document from being made of a job; `None` where nothing does.
pub(crate) type Lacks = fn(&Settled) -> Option<&'static str>;

/// Every job has something to say in it.
pub(crate) fn nothing(_: &Settled) -> Option<&'static str> {
    None
}

/// It speaks of a unit.
pub(crate) fn unit(settled: &Settled) -> Option<&'static str> {
    settled.job.design.train.is_none().then_some("no unit was laid out on what was said")
}

/// It speaks of a unit that is to be bought.
pub(crate) fn offer(settled: &Settled) -> Option<&'static str> {
    let stands = settled.job.enquiry.unit_stands().then_some("the unit stands already, and nothing is offered");
    unit(settled).or(stands)
}

/// It speaks of waters and flows.
pub(crate) fn basis(settled: &Settled) -> Option<&'static str> {
    settled.job.design.basis.is_none().then_some("no flow could be worked out from what was said")
}

/// It speaks of rules.
pub(crate) fn rules(settled: &Settled) -> Option<&'static str> {
    settled.verdicts.is_empty().then_some("no rule was held against the job")
}

/// It speaks of findings.
pub(crate) fn findings(settled: &Settled) -> Option<&'static str> {
    let none = !settled.verdicts.iter().any(|judged| judged.verdict.is_finding());
    none.then_some("no rule fails or warns")
}

/// It lists values.
pub(crate) fn trail(settled: &Settled) -> Option<&'static str> {
    settled.job.ledger.entries.is_empty().then_some("nothing was calculated")
}

/// It shows what leaves.
pub(crate) fn prediction(settled: &Settled) -> Option<&'static str> {
    settled.job.design.performance.is_none().then_some("no effluent could be predicted from what was said")
}

/// It asks.
pub(crate) fn questions(settled: &Settled) -> Option<&'static str> {
    super::questions::is_empty(settled).then_some("nothing is asked whose answer would move anything")
}

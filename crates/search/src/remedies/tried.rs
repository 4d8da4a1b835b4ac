//! A changed enquiry worked as far as its rules and words: what `settle` finds, without the questions and the neighbours, which
//! nobody reads of a change that is only tried.

use crate::pick::{self, Pick, found};
use crate::risk::ready;
use crate::{shortfall, words};
use stillrise_checks::{Grade, Judged, Rule, Subject, judge};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::{Job, Ledger, WhatIf};

/// What a changed enquiry comes to.
pub(super) struct Tried {
    /// The job.
    pub job: Job,
    /// What every rule says.
    pub verdicts: Vec<Judged>,
    /// The unit; `None` where nothing fits.
    pub pick: Option<Pick>,
}

/// Works it; `None` where what the rule comes to then does not settle it.
pub(super) fn tried(written: &Enquiry, demo: &Range, rule: &Rule, settles: &dyn Fn(Grade) -> bool) -> Option<Tried> {
    let today = written.today();
    let enquiry = today.as_ref().unwrap_or(written);
    let range = enquiry.range.as_ref().unwrap_or(demo);
    let nothing = WhatIf::default();
    let mut ledger = Ledger::default();
    let mut design = begin(&mut ledger, &nothing, enquiry);
    let mut pick = found(enquiry, range, &nothing, &design, None);
    if let Some(taken) = &pick {
        let source = taken.source(enquiry, range);
        design = complete(&mut ledger, &nothing, enquiry, design, &source, taken.count, Depth::Full);
        if design.performance.is_none() {
            design.stops.push(shortfall::stop());
            design.train = None;
            pick = None;
        }
    } else if design.basis.is_some() {
        let named = enquiry.unit.model.is_some();
        design.stops.push(if named { pick::no_unit(enquiry, range) } else { shortfall::stop() });
    }
    let is_settled = |design: &Design, ledger: &Ledger| {
        let verdict = (rule.look)(&Subject { enquiry, design, ledger: Some(ledger), read: false });
        settles(verdict.grade())
    };
    // What is heard beside the calculation only ever weakens a word, and costs most of the time.
    if !is_settled(&design, &ledger) {
        return None;
    }
    if let Some(heard) = words::hear(enquiry, ready(enquiry), &design, &ledger) {
        words::settle(enquiry, &mut design, &mut ledger, &heard);
        if !is_settled(&design, &ledger) {
            return None;
        }
    }
    let job = Job { enquiry: enquiry.clone(), design, ledger };
    let verdicts =
        judge(&Subject { enquiry: &job.enquiry, design: &job.design, ledger: Some(&job.ledger), read: true });
    Some(Tried { job, verdicts, pick })
}

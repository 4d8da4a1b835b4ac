//! Open questions: every assumption that a customer could answer, ranked by how far the plausible
//! answers move the effluent, the unit and the verdict.

use crate::pick::{Pick, effluent, pick, try_unit};
use std::collections::BTreeSet;
use std::sync::atomic::{AtomicUsize, Ordering};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::provenance::{Assumption, Entry, Origin, show};
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, System, Typed, math};

/// What an answer would lead to.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The answer.
    pub answer: String,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
    /// The unit that would be taken.
    pub unit: String,
    /// The worst word on a limit.
    pub word: Option<Word>,
}

/// One open question.
#[derive(Debug, Clone)]
pub struct Question {
    /// The key of the enquiry that takes the answer.
    pub key: String,
    /// What it is about, in a phrase.
    pub label: String,
    /// The question.
    pub text: String,
    /// What stands in for the answer now.
    pub now: String,
    /// Lowest and highest plausible answer.
    pub range: (String, String),
    /// Where default and range come from.
    pub source: String,
    /// What the two ends would lead to; empty when nothing was sized.
    pub outcomes: Vec<Outcome>,
    /// How far they move the result: larger is more.
    pub weight: f64,
}

/// Questions without a ranking, in the order of the trail.
#[must_use]
pub fn unranked(ledger: &Ledger, system: System) -> Vec<Question> {
    assumptions(ledger).into_iter().map(|(entry, a)| question(entry, a, system)).collect()
}

/// The assumptions a customer could answer, each once.
fn assumptions(ledger: &Ledger) -> Vec<(&Entry, &Assumption)> {
    let mut seen = BTreeSet::new();
    ledger
        .entries
        .iter()
        .filter_map(|e| match &e.origin {
            Origin::Assumed(a) if !a.question.is_empty() && seen.insert(a.key.clone()) => Some((e, a)),
            _ => None,
        })
        .collect()
}

fn question(entry: &Entry, a: &Assumption, system: System) -> Question {
    Question {
        key: a.key.clone(),
        label: entry.label.clone(),
        text: a.question.clone(),
        now: entry.shown(system),
        range: (show(&a.low, entry.units, system), show(&a.high, entry.units, system)),
        source: a.source.clone(),
        outcomes: Vec::new(),
        weight: 0.0,
    }
}

fn word(design: &Design) -> Option<Word> {
    design.performance.as_ref().and_then(|p| p.limits.iter().map(|l| l.word).max())
}

/// Ranks the questions around the unit taken.
#[must_use]
pub fn rank(enquiry: &Enquiry, range: &Range, design: &Design, ledger: &Ledger, taken: &Pick) -> Vec<Question> {
    let system = enquiry.system();
    let base = (effluent(design), taken.name(range), word(design));
    let asked = assumptions(ledger);
    let one = |(entry, a): &(&Entry, &Assumption)| {
        let mut q = question(entry, a, system);
        for answer in [&a.low, &a.high].into_iter().filter(|answer| **answer != entry.value) {
            let outcome = outcome(enquiry, range, taken, &a.key, answer, entry, system);
            q.weight += moved(&base, &outcome);
            q.outcomes.push(outcome);
        }
        q
    };
    // Each answer is a design of its own: they are found side by side, whoever is free takes the next,
    // and put back in order, so that the result does not depend on the number of threads.
    let threads = std::thread::available_parallelism().map_or(1, core::num::NonZero::get).min(8);
    let next = AtomicUsize::new(0);
    let work = || {
        let mut done = Vec::new();
        loop {
            let index = next.fetch_add(1, Ordering::Relaxed);
            match asked.get(index) {
                Some(each) => done.push((index, one(each))),
                None => return done,
            }
        }
    };
    let mut done = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads).map(|_| scope.spawn(work)).collect();
        let mut done = work();
        for other in others {
            // A fault of the program is passed on, never turned into a list with questions missing.
            done.extend(other.join().unwrap_or_else(|fault| std::panic::resume_unwind(fault)));
        }
        done
    });
    done.sort_by_key(|(index, _)| *index);
    let mut questions: Vec<Question> = done.into_iter().map(|(_, question)| question).collect();
    // A range of one value asks nothing.
    questions.retain(|q| !q.outcomes.is_empty());
    questions.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    questions
}

fn outcome(
    enquiry: &Enquiry,
    range: &Range,
    taken: &Pick,
    key: &str,
    answer: &Arg,
    entry: &Entry,
    system: System,
) -> Outcome {
    let mut what_if = WhatIf::default();
    what_if.0.insert(key.to_owned(), answer.clone());
    let begun = begin(&mut Off, &what_if, enquiry);
    // The effluent is that of the unit taken: what the client would get if the answer came late.
    let same = try_unit(enquiry, &what_if, &begun, &taken.source(enquiry, range), taken.count, Depth::Limits);
    let (other, _) = pick(enquiry, range, &what_if, &begun, Some((taken, &same)));
    Outcome {
        answer: show(answer, entry.units, system),
        effluent: effluent(&same),
        unit: match other {
            Some(pick) if pick.fits || pick == *taken => pick.name(range),
            _ => "nothing fits".to_owned(),
        },
        word: word(&same),
    }
}

/// How far an answer moves the result. One doubling of the effluent weighs as much as another unit
/// or another word on a limit.
fn moved(base: &(Option<Concentration>, String, Option<Word>), outcome: &Outcome) -> f64 {
    let change = match (base.0, outcome.effluent) {
        (Some(a), Some(b)) if a.si() > 0.0 && b.si() > 0.0 => {
            math::abs(math::ln(b.si() / a.si())) / core::f64::consts::LN_2
        }
        (None, None) => 0.0,
        _ => 1.0,
    };
    change + f64::from(u8::from(outcome.unit != base.1)) + f64::from(u8::from(outcome.word != base.2))
}

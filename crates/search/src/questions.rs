//! Open questions: every assumption that a customer could answer. First those that hold the word on a limit back,
//! then by whether the answer leads to another unit and how much of the effluent's spread hangs on it.

use crate::pick::{Pick, effluent, pick, try_unit};
use crate::risk::Risk;
use crate::side_by_side::side_by_side;
use crate::words::{End, Heard};
use std::collections::BTreeSet;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::provenance::{Assumption, Entry, Origin, show};
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, System};

/// What a question weighs more that holds the word on a limit back: it stands before all that only move numbers.
const HOLDS: f64 = 10.0;

/// What an answer would lead to.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The answer.
    pub answer: String,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
    /// What would be held against the limits, most of those predicted.
    pub held: Option<Concentration>,
    /// The unit that would be taken.
    pub unit: String,
    /// The word on each limit that would then stand, in the order of the verdicts, everything else heard as now;
    /// `None` where the answer cannot lift a word.
    pub words: Option<Vec<Word>>,
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
    /// How much of the effluent's spread hangs on the answer: its swing squared over those of all uncertain inputs,
    /// or a total index of Sobol' once a study found it; `None` when nothing was sized.
    pub share: Option<f64>,
    /// How far the answer moves the result, larger is more: that share, one more for another unit, and much more where
    /// the word on a limit hangs on it.
    pub weight: f64,
    /// The limits whose word it holds back, by their place among the verdicts.
    pub holds: Vec<usize>,
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
        share: None,
        weight: 0.0,
        holds: Vec::new(),
    }
}

/// What is held against the limits: the most of those predicted.
fn held(design: &Design) -> Option<Concentration> {
    let limits = design.performance.iter().flat_map(|p| p.limits.iter().filter(|l| l.predicted));
    limits.map(|l| l.expected.q).fold(None, |most, c| Some(most.map_or(c, |m: Concentration| m.max(c))))
}

/// Ranks the questions around the unit taken, by what was heard of each.
#[must_use]
pub(crate) fn rank(
    enquiry: &Enquiry,
    range: &Range,
    design: &Design,
    ledger: &Ledger,
    taken: &Pick,
    heard: Option<&Heard>,
) -> Vec<Question> {
    let system = enquiry.system();
    let base = taken.name(range);
    let asked = assumptions(ledger);
    let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let shares = heard.map(shares).unwrap_or_default();
    let one = |(entry, a): &(&Entry, &Assumption)| {
        let mut q = question(entry, a, system);
        q.holds = (0..limits.len()).filter(|k| limits[*k].held_by().any(|key| key == a.key)).collect();
        for answer in [&a.low, &a.high].into_iter().filter(|answer| **answer != entry.value) {
            let mut outcome = outcome(enquiry, range, taken, &a.key, answer, entry, system);
            if !q.holds.is_empty() {
                outcome.words = crate::words::under(enquiry, range, taken, &a.key, answer);
            }
            q.weight = q.weight.max(f64::from(u8::from(outcome.unit != base)));
            q.outcomes.push(outcome);
        }
        if !q.holds.is_empty() {
            q.weight += HOLDS;
        }
        q.share = heard.and_then(|h| h.inputs.iter().position(|i| i.key == a.key)).and_then(|k| shares.get(k)).copied();
        q.weight += q.share.unwrap_or(0.0);
        q
    };
    // Each answer is a design of its own.
    let mut questions = side_by_side(asked.len(), 1, || (), |k, ()| one(&asked[k]));
    // A range of one value asks nothing.
    questions.retain(|q| !q.outcomes.is_empty());
    questions.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    questions
}

/// Each input's part in the spread: the square of its swing over the sum of them all.
fn shares(heard: &Heard) -> Vec<f64> {
    let swing = |ends: &Vec<End>| {
        let results = ends.iter().filter_map(|e| Some(e.reading.as_ref()?.result)).filter(|r| r.is_finite());
        let (low, high) = results.fold((heard.now.result, heard.now.result), |(l, h), r| (l.min(r), h.max(r)));
        (high - low) * (high - low)
    };
    let squares: Vec<f64> = heard.ends.iter().map(swing).collect();
    let sum: f64 = squares.iter().sum();
    squares.into_iter().map(|s| if sum > 0.0 { s / sum } else { 0.0 }).collect()
}

/// Ranks the questions once more, by the shares of a whole study.
pub fn again(questions: &mut [Question], risk: &Risk) {
    for question in questions.iter_mut() {
        let Some(before) = question.share else { continue };
        let carrier = risk.carriers.iter().find(|c| c.input.key == question.key);
        let share = carrier.map_or(0.0, |c| c.share.total);
        question.weight += share.clamp(0.0, 1.0) - before.clamp(0.0, 1.0);
        question.share = Some(share);
    }
    questions.sort_by(|a, b| b.weight.total_cmp(&a.weight));
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
        held: held(&same),
        unit: match other {
            Some(pick) if pick.fits || pick == *taken => pick.name(range),
            _ => "nothing fits".to_owned(),
        },
        words: None,
    }
}

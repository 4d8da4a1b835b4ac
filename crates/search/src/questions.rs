//! Open questions: every assumption that a customer could answer, ranked by how much of the effluent's
//! spread hangs on the answer, and by whether it leads to another unit or another word on a limit.

use crate::pick::{Pick, effluent, pick, try_unit};
use crate::risk::inputs::{Input, inputs};
use crate::risk::{Model, Risk, patient};
use crate::side_by_side::side_by_side;
use std::collections::BTreeSet;
use stillrise_design::claims::answered;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::provenance::{Assumption, Entry, Origin, show};
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, System};

/// Rows of the study behind the ranking: enough to tell what matters from what does not.
const ROWS: usize = 20;
/// Rows in which an input must have changed nothing to be left at that.
const PROBE: usize = 3;

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
    /// How much of the effluent's spread hangs on the answer, together with all others it acts through:
    /// a total index of Sobol', roughly, from few rows; `None` when nothing was sized.
    pub share: Option<f64>,
    /// How far the answer moves the result, larger is more: that share, and one more each for another unit
    /// and for another word on a limit.
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
        share: None,
        weight: 0.0,
    }
}

fn word(design: &Design) -> Option<Word> {
    design.performance.as_ref().and_then(|p| p.limits.iter().map(|l| l.word).max())
}

/// What is held against the limits: the most of those predicted.
fn held(design: &Design) -> Option<Concentration> {
    let limits = design.performance.iter().flat_map(|p| p.limits.iter().filter(|l| l.predicted));
    limits.map(|l| l.expected.q).fold(None, |most, c| Some(most.map_or(c, |m: Concentration| m.max(c))))
}

/// Ranks the questions around the unit taken.
#[must_use]
pub fn rank(enquiry: &Enquiry, range: &Range, design: &Design, ledger: &Ledger, taken: &Pick) -> Vec<Question> {
    let system = enquiry.system();
    let base = (taken.name(range), word(design));
    let asked = assumptions(ledger);
    let one = |(entry, a): &(&Entry, &Assumption)| {
        let mut q = question(entry, a, system);
        for answer in [&a.low, &a.high].into_iter().filter(|answer| **answer != entry.value) {
            let outcome = outcome(enquiry, range, taken, &a.key, answer, entry, system);
            q.weight = q.weight.max(moved(&base, &outcome));
            q.outcomes.push(outcome);
        }
        q
    };
    // Each answer is a design of its own.
    let mut questions = side_by_side(asked.len(), 1, || (), |k, ()| one(&asked[k]));
    // How much of the effluent's spread hangs on each answer, all uncertain inputs drawn together.
    let inputs = inputs(ledger);
    let keys: Vec<String> = inputs.iter().map(|i| i.key.clone()).collect();
    // Whose ends alone move nothing is not asked again together with the others.
    let now = (effluent(design), held(design), base.1);
    let still = |input: &Input| {
        let found = questions.iter().find(|q| q.key == input.key);
        found.is_some_and(|q| q.outcomes.iter().all(|o| (o.effluent, o.held, o.word) == now))
    };
    let probe = |input: &Input| if still(input) { 0 } else { PROBE };
    let shares = Model::new(enquiry, design, inputs).and_then(|m| m.shares(ROWS, &probe, &patient)).unwrap_or_default();
    for question in &mut questions {
        question.share = keys.iter().position(|key| *key == question.key).and_then(|k| shares.get(k)).map(|s| s.total);
        question.weight += question.share.unwrap_or(0.0).clamp(0.0, 1.0);
    }
    // A range of one value asks nothing.
    questions.retain(|q| !q.outcomes.is_empty());
    questions.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    questions
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
    let enquiry = &*answered(enquiry, &what_if);
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
        word: word(&same),
    }
}

/// Whether an answer leads to another unit, and to another word on a limit: one each.
fn moved(base: &(String, Option<Word>), outcome: &Outcome) -> f64 {
    f64::from(u8::from(outcome.unit != base.0)) + f64::from(u8::from(outcome.word != base.1))
}

//! Open questions: every assumption that a customer could answer. First those that hold the word on a limit back,
//! then by whether the answer leads to another unit and how much of the effluent's spread hangs on it.

use crate::offered::Offered;
use crate::pick::{Pick, effluent, found, try_unit};
use crate::risk::{Risk, ready};
use crate::side_by_side::side_by_side;
use crate::words::{End, Heard};
use std::collections::BTreeSet;
use stillrise_design::basis::Ready;
use stillrise_design::claims::answered;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::Water;
use stillrise_design::enquiry::declared::Declared;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin, begin_on};
use stillrise_design::moves_nothing;
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::floor;
use stillrise_design::provenance::{Assumption, Entry, Origin, show_in_prose, told};
use stillrise_design::{Ledger, Off, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, Flow, System, Time, Typed, Volume};

/// What a question weighs more that holds the word on a limit back: it stands before all that only move numbers.
const HOLDS: f64 = 10.0;

/// What a change of storage weighs beside a change of unit or effluent.
const STORED: f64 = 0.3;

/// Whether it is told how little another answer turns the unit: any desk can measure how warm the water is.
fn is_halved(declared: Declared) -> bool {
    declared.is(Water::coldest) || declared.is(Water::warmest)
}

/// So often the way to that answer is halved: to a sixteenth.
const HALVINGS: usize = 4;

/// What an answer would lead to.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The answer.
    pub answer: String,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
    /// Total oil that would arrive then.
    pub arrives: Option<Concentration>,
    /// What would be held against the limits, most of those predicted.
    pub held: Option<Concentration>,
    /// The unit that would be taken, or that none would without a condition; `None` where the one taken stands on a
    /// condition itself, and none was searched for under the answer.
    pub unit: Option<Offered>,
    /// Of a temperature that asks for another unit: an answer nearer to what was taken that does so already.
    pub turns_at: Option<String>,
    /// Its price, all of them together, in the range's currency; `None` where the range states none.
    pub price: Option<f64>,
    /// What would have to be stored, and how often emptied, with the unit now taken.
    pub stores: Stores,
    /// The word on each limit that would then stand, in the order of the verdicts, everything else heard as now;
    /// `None` where the answer cannot lift a word.
    pub words: Option<Vec<Word>>,
}

/// What a design stores: what moves even where the effluent stays.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Stores {
    /// Volume held back ahead of the unit.
    pub held_back: Option<Volume>,
    /// Time between two emptyings of the sludge.
    pub sludge: Option<Time>,
    /// Time to the oil alarm.
    pub oil: Option<Time>,
    /// Room for a spill, less the spill.
    pub spill: Option<Volume>,
}

impl Stores {
    fn of(design: &Design) -> Self {
        let storage = design.performance.as_ref().map(|p| &p.storage);
        Self {
            held_back: design.train.as_ref().and_then(|t| t.equalisation.as_ref()).map(|e| e.volume().q),
            sludge: storage.and_then(|s| s.sludge_days).map(|v| v.q),
            oil: storage.and_then(|s| s.oil_days).map(|v| v.q),
            spill: storage.and_then(|s| s.spill.as_ref()).map(|s| s.spare.q),
        }
    }

    /// How far another differs, by the largest change of one of them over the larger of the two; one at the most.
    fn moved(&self, other: &Self) -> f64 {
        let change = |a: Option<f64>, b: Option<f64>| match (a, b) {
            (Some(a), Some(b)) => (a - b).abs() / a.abs().max(b.abs()).max(f64::MIN_POSITIVE),
            (None, None) => 0.0,
            _ => 1.0,
        };
        let si = |v: Option<Volume>| v.map(Typed::si);
        let pairs = [
            change(si(self.held_back), si(other.held_back)),
            change(self.sludge.map(often), other.sludge.map(often)),
            change(self.oil.map(often), other.oil.map(often)),
            change(si(self.spill), si(other.spill)),
        ];
        pairs.into_iter().fold(0.0, f64::max).min(1.0)
    }
}

/// Times longer than two years count as that: emptied as rarely, nobody minds.
fn often(time: Time) -> f64 {
    time.si().min(2.0 * 365.25 * 86_400.0)
}

/// One open question.
#[derive(Debug, Clone)]
pub struct Question {
    /// The key of the enquiry that takes the answer.
    pub key: String,
    /// How that key is declared.
    pub declared: Declared,
    /// What it is about, in a phrase.
    pub label: String,
    /// The question.
    pub text: String,
    /// What stands in for the answer now, three digits.
    pub now: String,
    /// Whether it asks between claims that contradict.
    pub contradiction: bool,
    /// Lowest and highest plausible answer.
    pub range: (String, String),
    /// Where default and range come from.
    pub source: String,
    /// What the two ends would lead to; empty when nothing was sized.
    pub outcomes: Vec<Outcome>,
    /// The design flow at the two ends, where nothing was sized.
    pub flows: Vec<(String, Flow)>,
    /// How much of the effluent's spread hangs on the answer: its swing squared over those of all uncertain inputs,
    /// or a total index of Sobol' once a study found it; `None` when nothing was sized.
    pub share: Option<f64>,
    /// How far the answer moves the result, larger is more: that share, one more for another unit and for what decides
    /// whether a spill is held ahead, and much more where the word on a limit hangs on it; never less than the part by
    /// which the printed effluent moves.
    pub weight: f64,
    /// The limits whose word it holds back, by their place among the verdicts.
    pub holds: Vec<usize>,
}

/// Questions where nothing was sized, those first that move the flow and the oil most; the others in the order of the
/// trail.
#[must_use]
pub fn by_basis(enquiry: &Enquiry, design: &Design, ledger: &Ledger) -> Vec<Question> {
    let system = enquiry.system();
    let flow = |d: &Design| d.basis.as_ref().and_then(|b| b.design_flow()).map(|v| v.q);
    let oil = |d: &Design| {
        let contents = d.basis.iter().flat_map(|b| &b.cases).filter_map(|c| Some(c.content.as_ref()?.total.q.si()));
        contents.fold(0.0, f64::max)
    };
    let moved = |a: f64, b: f64| (a - b).abs() / a.max(b).max(f64::MIN_POSITIVE);
    let one = |(entry, a): &(&Entry, &Assumption)| {
        let mut q = question(entry, a, system);
        for answer in [&a.low, &a.high].into_iter().filter(|answer| **answer != entry.value) {
            let mut what_if = WhatIf::default();
            what_if.0.insert(a.key.clone(), answer.clone());
            let other = begin(&mut Off, &what_if, &answered(enquiry, &what_if));
            if let (Some(now), Some(then)) = (flow(design), flow(&other)) {
                q.weight = q.weight.max(moved(now.si(), then.si()) + 0.5 * moved(oil(design), oil(&other)));
                q.flows.push((told(answer, entry.units, system), then));
            }
        }
        q
    };
    let asked = assumptions(ledger);
    let mut questions = side_by_side(asked.len(), 1, || (), |k, ()| one(&asked[k]));
    questions.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    questions
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
        declared: a.declared,
        label: entry.label.clone(),
        text: a.question.clone(),
        now: show_in_prose(&entry.value, entry.units, system),
        contradiction: a.contradiction,
        range: (show_in_prose(&a.low, entry.units, system), show_in_prose(&a.high, entry.units, system)),
        source: a.source.clone(),
        outcomes: Vec::new(),
        flows: Vec::new(),
        share: None,
        weight: 0.0,
        holds: Vec::new(),
    }
}

/// What is held against the limits: the most of those predicted.
fn held(design: &Design) -> Option<Concentration> {
    let limits = design.performance.iter().flat_map(|p| p.limits.iter().filter(|l| l.predicted));
    limits.map(|l| l.most.expected.q).fold(None, |most, c| Some(most.map_or(c, |m: Concentration| m.max(c))))
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
    let ready = ready(enquiry);
    let system = enquiry.system();
    let base = taken.offered(range);
    let (price, stores) = (taken.price(range), Stores::of(design));
    // What lies below the published floor is printed as the floor.
    let printed = |c: Option<Concentration>| c.map(|c| c.max(floor()).si());
    let now = [printed(effluent(design)), printed(held(design))];
    let asked = assumptions(ledger);
    let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let shares = heard.map(shares).unwrap_or_default();
    // Whose answer decides whether a spill is held ahead matters, whatever it does to the effluent.
    let undecided =
        design.basis.iter().flat_map(|b| &b.containment).flat_map(|c| c.undecided()).collect::<BTreeSet<_>>();
    let holds: Vec<Vec<usize>> = asked
        .iter()
        .map(|(_, a)| (0..limits.len()).filter(|k| limits[*k].held_by().any(|key| key == a.key)).collect())
        .collect();
    // Each answer is a design of its own, and the words under it are many.
    let answers: Vec<(usize, &Arg)> = asked
        .iter()
        .enumerate()
        .flat_map(|(k, (entry, a))| [&a.low, &a.high].into_iter().filter(|x| **x != entry.value).map(move |x| (k, x)))
        .collect();
    let mut outcomes = side_by_side(
        answers.len(),
        1,
        || (),
        |n, ()| {
            let (k, answer) = answers[n];
            let (entry, a) = asked[k];
            if moves_nothing(a.declared) {
                return unmoved(design, taken, range, answer, entry, system);
            }
            let mut outcome = outcome(enquiry, ready.as_deref(), range, taken, &a.key, answer, entry, system);
            let turned = |o: &Outcome| o.unit.as_ref().is_some_and(|unit| *unit != base);
            if let (true, Arg::Number(now), Arg::Number(far)) =
                (is_halved(a.declared) && turned(&outcome), &entry.value, answer)
            {
                let (mut stays, mut turns) = (*now, *far);
                for _ in 0..HALVINGS {
                    let between = Arg::Number(0.5 * (stays + turns));
                    let tried = self::outcome(enquiry, ready.as_deref(), range, taken, &a.key, &between, entry, system);
                    *(if turned(&tried) { &mut turns } else { &mut stays }) = 0.5 * (stays + turns);
                }
                outcome.turns_at = (turns != *far).then(|| show_in_prose(&Arg::Number(turns), entry.units, system));
            }
            if !holds[k].is_empty() {
                outcome.words = crate::weakest::under(enquiry, ready.clone(), range, taken, &a.key, answer);
            }
            outcome
        },
    )
    .into_iter()
    .zip(&answers)
    .peekable();
    let mut one = |(n, holds): (usize, Vec<usize>)| {
        let (entry, a) = asked[n];
        let mut q = question(entry, a, system);
        q.holds = holds;
        let mut moved: f64 = 0.0;
        while let Some((outcome, _)) = outcomes.next_if(|(_, (k, _))| *k == n) {
            let dearer = match (price, outcome.price) {
                (Some(a), Some(b)) => (a - b).abs() / a.max(b),
                _ => 0.0,
            };
            let stored = STORED * stores.moved(&outcome.stores);
            let then = [printed(outcome.effluent), printed(outcome.held)];
            moved = now.iter().zip(then).fold(moved, |most, pair| match pair {
                (Some(a), Some(b)) => most.max((a - b).abs() / a.max(b)),
                _ => most,
            });
            q.weight = q
                .weight
                .max(f64::from(u8::from(outcome.unit.as_ref().is_some_and(|unit| *unit != base))) + dearer + stored);
            q.outcomes.push(outcome);
        }
        if !q.holds.is_empty() {
            q.weight += HOLDS;
        }
        q.share = heard.and_then(|h| h.inputs.iter().position(|i| i.key == a.key)).and_then(|k| shares.get(k)).copied();
        q.weight += q.share.unwrap_or(0.0) + f64::from(u8::from(undecided.contains(a.key.as_str())));
        // A small part of a wide spread may still move what is printed.
        q.weight = q.weight.max(moved);
        q
    };
    let mut questions: Vec<Question> = holds.into_iter().enumerate().map(&mut one).collect();
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

/// Takes over the shares of a whole study. The order stays: a question has one number, in whatever text it stands.
pub fn refine(questions: &mut [Question], risk: &Risk) {
    for question in questions.iter_mut().filter(|q| q.share.is_some()) {
        let carrier = risk.carriers.iter().find(|c| c.input.key == question.key);
        question.share = Some(carrier.map_or(0.0, |c| c.share.total));
    }
}

/// The outcome of an answer on which nothing but the shop's numbers rests.
fn unmoved(design: &Design, taken: &Pick, range: &Range, answer: &Arg, entry: &Entry, system: System) -> Outcome {
    Outcome {
        price: taken.price(range),
        stores: Stores::of(design),
        answer: told(answer, entry.units, system),
        effluent: effluent(design),
        arrives: design.performance.as_ref().and_then(|p| p.worst()).map(|worst| worst.content.total.q),
        held: held(design),
        unit: taken.fits.then(|| taken.offered(range)),
        words: None,
        turns_at: None,
    }
}

#[allow(clippy::too_many_arguments)]
fn outcome(
    enquiry: &Enquiry,
    ready: Option<&Ready<'_>>,
    range: &Range,
    taken: &Pick,
    key: &str,
    answer: &Arg,
    entry: &Entry,
    system: System,
) -> Outcome {
    let mut what_if = WhatIf::default();
    what_if.0.insert(key.to_owned(), answer.clone());
    // Only where claims on words contradict can an answer make another enquiry of it.
    let other = ready.is_none().then(|| answered(enquiry, &what_if));
    let enquiry = other.as_deref().unwrap_or(enquiry);
    let begun = match ready {
        Some(ready) => begin_on(&mut Off, &what_if, enquiry, ready),
        None => begin(&mut Off, &what_if, enquiry),
    };
    // The effluent is that of the unit taken: what the client would get if the answer came late.
    let same = try_unit(enquiry, &what_if, &begun, &taken.source(enquiry, range), taken.count, Depth::Limits);
    let other = found(enquiry, range, &what_if, &begun, Some((taken, &same)));
    let other = other.filter(|pick| pick.fits || pick == taken);
    Outcome {
        price: other.as_ref().and_then(|pick| pick.price(range)),
        stores: Stores::of(&same),
        answer: told(answer, entry.units, system),
        effluent: effluent(&same),
        arrives: same.performance.as_ref().and_then(|p| p.worst()).map(|worst| worst.content.total.q),
        held: held(&same),
        unit: taken.fits.then(|| other.map_or(Offered::Nothing, |pick| pick.offered(range))),
        words: None,
        turns_at: None,
    }
}

//! The word on each limit, once all that speaks to it was heard: the calculation, the plausible ranges of what is
//! assumed, and the chance over everything that is uncertain, results' own scatter included.
//!
//! The weakest word stands. An assumption is unconfirmed, so each is put at its plausible answers, one at a time; what
//! it can do to the word, the word has to bear until somebody confirms it.

use crate::pick::Pick;
use crate::results::latest;
use crate::risk::inputs::{Input, Range, inputs};
use crate::risk::sample::Hypercube;
use crate::risk::{Model, Reading};
use crate::side_by_side::side_by_side;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range as MakersRange;
use stillrise_design::job::{Design, begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::{By, Chance, HeldBack, Word};
use stillrise_design::provenance::{choose, show};
use stillrise_design::{Ledger, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::System;
use stillrise_units::catalog::PERCENT;
use stillrise_units::ratio;

/// Sets of inputs that are drawn for the chance. Each gives a share of results, not a yes or no, so that few of them
/// give the mean to about a hundredth.
pub const SETS: usize = 96;

/// One input at one of its plausible answers, all others as in the design.
#[derive(Debug, Clone)]
pub(crate) struct End {
    /// The answer.
    pub answer: Arg,
    /// What the chain gives there; `None` when it has no answer.
    pub reading: Option<Reading>,
}

/// What the ends of all uncertain inputs do, and the chance of each limit.
pub(crate) struct Heard {
    /// The inputs.
    pub inputs: Vec<Input>,
    /// Each at its plausible answers but the one that stands.
    pub ends: Vec<Vec<End>>,
    /// What the chain gives as it stands.
    pub now: Reading,
    /// Share of the results that keep each limit, in the order of the verdicts; `None` where none is predicted.
    pub shares: Vec<Option<f64>>,
}

/// Hears all that speaks to the words. `fixed` holds answers that are taken as given.
pub(crate) fn hear(enquiry: &Enquiry, design: &Design, ledger: &Ledger, fixed: &WhatIf) -> Option<Heard> {
    let mut inputs = inputs(ledger);
    for input in inputs.iter_mut().filter(|input| fixed.0.contains_key(&input.key)) {
        input.range = Range::Words(vec![input.now.clone()]);
    }
    for (key, answer) in fixed.0.iter().filter(|(key, _)| !inputs_hold(ledger, key)) {
        inputs.push(Input::fixed(key, answer));
    }
    let model = Model::new(enquiry, design, inputs.clone())?;
    let now = model.reading(&model.space())?;
    let tasks: Vec<(usize, Arg)> = inputs
        .iter()
        .enumerate()
        .flat_map(|(k, input)| input.range.answers().into_iter().filter(|a| *a != input.now).map(move |a| (k, a)))
        .collect();
    let readings = side_by_side(
        tasks.len(),
        4,
        || model.space(),
        |n, space| {
            let (k, answer) = &tasks[n];
            let key = &inputs[*k].key;
            let put = |space: &mut WhatIf, arg: &Arg| {
                if let Some(slot) = space.0.get_mut(key) {
                    slot.clone_from(arg);
                }
            };
            put(space, answer);
            let reading = model.reading(space);
            put(space, &inputs[*k].now);
            reading
        },
    );
    let mut ends: Vec<Vec<End>> = inputs.iter().map(|_| Vec::new()).collect();
    for ((k, answer), reading) in tasks.into_iter().zip(readings) {
        ends[k].push(End { answer, reading });
    }
    let keys: Vec<&str> = inputs.iter().map(|i| i.key.as_str()).collect();
    let cube = Hypercube::by_key(SETS, &keys);
    let rows = side_by_side(SETS, 8, || model.space(), |i, space| model.keeping(|k| cube.row(i)[k], space));
    let sound: Vec<&Vec<Option<f64>>> = rows.iter().flatten().collect();
    let shares = (0..now.words.len())
        .map(|k| {
            let each: Vec<f64> = sound.iter().filter_map(|row| row.get(k).copied().flatten()).collect();
            // A set for which the chain has no answer keeps nothing.
            (!each.is_empty()).then(|| each.iter().sum::<f64>() / SETS as f64)
        })
        .collect();
    Some(Heard { inputs, ends, now, shares })
}

fn inputs_hold(ledger: &Ledger, key: &str) -> bool {
    inputs(ledger).iter().any(|input| input.key == key)
}

/// The words that would stand with one answer given, around the unit taken; `None` when the chain has no answer.
pub(crate) fn under(
    enquiry: &Enquiry,
    range: &MakersRange,
    taken: &Pick,
    key: &str,
    answer: &Arg,
) -> Option<Vec<Word>> {
    let mut fixed = WhatIf::default();
    fixed.0.insert(key.to_owned(), answer.clone());
    let mut ledger = Ledger::default();
    let begun = begin(&mut ledger, &fixed, enquiry);
    let source = taken.source(enquiry, range);
    let design = complete(&mut ledger, &fixed, enquiry, begun, &source, taken.count, Depth::Limits);
    hear(enquiry, &design, &ledger, &fixed).map(|heard| words(enquiry, &design, &heard))
}

/// What holds the word of one limit back.
fn against(heard: &Heard, k: usize, calculated: Word, chance: Option<&Chance>, system: System) -> Vec<HeldBack> {
    let mut held = Vec::new();
    for (input, ends) in heard.inputs.iter().zip(&heard.ends).filter(|(input, _)| input.assumed) {
        let word = |end: &End| end.reading.as_ref().map_or(Word::NotShown, |r| r.words[k]);
        let worst = ends.iter().max_by_key(|end| word(end));
        let Some(end) = worst.filter(|end| word(end) > calculated) else { continue };
        held.push(HeldBack {
            word: word(end),
            by: By::Assumption {
                key: input.key.clone(),
                label: input.label.clone(),
                answer: show(&end.answer, input.units, system),
                asked: input.asked,
            },
        });
    }
    if let Some(word) = chance.map(Chance::allows).filter(|word| *word > calculated) {
        held.push(HeldBack { word, by: By::Chance });
    }
    held
}

/// What was measured at the unit that stands and speaks against a limit on oil; `None` where nothing does.
fn measured(enquiry: &Enquiry, limit: &LimitState) -> Option<HeldBack> {
    let found = latest(enquiry, limit).filter(|m| m.above > 0)?;
    Some(HeldBack { word: Word::NotShown, by: By::Measured(found) })
}

/// Puts the words of a design right by what was heard, with the chance in the trail.
pub(crate) fn settle(enquiry: &Enquiry, design: &mut Design, ledger: &mut Ledger, heard: &Heard) {
    let system = enquiry.system();
    let Design { performance: Some(performance), basis: Some(basis), .. } = design else { return };
    for (k, verdict) in performance.limits.iter_mut().enumerate() {
        verdict.chance = heard.shares.get(k).copied().flatten().map(|share| Chance {
            share: choose(
                ledger,
                "share of the results that keep the limit",
                Some((&PERCENT, &PERCENT)),
                ratio(share),
                &format!("{SETS} sets of all uncertain inputs, each drawn over its range"),
                "mean over the sets of the share that results scattering about the set's mean keep",
                &[verdict.mean.at, verdict.against.at],
            ),
            sets: SETS,
        });
        let mut held = against(heard, k, verdict.calculated, verdict.chance.as_ref(), system);
        // What was measured is told before what was reckoned.
        if let Some(measured) = basis.limits.get(verdict.limit).and_then(|limit| measured(enquiry, limit)) {
            if let By::Measured(found) = measured.by {
                verdict.measured = Some(found);
            }
            held.insert(0, measured);
        }
        verdict.hold_back(held);
    }
}

/// The words that would stand, nothing recorded: the weakest of each limit.
pub(crate) fn words(enquiry: &Enquiry, design: &Design, heard: &Heard) -> Vec<Word> {
    (0..heard.now.words.len())
        .map(|k| {
            let calculated = heard.now.words[k];
            let chance = heard.shares[k].map(|share| Chance { share: unrecorded(share), sets: SETS });
            let held = against(heard, k, calculated, chance.as_ref(), System::Si);
            let limit = design.performance.as_ref().and_then(|p| p.limits.get(k)).map(|v| v.limit);
            let limit = limit.and_then(|k| design.basis.as_ref()?.limits.get(k));
            let measured = limit.and_then(|limit| measured(enquiry, limit));
            held.iter().chain(&measured).map(|h| h.word).fold(calculated, Word::max)
        })
        .collect()
}

fn unrecorded(share: f64) -> stillrise_design::Val<stillrise_units::Ratio> {
    stillrise_design::Val { q: ratio(share), at: stillrise_design::Node::NONE }
}

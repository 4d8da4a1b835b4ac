//! The word on each limit, once all that speaks to it was heard: the calculation, the plausible ranges of what is
//! assumed, and the chance over everything that is uncertain, results' own scatter included.
//!
//! The weakest word stands. An assumption is unconfirmed, so each is put at its plausible answers, one at a time; what
//! it can do to the word, the word has to bear until somebody confirms it.

use crate::results::latest;
use crate::risk::inputs::{Input, inputs};
use crate::risk::{Model, Reading};
use crate::side_by_side::side_by_side;
use std::sync::Arc;
use stillrise_design::Ledger;
use stillrise_design::basis::Ready;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::job::Design;
use stillrise_design::performance::heard::{WEAKEST_ASSUMED, beside};
use stillrise_design::performance::limit::{By, Chance, HeldBack, LimitVerdict, Measured, Word};
use stillrise_design::provenance::{choose, told};
use stillrise_handbook::page::Arg;
use stillrise_units::catalog::PERCENT;
use stillrise_units::ratio;
use stillrise_units::{Concentration, System};

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

/// Hears all that speaks to the words.
pub(crate) fn hear(
    enquiry: &Enquiry,
    ready: Option<Arc<Ready<'_>>>,
    design: &Design,
    ledger: &Ledger,
) -> Option<Heard> {
    let inputs = inputs(ledger);
    let model = Model::new(enquiry, ready, design, inputs.clone())?;
    let (now, asked) = model.asked(&model.space())?;
    // An input that the chain never asks for changes nothing, and is not worked out again.
    let tasks: Vec<(usize, Arg)> = inputs
        .iter()
        .enumerate()
        .filter(|(_, input)| asked.holds(&input.key))
        .flat_map(|(k, input)| input.other_answers().map(move |a| (k, a)))
        .collect();
    let readings = side_by_side(
        tasks.len(),
        4,
        || model.space(),
        |n, space| {
            let (k, answer) = &tasks[n];
            model.reading_at(*k, answer, space)
        },
    );
    let mut ends: Vec<Vec<End>> = inputs.iter().map(|_| Vec::new()).collect();
    for ((k, answer), reading) in tasks.into_iter().zip(readings) {
        ends[k].push(End { answer, reading });
    }
    for (input, ends) in inputs.iter().zip(&mut ends).filter(|(input, _)| !asked.holds(&input.key)) {
        ends.extend(input.other_answers().map(|answer| End { answer, reading: Some(now.clone()) }));
    }
    let cube = model.cube(SETS);
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

/// What holds the word of one limit back.
fn against(heard: &Heard, k: usize, verdict: &LimitVerdict, by_eye: bool, system: System) -> Vec<HeldBack> {
    let (measured, chance) = (verdict.measured.as_ref(), verdict.chance.as_ref());
    let calculated = beside(verdict.calculated, measured, verdict.stays_in_the_mean());
    // Where the unit that stands was measured, what it can do is known better than by an assumed share of oil that does not
    // rise.
    let worst = if measured.is_some() { Word::NotShown } else { Word::NotByGravity };
    let mut swings = Vec::new();
    for (input, ends) in heard.inputs.iter().zip(&heard.ends).filter(|(input, _)| input.assumed) {
        let there = |end: &End| end.reading.as_ref().map_or_else(|| verdict.where_stopped(), |r| r.words[k]).min(worst);
        let Some(end) = ends.iter().max_by_key(|end| there(end)) else { continue };
        let (there, word) = (there(end), there(end).min(WEAKEST_ASSUMED));
        if word <= calculated {
            continue;
        }
        // A chain without an answer is as far as an answer can lead.
        let swing = end.reading.as_ref().map_or(f64::INFINITY, |r| (r.result - heard.now.result).abs());
        let held = HeldBack {
            word,
            by: By::Assumption {
                key: input.key.clone(),
                declared: input.declared,
                label: input.label.clone(),
                answer: told(&end.answer, input.units, system),
                there,
                asked: input.asked,
            },
        };
        swings.push((input.asked, there, swing, held));
    }
    // What somebody can be asked goes before what is ours to choose, and of each what leads farthest; of what a limit on
    // solids hangs on, the solids before all that moves the oil.
    let about = |held: &HeldBack| match &held.by {
        By::Assumption { declared, .. } => verdict.solids.is_some() && declared.is_solids(),
        _ => false,
    };
    swings.sort_by(|(a, w, x, h), (b, v, y, i)| {
        b.cmp(a).then(v.cmp(w)).then(about(i).cmp(&about(h))).then(y.total_cmp(x))
    });
    // What no answer changes is told before what one could.
    let mut held: Vec<HeldBack> = by_eye.then_some(HeldBack { word: SEEN, by: By::Eye }).into_iter().collect();
    held.extend(swings.into_iter().map(|(.., held)| held));
    if let Some(word) = chance.map(Chance::allows).filter(|word| *word > calculated) {
        held.push(HeldBack { word, by: By::Chance });
    }
    held
}

/// The best word on a limit that is judged by eye: a film far thinner than a micrometre shows, and no content of the water
/// says what gathers on it.
pub(crate) const SEEN: Word = Word::NotShown;

/// What was measured at the unit that stands, where it speaks against a limit on oil.
fn speaks(found: Measured) -> Option<HeldBack> {
    (found.above > 0).then_some(HeldBack { word: Word::NotShown, by: By::Measured(found) })
}

/// The calculated word on a limit, once what was measured at the unit that stands is set beside it.
pub(crate) fn beside_measured(calculated: Word, found: Option<Measured>, stays: Concentration) -> Word {
    let held = found.and_then(speaks).map_or(calculated, |held| held.word.max(calculated));
    beside(held, found.as_ref(), stays)
}

/// Puts the words of a design right by what was heard, with the chance in the trail.
pub(crate) fn settle(enquiry: &Enquiry, design: &mut Design, ledger: &mut Ledger, heard: &Heard) {
    let system = enquiry.system();
    let Design { performance: Some(performance), basis: Some(basis), .. } = design else { return };
    for (k, verdict) in performance.limits.iter_mut().enumerate() {
        let limit = basis.limits.get(verdict.limit);
        let eye = limit.is_some_and(|l| l.unseen.is_some());
        // How often a film is seen no share of results tells.
        let share = heard.shares.get(k).copied().flatten().filter(|_| !eye);
        verdict.chance = share.map(|share| Chance {
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
        verdict.measured = limit.and_then(|limit| latest(enquiry, limit));
        // What was measured is told before what was reckoned.
        let mut held: Vec<HeldBack> = verdict.measured.and_then(speaks).into_iter().collect();
        held.extend(against(heard, k, verdict, eye, system));
        verdict.hold_back(held);
    }
}

//! The words that would stand around a design, and nothing beside them: what `words` hears, but no further than it can
//! still weaken a word.
//!
//! What is heard only ever weakens a word, and neither an assumption nor the chance says worse than "not shown". So where
//! that was said of every limit, the rest is not worked out.

use crate::pick::Pick;
use crate::results::latest;
use crate::risk::inputs::{Input, Range, among};
use crate::risk::{Model, Reading};
use crate::words::{SEEN, SETS, beside_measured};
use std::sync::Arc;
use stillrise_design::WhatIf;
use stillrise_design::basis::Ready;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range as MakersRange;
use stillrise_design::job::{Design, begin, begin_on, complete};
use stillrise_design::performance::Depth;
use stillrise_design::performance::heard::{WEAKEST_ASSUMED, allowed};
use stillrise_design::performance::limit::{LimitVerdict, Measured, Word};
use stillrise_design::provenance::{Entry, Uncertain};
use stillrise_handbook::page::Arg;

/// The words that would stand with one answer given, around the unit taken; `None` when the chain has no answer.
pub(crate) fn under(
    enquiry: &Enquiry,
    ready: Option<Arc<Ready<'_>>>,
    range: &MakersRange,
    taken: &Pick,
    key: &str,
    answer: &Arg,
) -> Option<Vec<Word>> {
    let mut fixed = WhatIf::default();
    fixed.0.insert(key.to_owned(), answer.clone());
    let mut trail = Uncertain::default();
    let begun = match &ready {
        Some(ready) => begin_on(&mut trail, &fixed, enquiry, ready),
        None => begin(&mut trail, &fixed, enquiry),
    };
    let source = taken.source(enquiry, range);
    let design = complete(&mut trail, &fixed, enquiry, begun, &source, taken.count, Depth::Limits);
    weakest(enquiry, ready, &design, &trail.entries, &fixed)
}

/// The weakest of all words that are said of each limit; `None` when the chain has no answer. `fixed` holds answers
/// that are taken as given.
pub(crate) fn weakest(
    enquiry: &Enquiry,
    ready: Option<Arc<Ready<'_>>>,
    design: &Design,
    trail: &[Entry],
    fixed: &WhatIf,
) -> Option<Vec<Word>> {
    let mut inputs = among(trail);
    for input in inputs.iter_mut().filter(|input| fixed.0.contains_key(&input.key)) {
        input.range = Range::Words(vec![input.now.clone()]);
    }
    for (key, answer) in &fixed.0 {
        if inputs.iter().all(|input| input.key != *key) {
            inputs.push(Input::fixed(key, answer));
        }
    }
    let model = Model::new(enquiry, ready, design, inputs.clone())?;
    let mut space = model.space();
    let (now, asked) = model.asked(&space)?;
    let mut words = now.words;
    let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let of = |k: usize| limits.get(k).and_then(|verdict| design.basis.as_ref()?.limits.get(verdict.limit));
    let found: Vec<Option<Measured>> = (0..words.len()).map(|k| latest(enquiry, of(k)?)).collect();
    for ((word, found), stays) in words.iter_mut().zip(&found).zip(&now.stays) {
        *word = beside_measured(*word, *found, *stays);
    }
    for (k, word) in words.iter_mut().enumerate() {
        let eye = of(k).is_some_and(|limit| limit.unseen.is_some());
        *word = if eye { SEEN.max(*word) } else { *word };
    }
    // What is stated with a range is no assumption, and what the chain never asks for changes nothing.
    for (k, input) in inputs.iter().enumerate().filter(|(_, input)| input.assumed && asked.holds(&input.key)) {
        for answer in input.other_answers() {
            if words.iter().all(|word| *word >= WEAKEST_ASSUMED) {
                return Some(words);
            }
            weaken(&mut words, limits, model.reading_at(k, &answer, &mut space).as_ref());
        }
    }
    by_chance(&model, &mut words, &mut space);
    Some(words)
}

/// Weakens words by what one answer says, no further than an assumption can; a chain that stops shows nothing beyond what arrives.
fn weaken(words: &mut [Word], limits: &[LimitVerdict], reading: Option<&Reading>) {
    for (k, word) in words.iter_mut().enumerate() {
        let stopped = || limits.get(k).map_or(Word::NotShown, LimitVerdict::where_stopped);
        let said = reading.map_or_else(stopped, |r| r.words.get(k).copied().unwrap_or(Word::NotShown));
        *word = said.min(WEAKEST_ASSUMED).max(*word);
    }
}

/// Weakens words by the chance, with no more sets drawn than decide it.
fn by_chance(model: &Model<'_>, words: &mut [Word], space: &mut WhatIf) {
    let open: Vec<usize> = (0..words.len()).filter(|k| words[*k] < Word::NotShown).collect();
    if open.is_empty() {
        return;
    }
    let cube = model.cube(SETS);
    // Sum of the shares of each limit; nothing until some set has one.
    let mut sums: Vec<Option<f64>> = vec![None; words.len()];
    for i in 0..SETS {
        let row = model.keeping(|k| cube.row(i)[k], space).unwrap_or_default();
        for (sum, share) in sums.iter_mut().zip(row) {
            if let Some(share) = share {
                *sum = Some(sum.unwrap_or(0.0) + share);
            }
        }
        // Of the sets that are left none may keep the limit, or all.
        let left = (SETS - 1 - i) as f64;
        let decided = |k: &usize| {
            let Some(sum) = sums[*k] else { return false };
            let [least, most] = [sum * (1.0 - HAIR), (sum + left) * (1.0 + HAIR)];
            let [least, most] = [least, most].map(|sum| allowed(sum / SETS as f64).max(words[*k]));
            least == most
        };
        if open.iter().all(decided) {
            break;
        }
    }
    for (word, sum) in words.iter_mut().zip(sums) {
        *word = sum.map_or(*word, |sum| allowed(sum / SETS as f64).max(*word));
    }
}

/// By how much a bound is widened, so that no rounding of a sum decides: far more than its last digits.
const HAIR: f64 = 1e-9;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::risk::inputs::inputs;
    use stillrise_design::Ledger;
    use stillrise_design::enquiry::range::read_range;
    use stillrise_design::enquiry::read_enquiry;

    /// The same words with everything heard to its end.
    fn in_full(enquiry: &Enquiry, design: &Design, trail: &[Entry], fixed: &WhatIf) -> Option<Vec<Word>> {
        let mut inputs = among(trail);
        for input in inputs.iter_mut().filter(|input| fixed.0.contains_key(&input.key)) {
            input.range = Range::Words(vec![input.now.clone()]);
        }
        let fresh = fixed.0.iter().filter(|(key, _)| inputs.iter().all(|i| i.key != **key));
        let fresh: Vec<Input> = fresh.map(|(key, answer)| Input::fixed(key, answer)).collect();
        inputs.extend(fresh);
        let model = Model::new(enquiry, None, design, inputs.clone())?;
        let mut space = model.space();
        let reading = model.reading(&space)?;
        let mut words = reading.words;
        for (k, word) in words.iter_mut().enumerate() {
            let limit = &design.basis.as_ref()?.limits[design.performance.as_ref()?.limits[k].limit];
            let found = latest(enquiry, limit);
            *word = beside_measured(*word, found, reading.stays[k]);
        }
        for (k, input) in inputs.iter().enumerate().filter(|(_, input)| input.assumed) {
            for answer in input.other_answers() {
                let limits = &design.performance.as_ref()?.limits;
                weaken(&mut words, limits, model.reading_at(k, &answer, &mut space).as_ref());
            }
        }
        let cube = model.cube(SETS);
        let rows: Vec<_> = (0..SETS).filter_map(|i| model.keeping(|k| cube.row(i)[k], &mut space)).collect();
        for (k, word) in words.iter_mut().enumerate() {
            let shares: Vec<f64> = rows.iter().filter_map(|row| row[k]).collect();
            if !shares.is_empty() {
                *word = allowed(shares.iter().sum::<f64>() / SETS as f64).max(*word);
            }
        }
        Some(words)
    }

    #[test]
    fn what_is_left_out_would_have_changed_no_word() {
        let demo = read_range(include_str!("../../../ranges/demo.toml")).file;
        let mut seen = std::collections::BTreeSet::new();
        let wash = include_str!("../tests/data/wash.toml");
        let washes = ["5", "12", "20", "30", "45", "60"].map(|x| wash.replace("30 mg/L", &format!("{x} mg/L")));
        let jobs = [
            include_str!("../../../enquiries/crane-yard/enquiry.toml"),
            include_str!("../../../enquiries/foundry/enquiry.toml"),
        ];
        for text in washes.iter().map(String::as_str).chain(jobs) {
            let enquiry = read_enquiry(text, &|_| None).unwrap_or_default();
            let settled = crate::settle(&enquiry, &demo);
            let Some(pick) = &settled.pick else { continue };
            let range = enquiry.range.as_ref().unwrap_or(&demo);
            for input in inputs(&settled.job.ledger) {
                for answer in input.range.answers() {
                    let mut fixed = WhatIf::default();
                    fixed.0.insert(input.key.clone(), answer.clone());
                    let mut ledger = Ledger::default();
                    let begun = begin(&mut ledger, &fixed, &enquiry);
                    let source = pick.source(&enquiry, range);
                    let design = complete(&mut ledger, &fixed, &enquiry, begun, &source, pick.count, Depth::Limits);
                    let full = in_full(&enquiry, &design, &ledger.entries, &fixed);
                    let short = under(&enquiry, crate::risk::ready(&enquiry), range, pick, &input.key, &answer);
                    assert_eq!(short, full, "{} = {answer:?}", input.key);
                    seen.extend(full.into_iter().flatten());
                }
            }
        }
        assert!(seen.len() == 4, "too few different words came up to show anything: {seen:?}");
    }
}

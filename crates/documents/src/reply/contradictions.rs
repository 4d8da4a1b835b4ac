//! What the claim that was not taken would lead to, where two contradict.

use super::show;
use stillrise_search::Settled;
use stillrise_search::questions::{Outcome, Question};
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, Volume};

/// From which share of the larger a volume that moves is told. Judgement.
const MOVES: f64 = 0.05;

/// " With 60 gpm: Demo 120 too, with 2670 gal held back ahead." `None` where nothing that the mail tells moves.
pub(super) fn otherwise(settled: &Settled, q: &Question) -> Option<String> {
    let told: Vec<String> = q.outcomes.iter().filter(|o| o.answer != q.now).filter_map(|o| one(settled, o)).collect();
    (!told.is_empty()).then(|| told.concat())
}

fn one(settled: &Settled, o: &Outcome) -> Option<String> {
    let taken = settled.candidates.iter().find(|c| c.taken).map(|c| c.name.as_str());
    let mut facts = Vec::new();
    match (o.unit.as_deref(), taken) {
        (Some(unit), Some(taken)) if unit != taken => facts.push(unit.to_owned()),
        (Some(_), Some(taken)) => facts.push(format!("{taken} all the same")),
        _ => {}
    }
    let now = settled.job.design.train.as_ref().and_then(|t| t.equalisation.as_ref()).map(|e| e.volume().q);
    let far = |a: Volume, b: Volume| (a - b).si().abs() > MOVES * a.max(b).si();
    match (now, o.stores.held_back) {
        (Some(now), Some(then)) if !far(now, then) => {}
        (_, Some(then)) => facts.push(format!("{} to be held back ahead", show(settled, then.si(), (&GAL, &M3)))),
        (Some(_), None) => facts.push("nothing to be held back ahead".to_owned()),
        (None, None) => {}
    }
    // That the unit stays says nothing alone.
    let stays = facts.len() == 1 && o.unit.as_deref() == taken;
    (!facts.is_empty() && !stays).then(|| format!(" With {}: {}.", o.answer, facts.join(", ")))
}

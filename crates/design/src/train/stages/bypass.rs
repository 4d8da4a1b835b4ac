//! A bypass in place of what is held back ahead: how much would run past the unit untreated, and what bars it.

use super::super::Train;
use crate::basis::Basis;
use crate::basis::cases::{Case, Kind};
use crate::provenance::{Trail, Val};
use crate::reckon;
use stillrise_units::{Flow, Ratio};

/// A bypass that would stand in for holding back.
#[derive(Debug, Clone)]
pub struct Bypass {
    /// The case in which most arrives.
    pub case: String,
    /// What arrives in it.
    pub largest: Val<Flow>,
    /// What pumps or flow cap let through.
    pub through: Val<Flow>,
    /// What would run past the unit.
    pub past: Val<Flow>,
    /// Its share of what arrives.
    pub share: Val<Ratio>,
    /// What bars it, in words; nothing where nothing that was said does.
    pub barred: Option<&'static str>,
}

/// Finds what a bypass would let past; nothing where pumps and cap pass whatever arrives.
pub(in crate::train) fn bypass<T: Trail>(t: &mut T, basis: &Basis, train: &Train) -> Option<Bypass> {
    let through = train.equalisation.as_ref()?.outflow;
    t.section("bypass");
    let cases = basis.cases.iter().filter(|case| case.kind != Kind::Spill);
    let worst = cases.reduce(|a, b| if b.inflow.q > a.inflow.q { b } else { a })?;
    let largest = worst.inflow;
    let past = reckon!(t, "flow past the unit, with a bypass", [GPM, M3_H], (largest = largest, through = through) largest - through);
    let share =
        reckon!(t, "its share of what arrives", [PERCENT, PERCENT], (past = past, largest = largest) past / largest);
    Some(Bypass { case: worst.event.clone(), largest, through, past, share, barred: barred(basis, worst) })
}

/// What bars a bypass, by what was said.
fn barred(basis: &Basis, worst: &Case) -> Option<&'static str> {
    let spilled = basis.spill.as_ref().is_some_and(|spill| !spill.is_held_ahead());
    if spilled {
        Some("a spill may come with the largest flow, and would run past the unit")
    } else if worst.kind != Kind::Storm {
        Some("what runs past would not be rain alone; EN 858-1 allows a bypass for rain with little oil only")
    } else {
        None
    }
}

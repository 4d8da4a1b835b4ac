//! What the waters were taken to carry.

use crate::summary::{assumed_under, mg_l};
use std::collections::BTreeSet;
use stillrise_search::Settled;

/// Waters that are told.
const TOLD: usize = 4;

/// A line for each water: what it carries decides the limits, and where any of that is assumed, all of it is told.
pub(super) fn carried(settled: &Settled) -> Vec<String> {
    let mut seen = BTreeSet::new();
    let cases = settled.job.design.basis.iter().flat_map(|basis| &basis.cases);
    let lines = cases.filter_map(|case| {
        let content = case.content.as_ref()?;
        let of = |at| !assumed_under(settled, at, &|_| true).is_empty();
        let line = format!(
            "oil in {}: {} in the mean, of which {} free, {} emulsified, {} dissolved",
            case.event,
            mg_l(content.total.q),
            mg_l(content.free.q),
            mg_l(content.emulsified.q),
            mg_l(content.dissolved.q)
        );
        ((of(content.total.at) || of(content.emulsified.at)) && seen.insert(line.clone())).then_some(line)
    });
    lines.take(TOLD).collect()
}

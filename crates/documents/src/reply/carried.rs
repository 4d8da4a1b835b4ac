//! What the waters were taken to carry.

use crate::summary::assumed_under;
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// Waters that are told.
const TOLD: usize = 4;

/// A line for the waters that carry the same: what it is decides the limits, and where any of that is assumed, all of it is
/// told.
pub(super) fn carried(settled: &Settled) -> Vec<String> {
    let mg_l = |c: Concentration| print::in_prose(c.si(), &MG_L);
    let cases = settled.job.design.basis.iter().flat_map(|basis| &basis.cases);
    let mut lines: Vec<(String, Vec<&str>)> = Vec::new();
    for case in cases {
        let Some(content) = &case.content else { continue };
        let of = |at| !assumed_under(settled, at, &|_| true).is_empty();
        if !of(content.total.at) && !of(content.emulsified.at) {
            continue;
        }
        let carries = format!(
            "{} in the mean, of which {} free, {} emulsified, {} dissolved",
            mg_l(content.total.q),
            mg_l(content.free.q),
            mg_l(content.emulsified.q),
            mg_l(content.dissolved.q)
        );
        match lines.iter_mut().find(|(line, _)| *line == carries) {
            Some((_, waters)) if waters.contains(&&*case.event) => {}
            Some((_, waters)) => waters.push(&case.event),
            None => lines.push((carries, vec![&case.event])),
        }
    }
    lines.into_iter().take(TOLD).map(|(carries, waters)| format!("oil in {}: {carries}", waters.join("; "))).collect()
}

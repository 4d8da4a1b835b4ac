//! Sheets about what comes out, and about what was put in.

use super::{Pair, in_unit, of_entry, recorded, with_unit};
use crate::render::xlsx::{Cell, Grid};
use crate::summary::total_out;
use stillrise_design::provenance::Origin;
use stillrise_search::Settled;
use stillrise_units::catalog::{GPM, M3_H, MG_L};

const FLOW: Pair = (&GPM, &M3_H);
const OIL: Pair = (&MG_L, &MG_L);

/// What comes out in each case, season and state.
pub fn cases(settled: &Settled) -> Grid {
    let system = settled.job.enquiry.system();
    let mut grid = Grid::new("Cases", ["Case", "Season", "State"]);
    grid.header.push(with_unit("Flow through one unit", system, FLOW));
    for what in [
        "Free oil in",
        "Emulsified oil in",
        "Dissolved oil in",
        "Total oil in",
        "Free oil out, as calculated",
        "Total oil out, as calculated",
        "Total oil out if all mixes, as calculated",
    ] {
        grid.header.push(with_unit(what, system, OIL));
    }
    grid.header.push(with_unit("Total oil out, as it is stated", system, OIL));
    for r in settled.job.design.performance.iter().flat_map(|p| &p.removals) {
        let oil = |c: stillrise_units::Concentration| in_unit(c, system, OIL);
        grid.row([
            Cell::text(&r.case),
            Cell::text(r.season.name()),
            Cell::text(r.state.name()),
            in_unit(r.flow.q, system, FLOW),
            oil(r.content.free.q),
            oil(r.content.emulsified.q),
            oil(r.content.dissolved.q),
            oil(r.content.total.q),
            oil(r.free.expected.q),
            oil(r.total.expected.q),
            r.total.mixed.map_or(Cell::Empty, |mixed| oil(mixed.q)),
            Cell::text(total_out(r.total.expected.q, r.content.total.q)),
        ]);
    }
    grid
}

/// The word on each limit.
pub fn limits(settled: &Settled) -> Grid {
    let mut grid =
        Grid::new("Limits", ["Limit on", "Value", "Unit", "Counts", "Method", "Set by", "Word", "Case", "Because"]);
    let design = &settled.job.design;
    let (Some(basis), Some(p)) = (&design.basis, &design.performance) else { return grid };
    for l in &p.limits {
        let Some(limit) = basis.limits.get(l.limit) else { continue };
        let [value, unit] = recorded(settled, limit.value.at);
        let named = |text: &Option<String>| text.as_ref().map_or(Cell::Empty, Cell::text);
        grid.row([
            Cell::text(limit.pollutant.word),
            value,
            unit,
            Cell::text(limit.statistic.q.word()),
            named(&limit.method),
            named(&limit.authority),
            Cell::text(l.says()),
            Cell::text(&l.case),
            Cell::text(l.reason()),
        ]);
    }
    grid
}

/// What was given, as typed, and what was assumed.
pub fn inputs(settled: &Settled) -> Grid {
    let mut grid = Grid::new("Inputs", ["What", "Key", "As typed", "Value", "Unit", "Where from"]);
    for entry in &settled.job.ledger.entries {
        let (key, typed, from) = match &entry.origin {
            Origin::Given { source, text } => (String::new(), text.as_str(), source.to_string()),
            Origin::Assumed(a) => (a.key.to_string(), "", format!("assumed: {}", a.source)),
            _ => continue,
        };
        let key = entry.range.as_ref().map_or(key, |range| range.key.clone());
        let [value, unit] = of_entry(entry, settled.job.enquiry.system());
        grid.row([Cell::text(&entry.label), Cell::text(key), Cell::text(typed), value, unit, Cell::text(from)]);
    }
    grid
}

//! The schedules of a job as a workbook, for whoever reckons on with them.
//!
//! What the drawings and the report print stands here as numbers, units in the headings. Cells for prices are left empty.

mod results;
mod unit;

use crate::Edition;
use crate::render::xlsx::{Cell, Grid, xlsx};
use crate::section::place::Section;
use rust_xlsxwriter::XlsxError;
use stillrise_design::provenance::{Entry, Node};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::{System, Typed, Unit};

/// The workbook.
///
/// # Errors
/// Where the format has no room for what is asked.
pub fn workbook(settled: &Settled, edition: Edition) -> Result<Vec<u8>, XlsxError> {
    let head = &settled.job.enquiry.head;
    let date = head.date.0.as_ref().map(ToString::to_string);
    xlsx(head.title.0.as_deref().unwrap_or("Schedules"), date.as_deref(), &grids(settled, edition))
}

/// Its sheets, in their order.
#[must_use]
pub fn grids(settled: &Settled, edition: Edition) -> Vec<Grid> {
    let mut all = Vec::new();
    if let Some(s) = Section::new(settled, edition) {
        all.extend([unit::parts(&s), unit::dimensions(&s), unit::nozzles(&s), unit::set_points(&s), unit::waters(&s)]);
        all.extend([unit::alarms(&s), unit::weights(&s), unit::materials(&s)]);
    }
    all.extend([results::cases(settled), results::limits(settled), results::inputs(settled)]);
    all
}

/// A pair of units, US and SI.
type Pair = (&'static Unit, &'static Unit);

/// A heading with its unit.
fn with_unit(words: &str, system: System, pair: Pair) -> String {
    format!("{words}, {}", system.pick(pair).symbol)
}

/// A quantity in the unit of its heading.
fn in_unit<Q: Typed>(quantity: Q, system: System, pair: Pair) -> Cell {
    Cell::number(Some(system.pick(pair).from_si(quantity.si())))
}

/// A value of the trail: its number, and its unit.
fn recorded(settled: &Settled, at: Node) -> [Cell; 2] {
    let entry = settled.job.ledger.entry(at);
    entry.map_or([Cell::Empty, Cell::Empty], |entry| of_entry(entry, settled.job.enquiry.system()))
}

/// The same of a line of the trail.
fn of_entry(entry: &Entry, system: System) -> [Cell; 2] {
    match (&entry.value, entry.units) {
        (Arg::Number(si), Some(pair)) => {
            let unit = system.pick(pair);
            [Cell::number(Some(unit.from_si(*si))), Cell::text(unit.symbol)]
        }
        (Arg::Number(si), None) => [Cell::number(Some(*si)), Cell::Empty],
        (Arg::Choice(word), _) => [Cell::text(word), Cell::Empty],
        _ => [Cell::text(entry.shown(system)), Cell::Empty],
    }
}

//! An oil: its properties with their sources, and how it thins as it warms.

use super::{Shelf, Ways, guide};
use crate::pages::sheet::encoded;
use maud::{Markup, PreEscaped, html};
use stillrise_documents::charts::oil::viscosity;
use stillrise_handbook::fluids::oils::Oil;
use stillrise_handbook::manual::table::{Cell, Column, Value};
use stillrise_handbook::manual::tables;
use stillrise_units::System;

/// What the page says.
pub(super) fn body(oil: &Oil, ways: Ways) -> Markup {
    let all = tables();
    let table = all.iter().find(|table| table.id == "oils");
    let row = table.and_then(|table| table.row(oil.word));
    let cells: Vec<(&Column, &Cell)> = match (table, row) {
        (Some(table), Some(row)) => table.columns.iter().zip(&row.cells).collect(),
        _ => Vec::new(),
    };
    let chart = viscosity(oil);
    html! {
        h1 { (oil.title) }
        p { "Its word in files: " code { (oil.word) } "." @if oil.animal_or_vegetable { " Of animal or vegetable origin, which many permits count apart." } }
        @if let Some(note) = oil.gravity_note { p { "What limits gravity, beyond its density: " (note) } }
        figure.chart { figcaption { (chart.title) } (PreEscaped(&chart.svg)) }
        p.small { "Worked by " a href=(ways.to(Shelf::Formula, "oil-viscosity")) { "oil-viscosity" } " from two points: "
            @for (k, (v, t)) in oil.viscosity.iter().enumerate() { @if k > 0 { ", " } (v) " mm²/s at " (t) " °C" }
            ". Source: " (oil.viscosity_source) "." @if !oil.viscosity_note.is_empty() { " " (oil.viscosity_note) "." } }
        h2 { "Properties" }
        p.small { "Three numbers are the typical one and, in brackets, the ends that a careful engineer would try." }
        div.scroll { table.list {
            thead { tr { th scope="col" { "Property" } th scope="col" { "SI" } th scope="col" { "US" } th scope="col" { "Source" } } }
            tbody { @for (column, cell) in cells.iter().filter(|(_, cell)| cell.value != Value::Nothing) { (property(column, cell)) } }
        } }
        p { a href=(ways.at(Shelf::Data, "oils", &encoded(oil.word))) { "Beside all other oils" } }
        h2 { "Sources" }
        ul { @for source in oil.sources { li { (source) } } }
        (guide::how("add-an-oil", ways))
    }
}

fn property(column: &Column, cell: &Cell) -> Markup {
    html! { tr {
        th scope="row" { (column.title) }
        td.number { (cell.with_unit(column, System::Si)) }
        td.number { @if column.units.is_some_and(|(us, si)| us != si) { (cell.with_unit(column, System::Us)) } @else if column.units.is_some() { "the same" } }
        td { @if let Some(source) = cell.source { (source) } @if !cell.note.is_empty() { " " span.small { (cell.note) } } }
    } }
}

//! A table of published data.

use super::{Shelf, Ways, formula};
use crate::pages::sheet::encoded;
use maud::{Markup, html};
use stillrise_handbook::fluids::oils::OILS;
use stillrise_handbook::manual::Table;
use stillrise_units::System;

/// What the page says.
pub(super) fn body(table: &Table, ways: Ways) -> Markup {
    let of_oils = |word: &str| table.id == "oils" && OILS.iter().any(|oil| oil.word == word);
    html! {
        h1 { (table.title) }
        p { (formula::prose(table.about, ways)) }
        div.scroll { table.list { thead { tr { th scope="col" { span.unseen { "Row" } } @for column in &table.columns { th scope="col" { (column.head(System::Si)) @if column.units.is_some_and(|(us, si)| us != si) { " (US: " (column.head(System::Us).rsplit(", ").next().unwrap_or_default()) ")" } } } } }
            tbody { @for row in &table.rows { tr #(encoded(&row.word)) {
                th scope="row" {
                    @if of_oils(&row.word) { a href=(ways.to(Shelf::Oil, &row.word)) { (row.title) } } @else { (row.title) }
                    @if !row.also.is_empty() { " " span.small { (row.also.join(", ")) } }
                }
                @for (cell, column) in row.cells.iter().zip(&table.columns) {
                    td title=(cell.note) { (cell.shown(column, System::Si)) @if column.units.is_some_and(|(us, si)| us != si) && !cell.shown(column, System::Us).is_empty() { " " span.small { "(" (cell.shown(column, System::Us)) ")" } } }
                }
            } } } } }
        h2 { "Sources" }
        ul { @for source in table.sources() { li { (source) } } }
    }
}

//! The data of a line chart as a table: one row for each x, one column for each curve.

use super::line::LineChart;
use super::value;
use crate::render::text::Table;

/// One value on its way into the table.
struct Cell {
    x: f64,
    /// How often this x came before in the same curve, so that no repeated reading is lost.
    again: usize,
    column: usize,
    text: String,
}

pub(super) fn table(chart: &LineChart) -> Table {
    let mut table = Table { header: vec![chart.x.caption()], rows: Vec::new() };
    let mut cells: Vec<Cell> = Vec::new();
    let mut fill = |table: &mut Table, names: Vec<String>, rows: Vec<(f64, Vec<f64>)>| {
        let first = table.header.len();
        table.header.extend(names);
        let mut seen: Vec<f64> = Vec::new();
        let mut ordered = rows;
        ordered.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (x, values) in ordered {
            if seen.first().is_some_and(|s| s.total_cmp(&x).is_ne()) {
                seen.clear();
            }
            for (k, number) in values.into_iter().enumerate() {
                cells.push(Cell { x, again: seen.len(), column: first + k, text: value(number) });
            }
            seen.push(x);
        }
    };
    let unit = if chart.y.unit.is_empty() { String::new() } else { format!(", {}", chart.y.unit) };
    for curve in &chart.curves {
        let rows = curve.points.iter().map(|&(x, y)| (x, vec![y])).collect();
        fill(&mut table, vec![format!("{}{unit}", curve.name)], rows);
    }
    for band in &chart.bands {
        let names = ["low", "high"].map(|end| format!("{}, {end}{unit}", band.name)).to_vec();
        fill(&mut table, names, band.points.iter().map(|&(x, low, high)| (x, vec![low, high])).collect());
    }
    for series in &chart.series {
        let mut names = vec![format!("{}{unit}", series.name)];
        names.extend(["low", "high"].map(|end| format!("{}, {end}{unit}", series.name)));
        fill(&mut table, names, series.readings.iter().map(|r| (r.x, vec![r.y, r.bar.0, r.bar.1])).collect());
    }
    cells.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.again.cmp(&b.again)));
    for row in cells.chunk_by(|a, b| a.x.total_cmp(&b.x).is_eq() && a.again == b.again) {
        let mut texts = vec![String::new(); table.header.len()];
        for cell in row {
            if let Some(first) = texts.first_mut() {
                *first = value(cell.x);
            }
            if let Some(text) = texts.get_mut(cell.column) {
                text.clone_from(&cell.text);
            }
        }
        table.rows.push(texts);
    }
    table
}

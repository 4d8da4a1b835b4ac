//! The schedules as a workbook, read back by another library.

use crate::{every_unit, job};
use calamine::{Data, Reader, Xlsx, open_workbook_from_rs};
use std::io::Cursor;
use stillrise_documents::Edition;
use stillrise_documents::render::xlsx::{Cell, Grid, xlsx};
use stillrise_documents::workbook::{grids, workbook};
use stillrise_search::Settled;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{System, Typed};

const SHEETS: [&str; 11] = [
    "Parts",
    "Dimensions",
    "Nozzles",
    "Set points",
    "Water levels",
    "Alarms",
    "Weights",
    "Bill of materials",
    "Cases",
    "Limits",
    "Inputs",
];

fn read(bytes: Vec<u8>) -> Xlsx<Cursor<Vec<u8>>> {
    open_workbook_from_rs(Cursor::new(bytes)).unwrap_or_else(|fault: calamine::XlsxError| panic!("{fault}"))
}

fn holds(settled: &Settled, system: System, name: &str) {
    let bytes = workbook(settled, Edition::Us).unwrap_or_else(|fault| panic!("{name}: {fault}"));
    let mut book = read(bytes);
    assert_eq!(book.sheet_names(), SHEETS, "{name}");
    // Every cell comes back as it was meant: numbers as numbers, whole.
    for grid in grids(settled, Edition::Us) {
        let range = book.worksheet_range(grid.name).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert!(!grid.rows.is_empty() || matches!(grid.name, "Weights" | "Limits"), "{name}: {} is empty", grid.name);
        for (c, head) in (0..).zip(&grid.header) {
            assert_eq!(range.get_value((0, c)), Some(&Data::String(head.clone())), "{name}: {}", grid.name);
        }
        for (r, row) in (1..).zip(&grid.rows) {
            assert!(row.len() <= grid.header.len(), "{name}: {}", grid.name);
            for (c, cell) in (0..).zip(row) {
                let found = range.get_value((r, c)).cloned().unwrap_or(Data::Empty);
                let same = match (cell, &found) {
                    (Cell::Empty | Cell::Room, Data::Empty) => true,
                    (Cell::Text(text), Data::String(found)) => text == found,
                    (Cell::Number(value) | Cell::Formula(_, value), Data::Float(found)) => value == found,
                    (Cell::Number(value) | Cell::Formula(_, value), Data::Int(found)) => *value == *found as f64,
                    _ => false,
                };
                assert!(same, "{name}: {} {r} {c}: {cell:?} came back as {found:?}", grid.name);
            }
        }
    }
    // Values are those of the job, in the units of the headings.
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    let nozzles = book.worksheet_range("Nozzles").unwrap();
    let unit = match system {
        System::Us => &IN,
        System::Si => &MM,
    };
    assert_eq!(nozzles.get_value((0, 4)), Some(&Data::String(format!("Elevation above the floor, {}", unit.symbol))));
    let invert = nozzles.get_value((1, 4)).and_then(|v| match v {
        Data::Float(value) => Some(*value),
        _ => None,
    });
    assert!((invert.unwrap() - train.unit.inlet.invert.q.in_unit(unit)).abs() < 1e-9, "{name}");
    let points: usize = settled.job.design.performance.iter().flat_map(|p| &p.levels).map(|l| l.levels.len()).sum();
    assert_eq!(book.worksheet_range("Set points").unwrap().height(), 1 + points, "{name}");
    // Sums are formulas over cells that are left to whoever knows the prices.
    let sums = book.worksheet_formula("Bill of materials").unwrap();
    let last =
        grids(settled, Edition::Us).iter().find(|g| g.name == "Bill of materials").map(|g| g.rows.len()).unwrap();
    assert_eq!(sums.get_value((u32::try_from(last).unwrap(), 7)), Some(&format!("SUM(H2:H{last})")), "{name}");
    assert_eq!(sums.get_value((1, 7)), Some(&"F2*G2".to_owned()), "{name}");
}

#[test]
fn every_unit_is_read_back_cell_by_cell() {
    every_unit(|name, system, settled| holds(settled, system, name));
}

#[test]
fn without_a_unit_there_are_results_and_inputs() {
    let settled = job(System::Us, "[unit]\nmodel = \"Not in the range\"", |t| t);
    let book = read(workbook(&settled, Edition::Us).unwrap());
    assert_eq!(book.sheet_names(), ["Cases", "Limits", "Inputs"]);
}

#[test]
fn what_somebody_wrote_is_no_formula_and_no_clock_is_asked() {
    let mut grid = Grid::new("A", ["Text", "Number"]);
    let hostile = ["=1+1", "+1", "@SUM(A1)", "<b>&\u{1b}[31m", "\u{e9}\u{2205}\u{6c34}"];
    for text in hostile {
        grid.row([Cell::text(text), Cell::number(Some(1.0 / 3.0))]);
    }
    grid.row([Cell::text("\u{7}"), Cell::number(Some(f64::NAN))]);
    grid.row([Cell::text("x".repeat(40_000))]);
    let once = || xlsx("=A1", Some("2026-03-02"), core::slice::from_ref(&grid)).unwrap();
    let bytes = once();
    std::thread::sleep(std::time::Duration::from_millis(1100));
    assert!(bytes == once());
    let mut book = read(bytes);
    let range = book.worksheet_range("A").unwrap();
    for (r, text) in (1..).zip(hostile) {
        let text = text.replace('\u{1b}', " ");
        assert_eq!(range.get_value((r, 0)), Some(&Data::String(text)));
        assert_eq!(range.get_value((r, 1)), Some(&Data::Float(1.0 / 3.0)));
    }
    assert!(book.worksheet_formula("A").unwrap().used_cells().next().is_none());
    assert!(matches!(range.get_value((7, 0)), Some(Data::String(text)) if text.len() == 32_000));
}

#[test]
fn the_title_and_the_inputs_stand_as_they_were_typed() {
    let settled = job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t);
    let mut book = read(workbook(&settled, Edition::Us).unwrap());
    let inputs = book.worksheet_range("Inputs").unwrap();
    let typed: Vec<String> = inputs.rows().skip(1).map(|row| row[2].to_string()).collect();
    // As the enquiry of the vehicle yard writes them.
    for text in ["25 gpm", "46 \u{b0}F", "110 um", "25 mg/L"] {
        assert!(
            crate::ENQUIRY.contains(&format!("\"{text}\"")) && typed.iter().any(|t| t == text),
            "{text}: {typed:?}"
        );
    }
    assert!(typed.iter().filter(|t| !t.is_empty()).count() > 20, "{typed:?}");
}

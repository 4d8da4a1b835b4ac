//! The manual: what it says of every formula, its tables, and what a search finds.

#![allow(clippy::panic, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use stillrise_handbook::fluids::chemicals::CHEMICALS;
use stillrise_handbook::fluids::facilities::FACILITIES;
use stillrise_handbook::fluids::oils::OILS;
use stillrise_handbook::fluids::pollutants::POLLUTANTS;
use stillrise_handbook::hydraulics::{fittings::FITTINGS, pipes::PIPE_SIZES};
use stillrise_handbook::manual::search::{Index, Kind};
use stillrise_handbook::manual::table::{Row, Table, Value};
use stillrise_handbook::manual::{AREAS, entries, formula, tables};
use stillrise_handbook::page::Evidence;
use stillrise_handbook::rain::surfaces::SURFACES;
use stillrise_handbook::separation::pumps::PUMPS;
use stillrise_handbook::{page, pages, sources};
use stillrise_units::System;

fn table(id: &str) -> Table {
    tables().into_iter().find(|t| t.id == id).unwrap_or_else(|| panic!("{id}"))
}

/// What stands in a row under a head.
fn cell(table: &Table, word: &str, column: &str, system: System) -> String {
    let row: &Row = table.row(word).unwrap_or_else(|| panic!("{word}"));
    let at = table.columns.iter().position(|c| c.title == column).unwrap_or_else(|| panic!("{column}"));
    row.cells[at].with_unit(&table.columns[at], system)
}

#[test]
fn every_formula_is_described_wholly() {
    for page in pages() {
        let f = formula(page);
        assert!(f.area.is_some() && !f.says.is_empty() && !f.plain.is_empty(), "{}", page.id);
        assert!(f.math.starts_with("<math") && f.arguments.len() >= page.args.len(), "{}", page.id);
        assert!(!f.checks.is_empty() && f.checks.iter().all(|c| c.holds && c.page == page.id), "{}", page.id);
        let grades: Vec<_> = f.checks.iter().map(|c| Evidence::KINDS.iter().position(|k| *k == c.kind)).collect();
        assert!(grades.is_sorted() && grades[0].is_some(), "{}: {grades:?}", page.id);
        // What stands between backticks and is written as an id leads to a page.
        for word in page.note.split('`').skip(1).step_by(2) {
            let id =
                word.contains('-') && word.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
            assert!(!id || word == page.id || f.names.iter().any(|p| p.id == word), "{}: {word}", page.id);
        }
        let example: Vec<&str> = f.example.iter().map(|(name, _)| *name).collect();
        let asked: Vec<&str> = page.args.iter().map(|a| a.name).collect();
        assert_eq!(example.iter().collect::<BTreeSet<_>>(), asked.iter().collect::<BTreeSet<_>>(), "{}", page.id);
    }
}

#[test]
fn pages_lead_to_each_other_both_ways() {
    let rise = formula(page("stokes-rise").unwrap());
    assert!(rise.names.iter().any(|p| p.id == "drag-rise"));
    let drag = formula(page("drag-rise").unwrap());
    assert!(drag.named_by.iter().any(|p| p.id == "stokes-rise"));
    assert_eq!(rise.says.len(), 2);
    assert!(rise.says[0].ends_with("far from walls and other drops.") && !rise.says[1].contains('\n'));
    assert_eq!(rise.area, AREAS.iter().find(|a| a.id == "separation"));
}

#[test]
fn tables_are_whole_and_every_row_has_a_source() {
    let all = tables();
    let ids: BTreeSet<_> = all.iter().map(|t| t.id).collect();
    assert_eq!(ids.len(), all.len());
    for t in &all {
        assert!(!t.rows.is_empty() && !t.about.is_empty(), "{}", t.id);
        let words: BTreeSet<_> = t.rows.iter().map(|r| r.word.as_str()).collect();
        assert_eq!(words.len(), t.rows.len(), "{}: a word twice", t.id);
        for r in &t.rows {
            assert_eq!(r.cells.len(), t.columns.len(), "{}/{}", t.id, r.word);
            // Four cautions are our own duty, with no hazard written elsewhere.
            assert!(!r.sources().is_empty() || t.id == "cautions", "{}/{}", t.id, r.word);
            assert!(r.sources().iter().all(|s| sources::all().any(|known| known == *s)), "{}/{}", t.id, r.word);
            for cell in &r.cells {
                let fine = match cell.value {
                    Value::Number(v) => v.is_finite(),
                    Value::Range(low, high) => low <= high,
                    Value::Spread(low, typical, high) => low <= typical && typical <= high,
                    Value::Nothing | Value::Text(_) => true,
                };
                assert!(fine, "{}/{}: {cell:?}", t.id, r.word);
            }
        }
        assert!(t.sources().len() <= t.rows.len() * (t.columns.len() + 2));
    }
    for (id, count) in [
        ("oils", OILS.len()),
        ("chemicals", CHEMICALS.len()),
        ("pollutants", POLLUTANTS.len()),
        ("facilities", FACILITIES.len()),
        ("surfaces", SURFACES.len()),
        ("pumps", PUMPS.len()),
        ("pipe-sizes", PIPE_SIZES.len()),
        ("fittings", FITTINGS.len()),
    ] {
        assert_eq!(table(id).rows.len(), count, "{id}");
    }
}

/// Figures as their publications print them, or converted by hand.
#[test]
fn cells_say_what_is_published() {
    let pipes = table("pipe-sizes");
    assert_eq!(cell(&pipes, "4 in", "bore of schedule 40", System::Us), "4.026 in");
    // 4.026 x 25.4 = 102.26.
    assert_eq!(cell(&pipes, "4 in", "bore of schedule 40", System::Si), "102.3 mm");
    let classes = table("liquid-classes");
    // 100 °F is 37.78 °C.
    assert_eq!(cell(&classes, "II", "flash point from", System::Si), "37.78 °C");
    assert_eq!(cell(&classes, "IA", "flash point from", System::Us), "");
    let oils = table("oils");
    assert_eq!(cell(&oils, "sae-40", "density at 15 °C", System::Si), "886 (880 to 900) kg/m3");
    // Record AD02231: 145 mm2/s at 40 °C.
    assert_eq!(cell(&oils, "sae-40", "viscosity at 40 °C", System::Si), "145 mm2/s");
    let surfaces = table("surfaces");
    assert_eq!(cell(&surfaces, "asphalt", "runoff coefficient", System::Us), "0.9 (0.7 to 0.95)");
    assert_eq!(table("pumps").columns[0].head(System::Us), "dissipation where droplets break, W/kg");
}

#[test]
fn oils_thin_out_and_grow_lighter_as_they_warm() {
    let oils = table("oils");
    let number = |row: &Row, column: &str| {
        let at = oils.columns.iter().position(|c| c.title == column).unwrap();
        match row.cells[at].value {
            Value::Number(v) | Value::Spread(_, v, _) => v,
            _ => panic!("{}: {column}", row.word),
        }
    };
    for row in &oils.rows {
        for (cold, warm) in [("0", "15"), ("15", "25"), ("25", "40")] {
            let at = |t: &str| number(row, &format!("density at {t} °C"));
            assert!(at(cold) > at(warm), "{}", row.word);
        }
        for (cold, warm) in [("5", "10"), ("10", "20"), ("20", "40")] {
            let at = |t: &str| number(row, &format!("viscosity at {t} °C"));
            assert!(at(cold) > at(warm), "{}", row.word);
        }
    }
}

#[test]
fn a_search_finds_what_somebody_would_look_for() {
    let index = Index::new(entries());
    let first = |query: &str| {
        let hits = index.search(query);
        hits.first().map_or_else(String::new, |hit| hit.entry.id.clone())
    };
    for (query, id) in [
        ("stokes", "stokes-rise"),
        ("stokes-rise", "stokes-rise"),
        ("diesel", "oils/diesel"),
        ("Benzene", "pollutants/benzene"),
        ("v-notch", "vnotch-weir"),
        ("asphalt runoff", "surfaces/asphalt"),
        ("quick-break", "chemicals/quick-break-detergent"),
    ] {
        assert_eq!(first(query), id, "{query}");
    }
    let hits = index.search("droplet");
    assert!(hits.len() > 20 && hits.windows(2).all(|pair| pair[0].score >= pair[1].score));
    assert!(index.search("viscosity water").iter().any(|hit| hit.entry.kind == Kind::Formula));
    assert!(index.search("xyzzy").is_empty());
    // The same query gives the same answer.
    assert_eq!(hits, index.search("droplet"));
    let ids: BTreeSet<_> = entries().into_iter().map(|e| (e.kind, e.id)).collect();
    assert_eq!(ids.len(), entries().len());
}

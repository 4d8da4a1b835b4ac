//! What plan and cross section must keep, for every model of the demo range in both systems of units.

use crate::{EXISTING, inside, job, printed, range, well_formed};
use stillrise_documents::Edition;
use stillrise_documents::profile::Paper;
use stillrise_documents::render::scale::dimension_text;
use stillrise_documents::section::section;
use stillrise_documents::views::{bare, views};
use stillrise_search::Settled;
use stillrise_units::catalog::MM;
use stillrise_units::{Length, System, Typed};

/// All that holds for any unit.
fn holds(settled: &Settled, system: System) {
    let Some(drawing) = views(settled, Edition::Us) else { panic!("nothing drawn") };
    let name = &drawing.title;
    assert_eq!(drawing.scene.overlaps(), [], "{name}");
    inside(&drawing);
    well_formed(&drawing.svg);
    // A title may be longer than its cell; no note is left out.
    let notes: Vec<&String> = drawing.cut.iter().filter(|what| what.as_str() != "a text of the title block").collect();
    assert_eq!(notes, [""; 0], "{name}");
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    let unit = &train.unit;
    for dimension in drawing.scene.dimensions() {
        assert_eq!(dimension.text, dimension_text(dimension.length, system), "{name}");
        let ratio = dimension.length.in_unit(&MM) / dimension.paper_length();
        assert!((ratio / printed(drawing.scale.text()) - 1.0).abs() < 1e-9, "{name}: {ratio}");
    }
    // What the long section cannot show is here: the width, in both views.
    let of = |length: Length| drawing.scene.dimensions().filter(|d| (d.length.si() - length.si()).abs() < 1e-9).count();
    assert!(of(unit.shape.width()) >= 2, "{name}: the width stands in plan and section");
    assert!(of(unit.shape.length()) >= 1, "{name}");
    for zone in &unit.compartments {
        assert!(of(zone.length.q) >= 1, "{name}: {}", zone.place.word());
    }
    if let Some(channels) = &unit.channels {
        assert!(of(channels.width.q) >= 2, "{name}: each channel");
    }
    let texts: Vec<&str> = drawing.sheet_texts.lines().collect();
    for title in ["PLAN", "SECTION A-A"] {
        assert!(texts.contains(&title), "{name}: {title}");
    }
    assert!(texts.iter().filter(|text| **text == "A").count() >= 2, "{name}: both ends of the cut are named");
    // Both sheets of the set are numbered.
    let first = section(settled, Edition::Us).map(|d| d.sheet_texts).unwrap_or_default();
    assert!(first.contains("1 / 2") && drawing.sheet_texts.contains("2 / 2"), "{name}");
    for width in [190.0, 300.0, 460.0] {
        let Some(scene) = bare(settled, Paper { width, height: 0.42 * width }) else { continue };
        assert_eq!(scene.outside(), [""; 0], "{name} on {width} mm");
    }
}

#[test]
fn every_model_is_drawn_from_above_and_across() {
    for model in range().models.iter().filter_map(|m| m.model.0.clone()) {
        for system in [System::Us, System::Si] {
            holds(&job(system, &format!("[unit]\nmodel = \"{model}\""), |t| t), system);
        }
    }
}

#[test]
fn units_made_to_measure_and_existing_ones_are_drawn_too() {
    for unit in ["[unit]\ncustom = true", EXISTING] {
        for system in [System::Us, System::Si] {
            holds(&job(system, unit, |t| t), system);
        }
    }
}

#[test]
fn without_a_unit_there_is_nothing_to_draw() {
    let settled = job(System::Us, "[unit]\nmodel = \"Not in the range\"", |t| t);
    assert!(views(&settled, Edition::Us).is_none() && bare(&settled, Paper { width: 300.0, height: 126.0 }).is_none());
}

//! What the drawing of the water's way must keep, for every worked job on small, usual and large paper.
#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::profile::{Paper, Profile, profile};
use stillrise_documents::render::geometry::{Point, Rect};
use stillrise_documents::render::lettering::CAPTION;
use stillrise_documents::render::scene::{Item, Scene, Shape};
use stillrise_documents::render::svg::{Options, svg};
use stillrise_search::{Settled, settle};
use stillrise_units::Typed;

const PAPERS: [(f64, f64); 5] = [(200.0, 110.0), (300.0, 130.0), (420.0, 170.0), (180.0, 90.0), (460.0, 200.0)];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn range() -> Range {
    read_range(&std::fs::read_to_string(root().join("ranges/demo.toml")).expect("a range")).file
}

/// A worked job with its text changed.
fn job(name: &str, change: impl Fn(String) -> String) -> Settled {
    let folder = root().join("enquiries").join(name);
    let text = change(std::fs::read_to_string(folder.join("enquiry.toml")).expect("an enquiry"));
    let read = read_enquiry(&text, &|file| std::fs::read(folder.join(file)).ok());
    settle(&read.unwrap_or_else(|faults| panic!("{name}: {faults:?}")), &range())
}

fn jobs() -> Vec<String> {
    let entries = std::fs::read_dir(root().join("enquiries")).expect("enquiries").flatten();
    let folders = entries.filter(|entry| entry.path().join("enquiry.toml").is_file());
    let mut names: Vec<String> = folders.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    assert!(names.len() > 9);
    names
}

fn drawn(settled: &Settled, (width, height): (f64, f64)) -> Profile {
    profile(settled, Paper { width, height })
}

/// Every text as drawn, and every line with the item that it belongs to.
fn texts(scene: &Scene) -> Vec<(usize, String, Rect, f64)> {
    let mut all = Vec::new();
    for (k, placed) in scene.items().iter().enumerate() {
        for shape in placed.item.shapes() {
            if let Shape::Text(text) = shape {
                all.push((k, text.text.clone(), text.area(), text.size));
            }
        }
    }
    all
}

fn lines(scene: &Scene) -> Vec<(usize, Point, Point)> {
    let of = |(k, item): (usize, Item)| item.lines().into_iter().map(move |(a, b)| (k, a, b)).collect::<Vec<_>>();
    scene.items().iter().map(|placed| placed.item.clone()).enumerate().flat_map(of).collect()
}

/// All that holds for any drawing.
fn holds(name: &str, settled: &Settled, paper: (f64, f64)) {
    let found = drawn(settled, paper);
    let scene = &found.scene;
    let at = format!("{name} on {paper:?}");
    assert_eq!(scene.overlaps(), [], "{at}");
    assert_eq!(scene.outside(), [""; 0], "{at}");
    let sheet = Rect::new(0.0, 0.0, paper.0, paper.1);
    let lines = lines(scene);
    for (_, a, b) in &lines {
        assert!(
            sheet.holds(&Rect { x0: a.x.min(b.x), x1: a.x.max(b.x), y0: a.y.min(b.y), y1: a.y.max(b.y) }),
            "{at}: {a:?} {b:?}"
        );
    }
    for (k, text, area, size) in texts(scene) {
        assert!(size >= CAPTION, "{at}: {text}");
        // A balloon's number stands in its circle, over which no line is drawn.
        if matches!(scene.items()[k].item, Item::Balloon(_)) {
            continue;
        }
        let area = area.grown(-0.05);
        let crossed = lines.iter().find(|(of, a, b)| *of != k && area.crossed_by(*a, *b));
        assert!(crossed.is_none(), "{at}: {text} is crossed by {crossed:?}");
    }
    let ids: BTreeSet<&str> = scene.parts().iter().map(|part| part.id.as_str()).collect();
    assert_eq!(ids.len(), scene.parts().len(), "{at}");
    let stations: BTreeSet<&str> = found.stations.iter().map(|station| station.id.as_str()).collect();
    assert_eq!(stations.len(), found.stations.len(), "{at}");
    assert!(stations.is_subset(&ids), "{at}: {stations:?} {ids:?}");
    assert!(stations.contains("unit") && stations.contains("outfall"), "{at}");
    for station in &found.stations {
        assert!(!station.title.is_empty() && !station.blocks.is_empty(), "{at}: {station:?}");
    }
    assert!(drawn(settled, paper) == found, "{at}: the same job is the same drawing");
}

#[test]
fn every_worked_job_is_drawn_without_a_stroke_through_a_letter() {
    for name in jobs() {
        let settled = job(&name, |text| text);
        PAPERS.into_iter().for_each(|paper| holds(&name, &settled, paper));
    }
}

#[test]
fn the_other_system_of_units_is_drawn_too() {
    for (name, from, to) in [("vehicle-yard", "\"us\"", "\"si\""), ("market-wash", "\"si\"", "\"us\"")] {
        let settled = job(name, |text| text.replace(&format!("print = {from}"), &format!("print = {to}")));
        PAPERS.into_iter().for_each(|paper| holds(name, &settled, paper));
    }
}

/// Tanks, cylinders that lie and that stand, vaults and basins.
#[test]
fn every_model_of_the_range_is_drawn() {
    let models: Vec<String> = range().models.iter().filter_map(|model| model.model.0.clone()).collect();
    assert!(models.len() > 3);
    for model in models {
        let settled = job("vehicle-yard", |text| format!("{text}\n[unit]\nmodel = \"{model}\"\n"));
        [(200.0, 110.0), (420.0, 170.0)].into_iter().for_each(|paper| holds(&model, &settled, paper));
    }
}

/// Stations stand in the direction of flow, and each knows what of the enquiry feeds it.
#[test]
fn stations_go_by_what_was_said() {
    let found = drawn(&job("vehicle-yard", |text| text), (300.0, 130.0));
    let ids: Vec<&str> = found.stations.iter().map(|station| station.id.as_str()).collect();
    assert_eq!(ids[..4], ["rain", "surface-1", "surface-2", "stream-1"]);
    assert_eq!(ids.last(), Some(&"outfall"));
    let place = |id: &str| ids.iter().position(|other| *other == id);
    assert!(place("unit") < place("closure") && place("closure") < place("sample-point"));
    let apron = &found.stations[1];
    assert_eq!((apron.title.as_str(), apron.blocks[0].as_str()), ("Fuelling apron", "surface \"fuelling apron\""));
    assert_eq!(apron.says[..2], ["2600 ft2", "concrete"]);
    assert_eq!(found.stations[3].says[..2], ["25 gpm", "3 h a day"]);
    let texts: Vec<String> = found.scene.text_boxes().into_iter().map(|(text, _)| text).collect();
    for written in ["INV 106.40 ft", "INV 99.60 ft", "TW 99.20 ft", "GROUND 97.00 ft"] {
        assert!(texts.iter().any(|text| text.contains(written)), "{written}: {texts:?}");
    }
    assert!(found.scene.description.contains("fuelling apron") && found.scene.description.contains("106.40 ft"));
}

/// Levels stand as far apart on paper as the scale says: 9.40 ft from ground to incoming invert, on 1:n.
#[test]
fn stated_levels_stand_at_their_true_height() {
    let settled = job("vehicle-yard", |text| text);
    let found = drawn(&settled, (420.0, 170.0));
    let tip = |id: &str| {
        let index = found.scene.parts().iter().position(|part| part.id == id);
        let of = |placed: &&stillrise_documents::render::item::Placed| placed.part == index;
        let mut ends = found.scene.items().iter().filter(of).filter_map(|placed| match &placed.item {
            Item::Shape(Shape::Path { rings, closed: true, .. }) if rings[0].len() == 3 => Some(rings[0][0].y),
            _ => None,
        });
        ends.next().unwrap_or_else(|| panic!("no triangle of {id}"))
    };
    let dimension = found.scene.dimensions().next().expect("a dimension");
    let ratio = dimension.length.in_unit(&stillrise_units::catalog::MM) / dimension.paper_length();
    let apart = (tip("ground") - tip("level-incoming")) * ratio;
    assert!((apart - 9.40 * 304.8).abs() < 1.0, "{apart}");
}

#[test]
fn what_was_not_said_is_not_drawn() {
    let without = |text: String| text.replace("ground = \"97.0 ft\"\n", "").replace("invert = \"106.40 ft\"\n", "");
    let found = drawn(&job("vehicle-yard", without), (300.0, 130.0));
    assert!(found.scene.parts().iter().all(|part| part.id != "ground" && part.id != "level-incoming"));
    let texts: Vec<String> = found.scene.text_boxes().into_iter().map(|(text, _)| text).collect();
    assert!(texts.iter().any(|text| text.contains("ground and incoming invert not said")), "{texts:?}");
}

#[test]
fn without_a_unit_its_place_stays_empty_and_says_why() {
    let settled = job("vehicle-yard", |text| format!("{text}\n[unit]\nmodel = \"Not in the range\"\n"));
    assert!(settled.job.design.train.is_none());
    PAPERS.into_iter().for_each(|paper| holds("none", &settled, paper));
    let found = drawn(&settled, (300.0, 130.0));
    assert!(found.scene.text_boxes().iter().any(|(text, _)| text.starts_with("No unit was taken")));
    assert!(found.stations.iter().any(|station| station.id == "outfall"));
}

/// Where the levels leave no fall a pump is drawn as asked for, ahead of the unit.
#[test]
fn a_pump_that_the_levels_ask_for_is_drawn_as_asked_for() {
    let settled = job("vehicle-yard", |text| text.replace("\"106.40 ft\"", "\"98.00 ft\""));
    PAPERS.into_iter().for_each(|paper| holds("no fall", &settled, paper));
    let found = drawn(&settled, (300.0, 130.0));
    let pump = found.stations.iter().find(|station| station.id == "lift-pump").expect("a pump asked for");
    assert!(pump.says.iter().any(|fact| fact == "asked for, not decided"), "{:?}", pump.says);
}

/// Names longer than any cell, twenty streams, odd paper.
#[test]
fn many_and_long_names_and_odd_paper_stay_on_it() {
    let many = |text: String| {
        let streams: String = (0..20)
            .map(|k| format!("[[stream]]\nname = \"rinsing of undercarriages and of superstructures number {k} <&>\"\nflow = \"1 gpm\"\n"))
            .collect();
        text.replacen("[[stream]]", &format!("{streams}[[stream]]"), 1)
    };
    let settled = job("vehicle-yard", many);
    PAPERS.into_iter().for_each(|paper| holds("many", &settled, paper));
    assert!(drawn(&settled, (200.0, 110.0)).stations.iter().any(|station| station.id == "more-sources"));
    for odd in [(f64::NAN, -1.0), (1.0, 1e9), (1e9, 1.0)] {
        assert_eq!(drawn(&settled, odd).scene.overlaps(), []);
    }
}

/// A picture that is pointed at is no single image: each part is one button, however many layers it is drawn on.
#[test]
fn each_part_is_one_button() {
    let found = drawn(&job("vehicle-yard", |text| text), (300.0, 130.0));
    let pointed = svg(&found.scene, &Options { pointed: true, ..Options::default() });
    assert!(pointed.starts_with("<svg") && pointed.contains("role=\"group\"") && !pointed.contains("role=\"img\""));
    for part in found.scene.parts() {
        let own = format!("data-part=\"{}\" tabindex=\"0\" role=\"button\" aria-label=\"", part.id);
        assert_eq!(pointed.matches(&own).count(), 1, "{}", part.id);
    }
    assert_eq!(pointed.matches("tabindex").count(), found.scene.parts().len());
    let plain = svg(&found.scene, &Options::default());
    assert!(plain.contains("role=\"img\"") && !plain.contains("tabindex"));
}

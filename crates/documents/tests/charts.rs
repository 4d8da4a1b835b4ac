//! The charts of the worked jobs: all there, the same twice, never below the published floor, and readable: no lettering meets
//! other lettering, a line, a tint or the edge of the paper, and tints lie far enough apart to be told without colour.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::Path;
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::charts::{Drawn, arrivals, charts, plain, time_line};
use stillrise_documents::render::geometry::Rect;
use stillrise_documents::render::item::{Fill, Item, Shape};
use stillrise_documents::render::lettering::Face;
use stillrise_search::{Settled, settle};
use stillrise_units::System;

fn root() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn range() -> Range {
    read_range(&std::fs::read_to_string(root().join("ranges/demo.toml")).expect("a range")).file
}

fn worked(job: &str, print: Option<System>, samples: usize) -> Settled {
    let folder = root().join("enquiries").join(job);
    let mut text = std::fs::read_to_string(folder.join("enquiry.toml")).expect("an enquiry");
    if let Some(system) = print {
        let word = if system == System::Us { "us" } else { "si" };
        let head = text.lines().find(|line| line.starts_with("print =")).expect("how it prints").to_owned();
        text = text.replacen(&head, &format!("print = \"{word}\""), 1);
    }
    let enquiry = read_enquiry(&text, &|name| std::fs::read(folder.join(name)).ok()).expect("no faults");
    let mut settled = settle(&enquiry, &range());
    settled.study(samples);
    settled
}

fn studied(job: &str) -> Settled {
    worked(job, None, 200)
}

/// What lies on the paper in ink or tint, as rectangles around it; marks on a curve too.
fn shaded(drawn: &Drawn) -> Vec<Rect> {
    let area = |item: &Item| match item {
        Item::Shape(Shape::Path { rings, fill, .. }) if !matches!(fill, Fill::None | Fill::Paper) => {
            rings.iter().filter_map(|ring| Rect::around(ring)).collect()
        }
        Item::Shape(Shape::Circle { centre, radius, .. }) => {
            vec![Rect::new(centre.x, centre.y, 0.0, 0.0).grown(*radius)]
        }
        _ => Vec::new(),
    };
    drawn.scene.items().iter().flat_map(|placed| area(&placed.item)).collect()
}

/// All that a chart must keep.
fn readable(name: &str, drawn: &Drawn) {
    let scene = &drawn.scene;
    assert_eq!(scene.overlaps(), [], "{name}: text over text");
    assert_eq!(scene.outside(), [""; 0], "{name}: text off the paper");
    let shaded = shaded(drawn);
    for (text, area) in scene.text_boxes() {
        for (a, b) in scene.items().iter().flat_map(|placed| placed.item.lines()) {
            assert!(!area.crossed_by(a, b), "{name}: a line strikes {text:?}");
        }
        assert!(shaded.iter().all(|shade| shade.overlap(&area) < 1e-6), "{name}: {text:?} lies on a tint");
        assert!(!text.contains('…'), "{name}: {text:?} is cut");
    }
    let mut depths = BTreeSet::from([0]);
    for shape in scene.items().iter().flat_map(|placed| placed.item.shapes()) {
        assert!(!matches!(shape, Shape::Path { fill: Fill::Hatch(_) | Fill::Over(_), .. }), "{name}: hatched");
        match shape {
            Shape::Path { fill: Fill::Tint(depth), .. } => drop(depths.insert(depth)),
            Shape::Path { fill: Fill::Ink, .. } => drop(depths.insert(100)),
            Shape::Text(text) => {
                assert!(text.face == Face::Book && text.size >= 1.9, "{name}: {:?} is lettered otherwise", text.text);
            }
            _ => {}
        }
    }
    // Ten parts of a hundred in depth are told side by side in print.
    let depths: Vec<u8> = depths.into_iter().collect();
    assert!(depths.windows(2).all(|pair| pair[1] - pair[0] >= 10), "{name}: {depths:?}");
    let numbers = drawn.description.split(|c: char| !c.is_ascii_digit()).filter(|part| !part.is_empty()).count();
    assert!(numbers >= 2, "{name}: the text alternative has values: {}", drawn.description);
}

/// The field of a chart: the longest level line of its frame.
fn field(drawn: &Drawn) -> (f64, f64) {
    let lines = drawn.scene.items().iter().flat_map(|placed| placed.item.lines());
    let level = lines.filter(|(a, b)| (a.y - b.y).abs() < 1e-9 && a.x < 60.0 && b.x > 60.0);
    level.map(|(a, b)| (a.x, b.x)).fold((f64::MAX, 0.0), |(low, high), (a, b)| (low.min(a), high.max(b)))
}

#[test]
fn charts_of_every_worked_job_can_be_read_in_both_systems() {
    let all = std::fs::read_dir(root().join("enquiries")).expect("worked jobs");
    let jobs: Vec<String> = all
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.join("enquiry.toml").is_file())
        .map(|path| path.file_name().expect("a name").to_string_lossy().into_owned())
        .collect();
    assert!(jobs.len() > 8);
    let mut seen = BTreeSet::new();
    for job in &jobs {
        for system in [System::Us, System::Si] {
            let mut settled = worked(job, Some(system), 100);
            // Only a unit that was observed has a time line.
            let observed = settled.diagnose().is_ok();
            let mut drawn = charts(&settled);
            drawn.extend(arrivals(&settled));
            drawn.extend(time_line(&settled).filter(|_| observed));
            for chart in &drawn {
                let name = format!("{job}, {system:?}, {}", chart.name);
                readable(&name, chart);
                let (x0, x1) = field(chart);
                assert!((x0 - 42.0).abs() < 0.01 && (x1 - x0 - 89.1).abs() < 0.01, "{name}: the field {x0} to {x1}");
                seen.insert(chart.name);
            }
            // A study has a curve or a sentence, not both.
            let stays = plain(&settled);
            for (name, says) in &stays {
                assert!(drawn.iter().all(|chart| chart.name != *name), "{job}: {name}");
                assert!(says.contains("stays") && says.ends_with('.'), "{job}: {says}");
            }
        }
    }
    for name in ["ladder", "stages", "catch", "flow", "droplets", "sensitivity", "shares", "arrivals", "time-line"] {
        assert!(seen.contains(name), "no worked job has the chart {name}");
    }
}

#[test]
fn every_chart_is_there_and_says_what_it_shows() {
    let settled = studied("machine-shop");
    let all = charts(&settled);
    let names: Vec<_> = all.iter().map(|c| c.name).collect();
    assert_eq!(names, ["ladder", "stages", "catch", "flow", "temperature", "droplets", "sensitivity", "shares"]);
    for (chart, again) in all.iter().zip(charts(&settled)) {
        assert_eq!(chart.svg, again.svg, "{}", chart.name);
        assert!(chart.description.len() > 20 && chart.svg.contains("<desc"), "{}", chart.name);
        assert!(chart.size.0 <= 170.0 && chart.size.1 <= 120.0, "{}: {:?}", chart.name, chart.size);
    }
}

/// The vehicle yard's effluent is computed below the floor; no chart may say so.
#[test]
fn nothing_is_shown_below_the_floor() {
    let settled = studied("vehicle-yard");
    let all = charts(&settled);
    let ladder = all.iter().find(|c| c.name == "ladder").expect("a ladder");
    assert!(ladder.description.contains("Expected ≤ 10"), "{}", ladder.description);
    let texts: Vec<String> = ladder.scene.text_boxes().into_iter().map(|(text, _)| text).collect();
    assert!(texts.iter().any(|text| text.starts_with("≤ 10")), "{texts:?}");
    let below = texts.iter().filter(|text| text.starts_with("≤ ") || text.contains(" to "));
    // What no separator touches is an input, not a prediction.
    for text in below.filter(|part| !part.starts_with("Emulsified")) {
        let numbers = text.split(|c: char| !(c.is_ascii_digit() || c == '.')).filter_map(|n| n.parse::<f64>().ok());
        assert!(numbers.into_iter().all(|n| n >= 10.0), "{text}");
    }
    // What stays at the floor whatever is tried has no curve but a sentence.
    let stays = plain(&settled);
    assert!(!stays.is_empty());
    for (name, says) in stays.iter().filter(|(name, _)| *name != "sensitivity") {
        assert!(says.contains("stays at the published floor of 10 mg/L"), "{name}: {says}");
    }
    for chart in all.iter().filter(|c| ["flow", "temperature", "droplets"].contains(&c.name)) {
        assert!(chart.svg.contains("not promised below 10 mg/L"), "{}", chart.name);
    }
}

//! The charts of the worked jobs: all there, the same twice, and never below the published floor.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::charts::charts;
use stillrise_search::{Settled, settle};

fn studied(job: &str) -> Settled {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let folder = root.join("enquiries").join(job);
    let text = std::fs::read_to_string(folder.join("enquiry.toml")).expect("an enquiry");
    let enquiry = read_enquiry(&text, &|name| std::fs::read(folder.join(name)).ok()).expect("no faults");
    let range = read_range(&std::fs::read_to_string(root.join("ranges/demo.toml")).expect("a range")).file;
    let mut settled = settle(&enquiry, &range);
    settled.study(200);
    settled
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
    let below = ladder.svg.split(['>', '<']).filter(|text| text.starts_with("≤ ") || text.contains(" to "));
    // What no separator touches is an input, not a prediction.
    for text in below.flat_map(|text| text.split("; ")).filter(|part| !part.starts_with("Emulsified")) {
        let numbers = text.split(|c: char| !(c.is_ascii_digit() || c == '.')).filter_map(|n| n.parse::<f64>().ok());
        assert!(numbers.into_iter().all(|n| n >= 10.0), "{text}");
    }
    for name in ["flow", "temperature", "droplets"] {
        let chart = all.iter().find(|c| c.name == name).expect("a chart");
        assert!(chart.svg.contains("not promised below 10 mg/L"), "{name}");
    }
}

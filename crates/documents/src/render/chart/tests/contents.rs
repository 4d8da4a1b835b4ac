//! Marks stand where their values belong, and tables hold what is drawn.

use super::{circles, middle, texts};
use crate::render::chart::{
    Axis, BarChart, Bars, Bound, Cascade, Chart, Ladder, LineChart, Paper, Reading, Rung, RungKind, Series, Share,
    Stage, Swing,
};
use crate::render::item::{Fill, Item, Shape};

#[test]
fn points_stand_between_the_ticks_as_their_values_do() {
    let mut chart = LineChart::new("t", Axis::linear("x", ""), Axis::log("y", ""));
    chart.x = chart.x.over(0.0, 100.0);
    chart.y = chart.y.over(1.0, 100.0);
    let reading = Reading { x: 75.0, y: 5.0, bar: (5.0, 5.0) };
    chart.series.push(Series { name: "measured".to_owned(), readings: vec![reading], sign: None });
    let scene = chart.scene(&Paper::default());
    let (x, y, _) = circles(&scene)[0];
    // Three quarters of the way from 60 to 80, level with the written 5.
    let (left, right) = (middle(&scene, "60").0, middle(&scene, "80").0);
    assert!((x - (left + 0.75 * (right - left))).abs() < 1e-9);
    // The middle of a level text's box lies half a descender (246/658 of 1.93 mm) below the middle of its capitals.
    assert!((middle(&scene, "5").1 - 0.5 * 1.93 * 246.0 / 658.0 - y).abs() < 1e-9);
    assert_eq!(chart.table().rows, [["75", "5", "5", "5"]]);
}

#[test]
fn a_ladder_puts_every_rung_on_the_common_axis() {
    let mut ladder = Ladder::new("t", Axis::log("Oil", "mg/L").over(1.0, 100.0));
    ladder.rungs.push(Rung::without("rule", RungKind::Bound, "names no concentration"));
    ladder.rungs.push(Rung::new("bound", RungKind::Bound, 10.0));
    ladder.rungs.push(Rung::new("expected", RungKind::Expected, 20.0).within(10.0, 50.0));
    ladder.bounds.push(Bound::limit(15.0, "limit 15 mg/L"));
    ladder.floor = Some((5.0, "not promised below 5 mg/L".to_owned()));
    let scene = ladder.scene(&Paper::default());
    let at = |tick: &str| middle(&scene, tick).0;
    let drawn = circles(&scene);
    assert!((drawn[0].0 - at("10")).abs() < 1e-9 && (drawn[1].0 - at("20")).abs() < 1e-9);
    let band = scene.items().iter().find_map(|p| match &p.item {
        Item::Shape(Shape::Path { rings, fill: Fill::Tint(22), .. }) => Some((rings[0][0].x, rings[0][1].x)),
        _ => None,
    });
    let (low, high) = band.expect("a band");
    assert!((low - at("10")).abs() < 1e-9 && (high - at("50")).abs() < 1e-9);
    let words = texts(&scene);
    for text in ["rule: names no concentration", "limit 15 mg/L", "not promised below 5 mg/L", "20 (10 to 50)"] {
        assert!(words.iter().any(|w| w == text), "{text}");
    }
    let table = ladder.table();
    assert_eq!(table.rows[0], ["rule", "-", "", "", "names no concentration"]);
    assert_eq!(table.rows[2], ["expected", "20", "10", "50", ""]);
    assert_eq!(table.rows[4][1], "5");
}

#[test]
fn a_tornado_has_the_widest_swing_first_and_its_bars_end_at_their_results() {
    let swing = |name: &str, low, high| Swing {
        name: name.to_owned(),
        low,
        high,
        low_text: String::new(),
        high_text: String::new(),
        written: String::new(),
    };
    let swings = vec![swing("narrow", 9.0, 11.5), swing("wide", 17.0, 5.0), swing("one side", 12.0, 13.0)];
    let chart = BarChart::new(
        "t",
        Axis::linear("Oil", "mg/L"),
        Bars::Tornado { centre: 10.0, swings, bounds: vec![Bound::limit(40.0, "limit 40 mg/L")] },
    );
    assert_eq!(
        chart.table().rows.iter().map(|r| r[0].as_str()).collect::<Vec<_>>(),
        ["wide", "narrow", "one side", "All at their best value", "limit 40 mg/L"]
    );
    let scene = chart.scene(&Paper::default());
    assert!(middle(&scene, "wide").1 < middle(&scene, "narrow").1);
    // The axis begins at nothing and holds the limit, so that a small swing looks small.
    let (nothing, limit, centre) = (middle(&scene, "0").0, middle(&scene, "40").0, 10.0);
    let at = |x: f64| 40.0 * (x - nothing) / (limit - nothing);
    let words = texts(&scene);
    for text in ["as expected 10 mg/L", "limit 40 mg/L", "17 / 5", "9 / 11.5", "12 / 13"] {
        assert!(words.iter().any(|w| w == text), "{text}: {words:?}");
    }
    let bars = scene.items().iter().filter_map(|p| match &p.item {
        Item::Shape(Shape::Path { rings, fill: Fill::Tint(_), .. }) => Some((at(rings[0][0].x), at(rings[0][1].x))),
        _ => None,
    });
    // Each bar runs from the centre to its result; both of one side begin at the centre.
    for ((low, high), far) in bars.zip([17.0, 5.0, 11.5, 9.0, 13.0, 12.0]) {
        let (near, end) = if far > centre { (low, high) } else { (high, low) };
        assert!((near - centre).abs() < 1e-9 && (end - far).abs() < 1e-9, "{low} to {high}, {far}");
    }
}

#[test]
fn shares_are_ranked_and_a_cascade_writes_its_sums() {
    let share = |name: &str, first, total| Share { name: name.to_owned(), first, total };
    let shares = Bars::Shares(vec![share("b", 0.1, 0.2), share("none", f64::NAN, f64::NAN), share("a", 0.5, 0.7)]);
    let chart = BarChart::new("t", Axis::linear("Share", ""), shares);
    assert_eq!(chart.table().rows, [["a", "0.5", "0.7"], ["b", "0.1", "0.2"], ["none", "-", "-"]]);
    let mut cascade = Cascade::new("t", Axis::linear("Oil", "mg/L"));
    cascade.classes = vec!["fine".to_owned(), "coarse".to_owned()];
    cascade.stages = vec![Stage::new("inlet", [30.0, 70.0]), Stage::new("outlet", [4.25, 0.0])];
    assert_eq!(cascade.table().rows, [["inlet", "30", "70", "100"], ["outlet", "4.25", "0", "4.25"]]);
    for axis in [Axis::linear("Oil", "mg/L"), Axis::log("Oil", "mg/L")] {
        cascade.axis = axis;
        let words = texts(&cascade.scene(&Paper::default()));
        assert!(words.contains(&"100".to_owned()) && words.contains(&"4.25".to_owned()));
    }
    assert_eq!(Stage::new("impossible", [3.0, -1.0]).total(), None);
}

#[test]
fn readings_at_the_same_place_are_all_in_the_table() {
    let mut chart = LineChart::new("t", Axis::linear("Flow", "m3/h"), Axis::linear("Oil", "mg/L"));
    chart.curve("expected", [(1.0, 5.0), (2.0, 6.0)]);
    let reading = |y: f64| Reading { x: 2.0, y, bar: (y - 1.0, y + 1.0) };
    let readings = vec![reading(7.0), reading(8.0)];
    chart.series.push(Series { name: "measured".to_owned(), readings, sign: None });
    let table = chart.table();
    assert_eq!(table.header[..3], ["Flow, m3/h", "expected, mg/L", "measured, mg/L"]);
    assert_eq!(table.rows, [["1", "5", "", "", ""], ["2", "6", "7", "6", "8"], ["2", "", "8", "7", "9"]]);
}

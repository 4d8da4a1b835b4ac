//! Data nobody hopes for: nothing overlaps, nothing leaves the sheet, nothing panics.

use super::{sound, texts};
use crate::render::chart::{
    Axis, Band, BarChart, Bars, Bound, Cascade, Chart, Ladder, LineChart, Paper, Reading, Series,
};

pub(super) const LONG: &str = "a name much longer than any margin has room for, with every qualification it was given";
pub(super) const HOSTILE: &str = "</text><script>alert(1)</script> & \"'\u{1b}[31m\u{0} 油水分離";
pub(super) const BAD: [f64; 5] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, 1e-300];

fn axes() -> [(Axis, Axis); 3] {
    let linear = || Axis::linear("Flow", "m3/h");
    [(linear(), linear()), (linear(), Axis::log("Oil", "mg/L")), (Axis::log(LONG, HOSTILE), Axis::log(LONG, LONG))]
}

#[test]
fn an_empty_chart_says_so() {
    let charts: [Box<dyn Chart>; 5] = [
        Box::new(LineChart::new("t", Axis::linear("x", ""), Axis::linear("y", ""))),
        Box::new(BarChart::new("t", Axis::linear("x", ""), Bars::Shares(Vec::new()))),
        Box::new(BarChart::new(
            "t",
            Axis::linear("x", ""),
            Bars::Tornado { centre: f64::NAN, swings: Vec::new(), bounds: Vec::new() },
        )),
        Box::new(Cascade::new(LONG, Axis::log("x", ""))),
        Box::new(Ladder::new(HOSTILE, Axis::linear("x", ""))),
    ];
    for chart in charts {
        sound("empty", chart.as_ref());
        assert!(texts(&chart.scene(&Paper::default())).iter().any(|t| t.starts_with("No ")));
    }
}

#[test]
fn papers_of_no_size_are_enlarged() {
    let mut chart = LineChart::new("t", Axis::linear("x", ""), Axis::linear("y", ""));
    chart.curve("a", [(0.0, 1.0), (1.0, 2.0)]);
    for size in [0.0, -5.0, f64::NAN, f64::INFINITY, 1e9] {
        let scene = chart.scene(&Paper { width: size, height: size, titled: true });
        assert!((34.0..=2000.0).contains(&scene.height) && scene.outside().is_empty() && scene.overlaps().is_empty());
    }
}

#[test]
fn curves_of_every_kind_stay_readable() {
    for (n, (x, y)) in axes().into_iter().enumerate() {
        let mut chart = LineChart::new(LONG, x, y);
        // One value; nothing finite; the same curve twice; ends in one point; a spike; beyond everything.
        chart.curve("one value", [(3.0, 4.0)]);
        sound("one", &chart);
        chart.curve("nothing", BAD.map(|v| (v, 1.0)));
        chart.curve("nothing either", BAD.map(|v| (2.0, v)));
        chart.curve(HOSTILE, [(0.5, 1.0), (f64::NAN, 2.0), (5.0, 5.0), (8.0, 0.0), (9.0, -4.0)]);
        sound("broken", &chart);
        for k in 0..14_u8 {
            chart.curve(&format!("curve {k}"), [(1.0, f64::from(k)), (10.0, 7.0)]);
        }
        sound("fan", &chart);
        for _ in 0..3 {
            chart.curve(LONG, [(1.0, 2.0), (10.0, 9.0)]);
            chart.curve("", [(1.0, 2.0), (10.0, 9.0)]);
        }
        sound("long names", &chart);
        chart.curve("spike", [(1.0, 1.0), (5.0, 1e12), (10.0, 1.0)]);
        sound("spike", &chart);
        chart.x = chart.x.over(2.0, 6.0);
        chart.y = chart.y.over(3.0, 3.5);
        sound(&format!("clipped {n}"), &chart);
    }
}

#[test]
fn lines_across_bands_and_points_stay_readable() {
    for (x, y) in axes() {
        let mut chart = LineChart::new("t", x, y);
        let points = [(1.0, 1.0, 3.0), (4.0, f64::NAN, 2.0), (5.0, 2.0, 6.0), (6.0, 0.0, 1e200), (7.0, 9.0, 8.0)];
        chart.bands.push(Band { name: LONG.to_owned(), points: points.to_vec() });
        let reading = |&(x, low, high): &(f64, f64, f64)| Reading { x, y: 2.0, bar: (low, high) };
        let readings: Vec<Reading> = points.iter().map(reading).collect();
        for k in 0..7_u8 {
            chart.series.push(Series { name: format!("series {k}"), readings: readings.clone(), sign: None });
            chart.uprights.push(Bound::note(5.0 + 0.01 * f64::from(k), "nearly the same flow"));
            chart.levels.push(Bound::limit(2.0 + 0.01 * f64::from(k), "nearly the same limit"));
        }
        for at in BAD {
            chart.uprights.push(Bound::limit(at, HOSTILE));
            chart.levels.push(Bound::note(at, LONG));
        }
        sound("across", &chart);
    }
}

#[test]
fn what_lies_beyond_stated_axes_is_told() {
    let mut chart = LineChart::new("t", Axis::linear("x", "").over(0.0, 10.0), Axis::linear("y", "").over(0.0, 10.0));
    chart.curve("a", [(1.0, 1.0), (5.0, 5.0), (9.0, 20.0)]);
    chart.levels.push(Bound::limit(15.0, "limit 15 mg/L"));
    let words = texts(&chart.scene(&Paper::default()));
    assert!(words.contains(&"2 beyond the axes, see the table".to_owned()), "{words:?}");
}

//! Ticks by hand: 1-2-5 series, decades, and where on paper they stand.

use crate::render::chart::axis::{Along, Axis};
use crate::render::chart::label::{apart, cut, fold};
use crate::render::chart::ticks::Graduation;

fn written(g: &Graduation) -> Vec<&str> {
    g.major.iter().map(|t| t.text.as_str()).collect()
}

#[test]
fn linear_ticks_are_multiples_of_1_2_5() {
    // (range, at most, expected), by hand: the least division of the series that gives no more parts.
    for (range, most, ends, ticks) in [
        ((0.0, 10.0), 5, (0.0, 10.0), vec!["0", "2", "4", "6", "8", "10"]),
        ((0.0, 21.6), 5, (0.0, 25.0), vec!["0", "5", "10", "15", "20", "25"]),
        ((0.13, 0.47), 4, (0.1, 0.5), vec!["0.1", "0.2", "0.3", "0.4", "0.5"]),
        ((-3.0, 7.0), 6, (-4.0, 8.0), vec!["-4", "-2", "0", "2", "4", "6", "8"]),
        ((0.0, 3e-7), 3, (0.0, 3e-7), vec!["0", "1e-7", "2e-7", "3e-7"]),
        ((0.0, 2_100_000.0), 3, (0.0, 3e6), vec!["0", "1e6", "2e6", "3e6"]),
        ((1000.0, 1000.4), 4, (1000.0, 1000.4), vec!["1000", "1000.1", "1000.2", "1000.3", "1000.4"]),
    ] {
        let g = Graduation::linear(range, false, most);
        assert_eq!(written(&g), ticks);
        assert_eq!((g.low, g.high), ends);
    }
}

#[test]
fn a_stated_range_is_kept() {
    let g = Graduation::linear((0.0, 150.0), true, 8);
    assert_eq!((g.low, g.high), (0.0, 150.0));
    assert_eq!(written(&g), ["0", "20", "40", "60", "80", "100", "120", "140"]);
    // A division of 20 has its quarters: 5, 10, 15, 25 .. 145, without the ends and the written ones.
    assert_eq!(g.minor.len(), 150 / 5 - 1 - 7);
    let log = Graduation::logarithmic((1.0, 500.0), true, 10);
    assert_eq!(written(&log), ["1", "2", "5", "10", "20", "50", "100", "200", "500"]);
}

#[test]
fn logarithmic_ticks_are_decades_and_their_1_2_5() {
    for (range, most, ends, ticks) in [
        ((1.0, 1000.0), 10, (1.0, 1000.0), vec!["1", "2", "5", "10", "20", "50", "100", "200", "500", "1000"]),
        ((1.0, 1000.0), 5, (1.0, 1000.0), vec!["1", "10", "100", "1000"]),
        ((2.3, 80.0), 10, (2.0, 100.0), vec!["2", "5", "10", "20", "50", "100"]),
        ((4.0, 4.0), 10, (2.0, 5.0), vec!["2", "3", "4", "5"]),
        ((5.0, 5.0), 9, (2.0, 10.0), vec!["2", "3", "4", "5", "6", "7", "8", "9", "10"]),
        ((1e-6, 1e6), 5, (1e-6, 1e6), vec!["1e-6", "0.001", "1", "1000", "1e6"]),
    ] {
        let g = Graduation::logarithmic(range, false, most);
        assert_eq!(written(&g), ticks, "{range:?}");
        assert_eq!((g.low, g.high), ends, "{range:?}");
    }
    // 2 to 9 in each of three decades, less the 2 and 5 that are written.
    let g = Graduation::logarithmic((1.0, 1000.0), false, 10);
    assert_eq!(g.minor.len(), 3 * 6);
    // Less than a decade without two round numbers is divided equally.
    assert_eq!(written(&Graduation::logarithmic((11.0, 19.0), true, 5)), ["12", "14", "16", "18"]);
}

#[test]
fn values_stand_where_arithmetic_puts_them() {
    let linear = Graduation::linear((0.0, 20.0), true, 5);
    assert_eq!(linear.share(15.0), Some(0.75));
    assert_eq!(linear.share(-5.0), Some(-0.25));
    assert_eq!(linear.share(f64::NAN), None);
    let log = Graduation::logarithmic((1.0, 10_000.0), true, 5);
    // lg 1000 / lg 10 000 = 3/4; lg 20 = 1.301 030.
    assert!((log.share(1000.0).unwrap_or(0.0) - 0.75).abs() < 1e-12);
    assert!((log.share(20.0).unwrap_or(0.0) - 1.301_030 / 4.0).abs() < 1e-6);
    assert_eq!((log.share(0.0), log.share(-1.0)), (None, None));
}

#[test]
fn ranges_come_from_the_data_or_are_stated_and_are_never_empty() {
    let ends = |axis: &Axis, data: &[f64]| axis.graduate(data, 100.0, Along::Level).map(|g| (g.low, g.high));
    let plain = Axis::linear("x", "m");
    assert_eq!(ends(&plain, &[]), None);
    assert_eq!(ends(&plain, &[f64::NAN, f64::INFINITY, f64::NEG_INFINITY]), None);
    assert_eq!(ends(&plain, &[0.0]), Some((0.0, 1.0)));
    assert_eq!(ends(&plain, &[3.0, 17.5]), Some((0.0, 20.0)));
    // One value alone, 4: half of it to either side.
    assert_eq!(ends(&plain.clone().close(), &[4.0]), Some((2.0, 6.0)));
    // A range upside down, empty or impossible is ignored.
    for (low, high) in [(5.0, 5.0), (9.0, 1.0), (f64::NAN, 1.0), (0.0, f64::INFINITY)] {
        assert_eq!(ends(&plain.clone().over(low, high), &[0.0, 10.0]), Some((0.0, 10.0)));
    }
    assert_eq!(ends(&Axis::log("x", "m").over(0.0, 10.0), &[2.0, 20.0]), Some((2.0, 20.0)));
    assert_eq!(ends(&Axis::log("x", "m"), &[0.0, -3.0]), None);
}

#[test]
fn labels_are_moved_apart_no_farther_than_need_be() {
    // Two wishes at 10 stand half a room to either side; a third far off stays.
    assert_eq!(apart(&[10.0, 10.0, 30.0], |_| 4.0, 0.0, 50.0), Some(vec![8.0, 12.0, 30.0]));
    // At the edge they are pushed inward.
    assert_eq!(apart(&[0.0, 0.0], |_| 4.0, 0.0, 50.0), Some(vec![0.0, 4.0]));
    assert_eq!(apart(&[50.0, 50.0], |_| 4.0, 0.0, 50.0), Some(vec![46.0, 50.0]));
    assert_eq!(apart(&[1.0, 2.0, 3.0], |_| 4.0, 0.0, 7.0), None);
    assert_eq!(apart(&[f64::NAN], |_| 4.0, 0.0, 7.0), None);
}

#[test]
fn text_is_cut_with_an_ellipsis_or_folded() {
    // The face has 658 units to the height of its capitals: 10 mm hold 3290 at 2 mm. By its table of advances "separ…" takes
    // 2934 and "separa…" 3391, "after the" 3453, "the m…" 3090 and "the me…" 3537.
    assert_eq!(cut("separator", 10.0, 2.0), "separ…");
    assert_eq!(cut("plates", 10.0, 2.0), "plates");
    assert_eq!(cut("plates", 1.0, 2.0), "");
    assert_eq!(fold("after the mesh", 10.0, 2.0, 2), ["after", "the m…"]);
}

//! Bars, stages and rungs nobody hopes for.

use super::awkward::{BAD, HOSTILE, LONG};
use super::sound;
use crate::render::chart::{Axis, BarChart, Bars, Bound, Cascade, Ladder, Rung, RungKind, Share, Stage, Swing};

#[test]
fn bars_of_every_kind_stay_readable() {
    let swing = |name: &str, low, high, text: &str| Swing {
        name: name.to_owned(),
        low,
        high,
        low_text: text.to_owned(),
        high_text: text.to_owned(),
        written: String::new(),
    };
    let mut swings = vec![swing("same", 5.0, 5.0, ""), swing("none", f64::NAN, 6.0, ""), swing(LONG, 1.0, 2.0, LONG)];
    swings.extend(BAD.map(|v| swing(HOSTILE, v, 7.0, "")));
    swings.extend((0..40_u8).map(|k| swing("input", 5.0 - 0.1 * f64::from(k), 5.0 + 0.05 * f64::from(k), "15 mg/L")));
    for axis in [Axis::linear("Oil", "mg/L"), Axis::log(LONG, ""), Axis::linear("Oil", "").over(4.9, 5.1)] {
        for count in [1, 3, 8, 48] {
            let swings = swings.iter().take(count).cloned().collect();
            let bars = Bars::Tornado {
                centre: 5.0,
                swings,
                bounds: vec![Bound::limit(9.0, LONG), Bound::limit(f64::NAN, "limit")],
            };
            sound("tornado", &BarChart::new("t", axis.clone(), bars));
        }
        let share = |k: u8| Share { name: format!("input {k}"), first: 0.4 - 0.1 * f64::from(k), total: 0.02 };
        let mut shares: Vec<Share> = (0..30).map(share).collect();
        shares.extend(BAD.map(|v| Share { name: LONG.to_owned(), first: v, total: v }));
        sound("shares", &BarChart::new("t", axis, Bars::Shares(shares)));
    }
}

#[test]
fn cascades_of_every_kind_stay_readable() {
    for axis in [Axis::linear("Oil", "mg/L"), Axis::log("Oil", "mg/L"), Axis::log("Oil", "mg/L").over(10.0, 20.0)] {
        let mut chart = Cascade::new("t", axis);
        chart.stages = vec![Stage::new(LONG, [1e6, 1.0, 0.001]), Stage::new("nothing", []), Stage::new("0", [0.0])];
        sound("without classes", &chart);
        chart.classes = (0..9).map(|k| format!("class {k} {LONG}")).collect();
        chart.stages.extend(BAD.map(|v| Stage::new(HOSTILE, [v, 1.0])));
        sound("bad", &chart);
        chart.stages.extend((0..40_u8).map(|k| Stage::new("stage", [f64::from(k); 9])));
        sound("many", &chart);
    }
}

#[test]
fn ladders_of_every_kind_stay_readable() {
    for axis in [Axis::linear("Oil", "mg/L"), Axis::log("Oil", "mg/L"), Axis::log("Oil", "mg/L").over(14.0, 16.0)] {
        let mut chart = Ladder::new("t", axis);
        chart.rungs.push(Rung::new(LONG, RungKind::Measured, 15.0).within(0.0, 1e6));
        sound("one", &chart);
        chart.rungs.push(Rung::without("rule", RungKind::Bound, LONG));
        chart.rungs.push(Rung::without(HOSTILE, RungKind::Bound, ""));
        chart.rungs.extend(BAD.map(|v| Rung::new("bad", RungKind::Expected, v).within(v, 3.0)));
        for at in [15.0, 15.1, 15.2, 5.0, f64::NAN, 0.0] {
            chart.bounds.push(Bound::limit(at, "a limit of some length"));
        }
        for floor in [5.0, f64::NAN, 0.0, 1e9] {
            chart.floor = Some((floor, LONG.to_owned()));
            sound("bounds", &chart);
        }
        chart.rungs.extend((0..60_u8).map(|k| Rung::new("rung", RungKind::Bound, f64::from(k))));
        sound("many", &chart);
    }
}

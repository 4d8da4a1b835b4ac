//! What was observed at a unit that stands, in the order of its days: results, what should have left, limits, changes.

use crate::render::chart::{Axis, Bound, LineChart, Reading, Series};
use stillrise_search::Settled;
use stillrise_search::diagnosis::{Diagnosis, Seen};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

/// The time line; nothing where no result has a day.
pub(super) fn time_line(settled: &Settled, d: &Diagnosis) -> Option<LineChart> {
    let e = &settled.job.enquiry;
    let of = |seen: &Seen| Some((seen.observed.date.0?.number(), seen.measured?));
    let dated: Vec<(i64, Concentration)> = d.seen.iter().filter_map(of).collect();
    let days = dated.iter().map(|(day, _)| *day).chain(e.changes.iter().filter_map(|c| Some(c.date.0?.number())));
    let (first, last) = (days.clone().min()?, days.max()?);
    if dated.is_empty() {
        return None;
    }
    // Days are few enough to be exact as numbers of the axis.
    let since = |day: i64| f64::from(i32::try_from(day - first).unwrap_or(i32::MAX));
    let opened = d.seen.iter().filter_map(|s| s.observed.date.0).min();
    let from = opened.map_or_else(String::new, |day| format!(" since {day}"));
    let spare = (since(last) * 0.04).max(1.0);
    let mut chart = LineChart::new(
        "What was observed",
        Axis::linear(&format!("Days{from}"), "").over(-spare, since(last) + spare),
        Axis::linear("Total oil that leaves", "mg/L"),
    );
    for (good, name) in [(true, "measured while it ran well"), (false, "measured, to be explained")] {
        let mut series = Series { name: name.to_owned(), readings: Vec::new(), sign: None };
        for seen in d.seen.iter().filter(|seen| seen.good == good) {
            if let Some((day, measured)) = of(seen) {
                let y = MG_L.from_si(measured.si());
                series.readings.push(Reading { x: since(day), y, bar: (y, y) });
            }
        }
        if !series.readings.is_empty() {
            chart.series.push(series);
        }
    }
    let mut should: Vec<(f64, f64)> = d
        .seen
        .iter()
        .filter_map(|seen| Some((since(seen.observed.date.0?.number()), MG_L.from_si(seen.expected.si()))))
        .collect();
    should.sort_by(|a, b| a.0.total_cmp(&b.0));
    chart.curve("should have left, by the calculation", should);
    for change in &e.changes {
        if let Some(day) = change.date.0 {
            chart.uprights.push(Bound::note(since(day.number()), &change.says()));
        }
    }
    chart.levels = super::limits(settled);
    Some(chart)
}

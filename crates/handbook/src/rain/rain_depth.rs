//! Formula: rain depth of a duration, from a table

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::Series;
use crate::sources::DEPTH_PRACTICE;
use stillrise_units::catalog::{MIN, MM};
use stillrise_units::math::{ln, pow};
use stillrise_units::{Length, Time};

/// A duration in minutes and its depth in millimetres.
type Row = (f64, f64);

/// The table in minutes and millimetres; nothing unless both columns are positive and ordered.
fn rows(table: &Series) -> Option<Vec<Row>> {
    let rows: Vec<Row> = table.0.iter().map(|(t, d)| (MIN.from_si(*t), MM.from_si(*d))).collect();
    let (first, ordered) = (rows.first()?, rows.windows(2).all(|w| w[1].0 > w[0].0 && w[1].1 >= w[0].1));
    (first.0 > 0.0 && first.1 > 0.0 && ordered).then_some(rows)
}

/// The row at or below the duration (the first row below the table), and the one above it.
fn bracket(table: &Series, duration: f64) -> Option<(Row, Option<Row>)> {
    let rows = rows(table)?;
    if duration > rows.last()?.0 {
        return None;
    }
    match rows.iter().rposition(|(t, _)| *t <= duration) {
        Some(at) => Some((*rows.get(at)?, rows.get(at + 1).copied())),
        None => Some((*rows.first()?, None)),
    }
}

/// Duration of the row read, min.
fn row_duration(table: Series, duration: f64) -> f64 {
    bracket(&table, duration).map_or(f64::NAN, |(row, _)| row.0)
}

/// Depth of the row read, mm.
fn row_depth(table: Series, duration: f64) -> f64 {
    bracket(&table, duration).map_or(f64::NAN, |(row, _)| row.1)
}

/// Slope of the log-log line from the row read to the next; 1, a constant intensity, below the first.
fn row_slope(table: Series, duration: f64) -> f64 {
    bracket(&table, duration).map_or(f64::NAN, |(low, high)| match high {
        Some(high) => ln(high.1 / low.1) / ln(high.0 / low.0),
        None => 1.0,
    })
}

formula! {
    /// Depth of rain within a duration, between the rows of a depth-duration table of one frequency.
    ///
    /// Depth against duration is a straight line on log-log paper between two rows. Below the first
    /// duration its intensity holds; beyond the last there is no answer, nor from a table whose
    /// durations do not rise or whose depths fall.
    "rain-depth" "Rain depth of a duration"
    fn depth(
        table: Series = "t_i|D_i" "durations and their depths of rain" {MIN, MIN; IN, MM};
        duration: Time = "t" "duration" [MIN, MIN: 5.0 .. 1440.0 in 0.0 .. 5256000.0];
    ) -> Length = "D" "depth of rain" [IN, MM];
    reduced [duration MIN => MM] {
        let t_1 = row_duration(table.clone(), duration);
        let d_1 = row_depth(table.clone(), duration);
        let x = row_slope(table.clone(), duration);
        d_1 * pow(duration / t_1, x)
    }
    helpers [
        row_duration(Series, f64) "t_row" "duration of the row read";
        row_depth(Series, f64) "D_row" "depth of the row read";
        row_slope(Series, f64) "x_row" "slope of the log-log line to the next row, 1 below the first row";
    ]
    sources [DEPTH_PRACTICE]
    checks [
        "table=[5 min: 0.407039 in; 10 min: 0.643008 in; 15 min: 0.803233 in], duration=12 min" => "0.7107 in",
            ByHand("rows of i = 45/(t + 10)^0.82 in/h: 0.64301 x 1.2^(ln(0.80323/0.64301)/ln 1.5)");
        "table=[10 min: 1 in; 40 min: 2 in], duration=20 min" => "1.41421 in", Limit("depth as the square root of duration is kept");
        "table=[10 min: 1 in; 40 min: 2 in], duration=40 min" => "2.00000 in", Limit("a row gives itself, the last too");
        "table=[10 min: 1 in; 40 min: 2 in], duration=10 min" => "1.00000 in", Limit("a row gives itself");
        "table=[5 min: 0.4070 in; 10 min: 0.6430 in], duration=2.5 min" => "0.2035 in", Limit("the first intensity holds below the first row");
        "table=[5 min: 0.4070 in; 10 min: 0.6430 in], duration=11 min" => "outside: result", Limit("never beyond the last row");
        "table=[10 min: 0.6430 in; 5 min: 0.4070 in], duration=7 min" => "outside: result", Limit("durations must rise");
    ]
}

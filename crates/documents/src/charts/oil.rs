//! Viscosity of oils against temperature, as the manual shows it.

use super::{Drawn, drawn};
use crate::render::chart::{Axis, LineChart, Reading, Series};
use stillrise_handbook::fluids::oils::Oil;
use stillrise_handbook::manual::viscosities;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG_C, MM2_S};

/// One oil: the curve, and the published points from which it is worked where they lie within it.
#[must_use]
pub fn viscosity(oil: &Oil) -> Drawn {
    let mut chart = several(&[oil]);
    chart.title = format!("Viscosity of {}", lower_first(oil.title));
    let warmest = chart.curves.iter().flat_map(|c| &c.points).map(|(t, _)| *t).fold(0.0, f64::max);
    let within = oil.viscosity.iter().filter(|(_, t)| *t <= warmest);
    let readings: Vec<Reading> = within.map(|(v, t)| Reading { x: *t, y: *v, bar: (*v, *v) }).collect();
    if !readings.is_empty() {
        chart.series.push(Series { name: "from the source".to_owned(), readings, sign: None });
    }
    drawn("viscosity", &chart, "How the oil thins as it warms.".to_owned())
}

/// Several oils in one field.
#[must_use]
pub fn several(oils: &[&Oil]) -> LineChart {
    let x = Axis::linear("Temperature", DEG_C.symbol);
    let mut chart = LineChart::new("Viscosity against temperature", x, Axis::log("Viscosity", MM2_S.symbol));
    for oil in oils {
        let points = viscosities(oil).into_iter().map(|(t, v)| (DEG_C.from_si(t.si()), MM2_S.from_si(v.si())));
        chart.curve(oil.word, points);
    }
    chart
}

/// A title within a sentence; words in capitals stay as they are.
fn lower_first(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() => first.to_lowercase().chain(letters).collect(),
        _ => title.to_owned(),
    }
}

//! Curves over a field: what a line chart is made of.

use super::axis::Axis;
use super::bound::Bound;
use super::paper::{Paper, empty};
use super::stroke::{Sign, Stroke};
use super::{Chart, described, line_draw, line_table, listed};
use crate::render::scene::Scene;
use crate::render::text::Table;
use stillrise_units::print::digits;

/// A curve; points without a finite place break it.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Its name.
    pub name: String,
    /// Its points, in order.
    pub points: Vec<(f64, f64)>,
    /// Its pattern; chosen by its place in the list if not stated.
    pub stroke: Option<Stroke>,
}

/// The area between two curves.
#[derive(Debug, Clone, PartialEq)]
pub struct Band {
    /// Its name.
    pub name: String,
    /// x, lower and upper y.
    pub points: Vec<(f64, f64, f64)>,
}

/// A measured point with its error bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// x.
    pub x: f64,
    /// y.
    pub y: f64,
    /// Lower and upper end of the error bar; equal to y for none.
    pub bar: (f64, f64),
}

/// Measured points.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// Their name.
    pub name: String,
    /// The points.
    pub readings: Vec<Reading>,
    /// Their sign; chosen by place in the list if not stated.
    pub sign: Option<Sign>,
}

/// Curves, bands and points over one field.
#[derive(Debug, Clone, PartialEq)]
pub struct LineChart {
    /// What it shows.
    pub title: String,
    /// The text alternative; one is made if empty.
    pub description: String,
    /// The axis below.
    pub x: Axis,
    /// The axis at the left.
    pub y: Axis,
    /// The curves.
    pub curves: Vec<Curve>,
    /// The bands, tinted.
    pub bands: Vec<Band>,
    /// The points.
    pub series: Vec<Series>,
    /// Upright lines, at values of x.
    pub uprights: Vec<Bound>,
    /// Level lines, at values of y.
    pub levels: Vec<Bound>,
    /// The least value that is promised, with its words; the field below it is tinted.
    pub floor: Option<(f64, String)>,
}

impl LineChart {
    /// A chart without curves.
    #[must_use]
    pub fn new(title: &str, x: Axis, y: Axis) -> LineChart {
        LineChart {
            title: title.to_owned(),
            description: String::new(),
            x,
            y,
            curves: Vec::new(),
            bands: Vec::new(),
            series: Vec::new(),
            uprights: Vec::new(),
            levels: Vec::new(),
            floor: None,
        }
    }

    /// Adds a curve.
    pub fn curve(&mut self, name: &str, points: impl IntoIterator<Item = (f64, f64)>) {
        self.curves.push(Curve { name: name.to_owned(), points: points.into_iter().collect(), stroke: None });
    }

    /// The pattern of a curve.
    #[must_use]
    pub fn stroke(&self, k: usize) -> Stroke {
        let asked = self.curves.get(k).and_then(|c| c.stroke);
        asked.unwrap_or(Stroke::ALL[k % Stroke::ALL.len()])
    }

    /// The sign at the points of a curve; none until the patterns are used up.
    #[must_use]
    pub fn sign(&self, k: usize) -> Option<Sign> {
        let round = k / Stroke::ALL.len();
        (round > 0).then(|| Sign::ALL[(round - 1) % Sign::ALL.len()])
    }

    /// Every x that has a y, and every y.
    pub(super) fn values(&self) -> (Vec<f64>, Vec<f64>) {
        let curves = self.curves.iter().flat_map(|c| c.points.iter().copied());
        let bands = self.bands.iter().flat_map(|b| b.points.iter().flat_map(|&(x, low, high)| [(x, low), (x, high)]));
        let bars = |r: &Reading| [(r.x, r.y), (r.x, r.bar.0), (r.x, r.bar.1)];
        let series = self.series.iter().flat_map(|s| s.readings.iter().flat_map(bars));
        curves.chain(bands).chain(series).filter(|(x, y)| self.x.takes(*x) && self.y.takes(*y)).unzip()
    }
}

/// The most points of a curve that are told in words.
const TOLD: usize = 5;

/// A few points of a curve in words, from the first to the last: `30 at 10, 31.2 at 80`.
fn told(points: &[(f64, f64)]) -> String {
    let sound: Vec<&(f64, f64)> = points.iter().filter(|(x, y)| x.is_finite() && y.is_finite()).collect();
    let last = sound.len().saturating_sub(1);
    let count = usize::min(TOLD, sound.len());
    let chosen = (0..count).filter_map(|k| sound.get(if count > 1 { k * last / (count - 1) } else { 0 }));
    let words: Vec<String> = chosen.map(|(x, y)| format!("{} at {}", digits(*y, 3), digits(*x, 3))).collect();
    words.join(", ")
}

impl Chart for LineChart {
    fn title(&self) -> &str {
        &self.title
    }

    fn description(&self) -> String {
        described(&self.description, || {
            let mut parts: Vec<String> =
                self.curves.iter().map(|c| format!("{} {}", c.name, told(&c.points))).collect();
            parts.extend(self.bands.iter().map(|b| b.name.clone()));
            let readings = |s: &Series| s.readings.iter().map(|r| (r.x, r.y)).collect::<Vec<_>>();
            parts.extend(self.series.iter().map(|s| format!("{} {}", s.name, told(&readings(s)))));
            let bounds = self.uprights.iter().chain(&self.levels).map(|b| b.name.as_str());
            let bounds = listed(bounds.chain(self.floor.iter().map(|(_, words)| words.as_str())));
            let end = if bounds.is_empty() { String::new() } else { format!(" {bounds}.") };
            let parts = listed(parts.iter().map(String::as_str));
            format!("{} over {}: {parts}.{end}", self.y.caption(), self.x.caption())
        })
    }

    fn table(&self) -> Table {
        line_table::table(self)
    }

    fn height(&self) -> f64 {
        66.0
    }

    fn scene(&self, paper: &Paper) -> Scene {
        let none = || empty(self, paper, "No finite values to draw");
        if self.values().0.is_empty() { none() } else { line_draw::scene(self, paper).unwrap_or_else(none) }
    }
}

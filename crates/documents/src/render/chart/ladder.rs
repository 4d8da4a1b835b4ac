//! Rungs of prediction on one axis: what a rule says, what a bound allows, what is expected, what was measured.

use super::axis::Axis;
use super::bound::Bound;
use super::key::Key;
use super::paper::{Paper, empty};
use super::rows::Rows;
use super::stroke::Sign;
use super::{Chart, described, listed, rungs, value};
use crate::render::scene::Scene;
use crate::render::text::Table;

/// What a rung is, which decides its sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RungKind {
    /// A rule, a bound, a theory: a ring.
    Bound,
    /// What the prediction rests on: a solid circle, name in heavy lettering.
    Expected,
    /// A measurement: a solid diamond.
    Measured,
}

/// One rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// Its name.
    pub name: String,
    /// Its value, if it has one.
    pub value: Option<f64>,
    /// Its band from low to high, if it has one.
    pub band: Option<(f64, f64)>,
    /// What it is.
    pub kind: RungKind,
    /// What is written in place of a value: why there is none.
    pub words: String,
    /// What is written at the right in place of value and band, as `≤ 10`.
    pub written: Option<String>,
}

/// Rungs under one another on a common axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    /// What it shows.
    pub title: String,
    /// The text alternative; one is made if empty.
    pub description: String,
    /// The axis below.
    pub axis: Axis,
    /// The rungs, from above to below.
    pub rungs: Vec<Rung>,
    /// Limits and other lines across all rungs.
    pub bounds: Vec<Bound>,
    /// The least value that is promised, with its words; the field below it is tinted.
    pub floor: Option<(f64, String)>,
}

impl Rung {
    /// A rung with a value.
    #[must_use]
    pub fn new(name: &str, kind: RungKind, value: f64) -> Rung {
        Rung { name: name.to_owned(), value: Some(value), band: None, kind, words: String::new(), written: None }
    }

    /// The same with a band.
    #[must_use]
    pub fn within(mut self, low: f64, high: f64) -> Rung {
        self.band = Some((low, high));
        self
    }

    /// A rung without a value, and why.
    #[must_use]
    pub fn without(name: &str, kind: RungKind, words: &str) -> Rung {
        Rung { value: None, words: words.to_owned(), ..Rung::new(name, kind, 0.0) }
    }

    /// The value, if it is a number.
    pub(super) fn number(&self) -> Option<f64> {
        self.value.filter(|v| v.is_finite())
    }

    /// The band, if both ends are numbers, lower end first.
    pub(super) fn range(&self) -> Option<(f64, f64)> {
        self.band.filter(|(a, b)| a.is_finite() && b.is_finite()).map(|(a, b)| if b < a { (b, a) } else { (a, b) })
    }
}

impl RungKind {
    /// The sign of its value.
    #[must_use]
    pub fn sign(self) -> Sign {
        match self {
            RungKind::Bound => Sign::Ring,
            RungKind::Expected => Sign::Dot,
            RungKind::Measured => Sign::Diamond,
        }
    }
}

impl Ladder {
    /// A ladder without rungs.
    #[must_use]
    pub fn new(title: &str, axis: Axis) -> Ladder {
        let (title, description) = (title.to_owned(), String::new());
        Ladder { title, description, axis, rungs: Vec::new(), bounds: Vec::new(), floor: None }
    }
}

impl Chart for Ladder {
    fn title(&self) -> &str {
        &self.title
    }

    fn description(&self) -> String {
        described(&self.description, || {
            let number = |r: &Rung| r.written.clone().or_else(|| r.number().map(value));
            let rung = |r: &Rung| number(r).map_or(r.name.clone(), |v| format!("{} {v}", r.name));
            let rungs: Vec<String> = self.rungs.iter().map(rung).collect();
            let bounds = self.bounds.iter().map(|b| b.name.as_str());
            format!("{}: {}. {}", self.axis.caption(), listed(rungs.iter().map(String::as_str)), listed(bounds))
        })
    }

    fn table(&self) -> Table {
        let caption = self.axis.caption();
        let mut table = Table { header: vec!["Rung".to_owned(), caption.clone()], rows: Vec::new() };
        table.header.extend([format!("{caption}, low"), format!("{caption}, high"), "Remark".to_owned()]);
        for rung in &self.rungs {
            let [low, high] = rung.range().map_or([String::new(), String::new()], |(l, h)| [value(l), value(h)]);
            let number = || rung.number().map_or("-".to_owned(), value);
            let [number, low, high] = match &rung.written {
                Some(text) => [text.clone(), String::new(), String::new()],
                None => [number(), low, high],
            };
            table.row([rung.name.clone(), number, low, high, rung.words.clone()]);
        }
        let mut line = |name: &str, at: f64| {
            table.row([name.to_owned(), value(at), String::new(), String::new(), String::new()]);
        };
        self.bounds.iter().for_each(|b| line(&b.name, b.at));
        self.floor.iter().for_each(|(at, words)| line(words, *at));
        table
    }

    fn height(&self) -> f64 {
        let rows = self.rungs.iter().filter(|r| r.number().is_some() || r.range().is_some()).count();
        Rows::fair(rows, false, Key::fair(5 + self.rungs.len() - rows))
    }

    fn scene(&self, paper: &Paper) -> Scene {
        let why = if self.rungs.is_empty() { "No rungs to draw" } else { "No rung has a finite value" };
        rungs::scene(self, paper).unwrap_or_else(|| empty(self, paper, why))
    }
}

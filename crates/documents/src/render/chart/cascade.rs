//! What is left of the oil after each stage: bars stacked by class, or sums on a logarithmic axis.

use super::axis::Axis;
use super::key::Key;
use super::paper::{Paper, empty};
use super::rows::Rows;
use super::{Chart, brief, described, listed, stack, value};
use crate::render::scene::Scene;
use crate::render::text::Table;

/// What is left after one stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// The stage: `plates`.
    pub name: String,
    /// What is left of each class, in the order of the classes; one number if there are none.
    pub parts: Vec<f64>,
}

/// Stages under one another, in the order of flow. On a linear axis bars are stacked by class;
/// on a logarithmic one, where lengths do not add up, signs show the sums.
#[derive(Debug, Clone, PartialEq)]
pub struct Cascade {
    /// What it shows.
    pub title: String,
    /// The text alternative; one is made if empty.
    pub description: String,
    /// The axis below.
    pub axis: Axis,
    /// What stands over the sums at the right.
    pub head: String,
    /// Names of the classes, from left to right.
    pub classes: Vec<String>,
    /// The stages.
    pub stages: Vec<Stage>,
}

impl Stage {
    /// A stage with what it leaves.
    #[must_use]
    pub fn new(name: &str, parts: impl IntoIterator<Item = f64>) -> Stage {
        Stage { name: name.to_owned(), parts: parts.into_iter().collect() }
    }

    /// The sum of what is left; `None` when a part is negative or not finite, or there is none.
    #[must_use]
    pub fn total(&self) -> Option<f64> {
        let sound = !self.parts.is_empty() && self.parts.iter().all(|p| p.is_finite() && *p >= 0.0);
        sound.then(|| self.parts.iter().sum()).filter(|s: &f64| s.is_finite())
    }
}

impl Cascade {
    /// A cascade without stages.
    #[must_use]
    pub fn new(title: &str, axis: Axis) -> Cascade {
        let (title, description) = (title.to_owned(), String::new());
        let head = format!("all, {}", axis.unit);
        Cascade { title, description, axis, head, classes: Vec::new(), stages: Vec::new() }
    }

    /// Every sum that can be drawn.
    pub(super) fn totals(&self) -> Vec<f64> {
        self.stages.iter().filter_map(Stage::total).filter(|t| self.axis.takes(*t)).collect()
    }
}

impl Chart for Cascade {
    fn title(&self) -> &str {
        &self.title
    }

    fn description(&self) -> String {
        described(&self.description, || {
            let part = |stage: &Stage, k: usize| stage.parts.get(k).copied().filter(|v| *v > 0.0).map(brief);
            let parts = |stage: &Stage| {
                let named = self.classes.iter().enumerate();
                let parts: Vec<String> = named.filter_map(|(k, c)| Some(format!("{c} {}", part(stage, k)?))).collect();
                if parts.len() > 1 { format!(" ({})", parts.join(", ")) } else { String::new() }
            };
            let total = |s: &Stage| s.total().map_or_else(|| "-".to_owned(), brief);
            let stages: Vec<String> =
                self.stages.iter().map(|s| format!("{} {}{}", s.name, total(s), parts(s))).collect();
            format!("{}: {}.", self.axis.caption(), listed(stages.iter().map(String::as_str)))
        })
    }

    fn table(&self) -> Table {
        let mut table = Table { header: vec!["Stage".to_owned()], rows: Vec::new() };
        table.header.extend(self.classes.iter().cloned());
        table.header.push(self.axis.caption());
        for stage in &self.stages {
            let mut row = vec![stage.name.clone()];
            row.extend((0..self.classes.len()).map(|k| stage.parts.get(k).map_or_else(String::new, |v| value(*v))));
            row.push(stage.total().map_or("-".to_owned(), value));
            table.rows.push(row);
        }
        table
    }

    fn height(&self) -> f64 {
        Rows::fair(
            self.stages.len(),
            Rows::long(self.stages.iter().map(|s| s.name.as_str())),
            Key::fair(self.classes.len()),
        )
    }

    fn scene(&self, paper: &Paper) -> Scene {
        stack::scene(self, paper).unwrap_or_else(|| empty(self, paper, "No finite values to draw"))
    }
}

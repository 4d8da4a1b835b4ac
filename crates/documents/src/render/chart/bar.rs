//! Horizontal bars: what an uncertain input does to a result, and how much of the spread it explains.

use super::axis::Axis;
use super::paper::{Paper, empty};
use super::{Chart, described, listed, shares, tornado, value};
use crate::render::scene::Scene;
use crate::render::text::Table;

/// One input varied alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    /// The input.
    pub name: String,
    /// The result with the input at its low end.
    pub low: f64,
    /// The result with the input at its high end.
    pub high: f64,
    /// What is written at the low end's bar, such as the input's value there; the result if empty.
    pub low_text: String,
    /// What is written at the high end's bar.
    pub high_text: String,
}

/// One input's share of the spread of a result.
#[derive(Debug, Clone, PartialEq)]
pub struct Share {
    /// The input.
    pub name: String,
    /// What it explains alone.
    pub first: f64,
    /// What would remain unexplained without it.
    pub total: f64,
}

/// What the bars stand for.
#[derive(Debug, Clone, PartialEq)]
pub enum Bars {
    /// Results about the one with every input at its best value; the widest is drawn first.
    Tornado {
        /// The result with every input at its best value.
        centre: f64,
        /// The inputs.
        swings: Vec<Swing>,
    },
    /// Shares, the largest total first.
    Shares(Vec<Share>),
}

/// Horizontal bars on one axis.
#[derive(Debug, Clone, PartialEq)]
pub struct BarChart {
    /// What it shows.
    pub title: String,
    /// The text alternative; one is made if empty.
    pub description: String,
    /// The axis below.
    pub axis: Axis,
    /// The bars.
    pub bars: Bars,
}

impl BarChart {
    /// A chart of bars; a tornado's axis keeps to its data, shares begin at 0.
    #[must_use]
    pub fn new(title: &str, axis: Axis, bars: Bars) -> BarChart {
        let axis = if matches!(bars, Bars::Tornado { .. }) { axis.close() } else { axis };
        BarChart { title: title.to_owned(), description: String::new(), axis, bars }
    }

    /// The swings as drawn: widest first, those without finite ends last.
    pub(super) fn swings(&self) -> Vec<&Swing> {
        let Bars::Tornado { swings, .. } = &self.bars else {
            return Vec::new();
        };
        sorted(swings, |s| (s.high - s.low).abs())
    }

    /// The shares as drawn: largest total first.
    pub(super) fn shares(&self) -> Vec<&Share> {
        let Bars::Shares(shares) = &self.bars else {
            return Vec::new();
        };
        sorted(shares, |s| s.total)
    }
}

/// Largest first, in the order given where equal, what is not finite last.
fn sorted<T>(all: &[T], size: impl Fn(&T) -> f64) -> Vec<&T> {
    let size = |t: &T| Some(size(t)).filter(|s| s.is_finite()).unwrap_or(f64::NEG_INFINITY);
    let mut all: Vec<&T> = all.iter().collect();
    all.sort_by(|a, b| size(b).total_cmp(&size(a)));
    all
}

impl Chart for BarChart {
    fn title(&self) -> &str {
        &self.title
    }

    fn description(&self) -> String {
        described(&self.description, || {
            let names = self.swings().into_iter().map(|s| &s.name).chain(self.shares().into_iter().map(|s| &s.name));
            format!("{}, largest first: {}.", self.axis.caption(), listed(names.map(String::as_str)))
        })
    }

    fn table(&self) -> Table {
        let caption = self.axis.caption();
        match &self.bars {
            Bars::Tornado { centre, .. } => {
                let mut table = Table::new(["Input", "At low end", "At high end"]);
                table.header.extend([format!("{caption}, low end"), format!("{caption}, high end")]);
                for swing in self.swings() {
                    let Swing { name, low, high, low_text, high_text } = swing;
                    table.row([name.clone(), low_text.clone(), high_text.clone(), value(*low), value(*high)]);
                }
                let none = String::new;
                table.row(["All at their best value".to_owned(), none(), none(), value(*centre), value(*centre)]);
                table
            }
            Bars::Shares(_) => {
                let mut table = Table::new(["Input", "First order", "Total"]);
                for share in self.shares() {
                    table.row([share.name.clone(), value(share.first), value(share.total)]);
                }
                table
            }
        }
    }

    fn scene(&self, paper: &Paper) -> Scene {
        let drawn = match &self.bars {
            Bars::Tornado { centre, .. } => tornado::scene(self, *centre, paper),
            Bars::Shares(_) => shares::scene(self, paper),
        };
        drawn.unwrap_or_else(|| empty(self, paper, "No finite values to draw"))
    }
}

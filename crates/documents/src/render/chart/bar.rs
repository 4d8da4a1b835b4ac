//! Horizontal bars: what an uncertain input does to a result, and how much of the spread it explains.

use super::axis::Axis;
use super::bound::Bound;
use super::key::Key;
use super::paper::{Paper, empty};
use super::rows::Rows;
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
    /// The input's value at its low end.
    pub low_text: String,
    /// The input's value at its high end.
    pub high_text: String,
    /// The two results as written at the right; the numbers if empty.
    pub written: String,
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
        /// Limits and other lines across all bars; the axis holds them too.
        bounds: Vec<Bound>,
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
    /// A chart of bars; the axis begins at 0, so that a small swing looks small, unless another is asked for.
    #[must_use]
    pub fn new(title: &str, axis: Axis, bars: Bars) -> BarChart {
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
            let swing = |s: &Swing| format!("{}: {}", tornado::named(s), tornado::results(s));
            let share = |s: &Share| format!("{}: {} alone, {} with the others", s.name, value(s.first), value(s.total));
            let mut rows: Vec<String> = self.swings().into_iter().map(swing).collect();
            rows.extend(self.shares().into_iter().map(share));
            let mut text =
                format!("{}, largest first: {}.", self.axis.caption(), listed(rows.iter().map(String::as_str)));
            if let Bars::Tornado { centre, bounds, .. } = &self.bars {
                text += &format!(" As expected: {}.", value(*centre));
                bounds.iter().for_each(|b| text += &format!(" {}.", b.name));
            }
            text
        })
    }

    fn table(&self) -> Table {
        let caption = self.axis.caption();
        match &self.bars {
            Bars::Tornado { centre, bounds, .. } => {
                let mut table = Table::new(["Input", "At low end", "At high end"]);
                table.header.extend([format!("{caption}, low end"), format!("{caption}, high end")]);
                for swing in self.swings() {
                    let Swing { name, low, high, low_text, high_text, .. } = swing;
                    table.row([name.clone(), low_text.clone(), high_text.clone(), value(*low), value(*high)]);
                }
                let none = String::new;
                table.row(["All at their best value".to_owned(), none(), none(), value(*centre), value(*centre)]);
                for bound in bounds {
                    table.row([bound.name.clone(), none(), none(), value(bound.at), value(bound.at)]);
                }
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

    fn height(&self) -> f64 {
        match &self.bars {
            Bars::Tornado { swings, bounds, .. } => {
                let names: Vec<String> = swings.iter().map(tornado::named).collect();
                Rows::fair(
                    swings.len(),
                    Rows::long(names.iter().map(String::as_str)),
                    Key::fair(4 * (1 + bounds.len())),
                )
            }
            Bars::Shares(shares) => {
                Rows::fair(shares.len(), Rows::long(shares.iter().map(|s| s.name.as_str())), Key::fair(2))
            }
        }
    }

    fn scene(&self, paper: &Paper) -> Scene {
        let drawn = match &self.bars {
            Bars::Tornado { centre, bounds, .. } => tornado::scene(self, (*centre, bounds), paper),
            Bars::Shares(_) => shares::scene(self, paper),
        };
        drawn.unwrap_or_else(|| empty(self, paper, "No finite values to draw"))
    }
}

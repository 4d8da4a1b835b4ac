//! Charts in ink and tints of it: curves, bars, stages, rungs, readable without colour.
//!
//! - [`LineChart`]: curves over a field, bands, measured points. [`BarChart`]: tornado and ranked shares.
//! - [`Cascade`]: what is left after each stage. [`Ladder`]: predictions on one axis, rung by rung.
//! - [`axis`], [`ticks`], [`plot`]: the field. [`stroke`], [`key`], [`bound`], [`label`]: what is drawn and written on it.
//!
//! All charts of a width have their field at the same place: names and axis titles at its left, values and names of curves at
//! its right. Nothing is written on what is drawn but where a place beside a curve is free.
//! A chart draws numbers that exist and finds none. Every text stands clear of every other; what finds no
//! room goes to the key, what even that cannot hold is in the [`Chart::table`].

pub mod axis;
mod bar;
pub mod bound;
mod cascade;
pub mod key;
pub mod label;
mod ladder;
mod line;
mod line_draw;
mod line_ink;
mod line_name;
mod line_table;
mod paper;
pub mod plot;
mod rows;
mod rungs;
mod shares;
mod side;
mod stack;
pub mod stroke;
#[cfg(test)]
mod tests;
pub mod ticks;
mod tornado;
mod trace;

use super::scene::Scene;
use super::text::Table;
pub use axis::Axis;
pub use bar::{BarChart, Bars, Share, Swing};
pub use bound::Bound;
pub use cascade::{Cascade, Stage};
pub use ladder::{Ladder, Rung, RungKind};
pub use line::{Band, Curve, LineChart, Reading, Series};
pub use paper::Paper;
use stillrise_units::print::digits;
pub use stroke::{Sign, Stroke};

/// Height of capitals of a chart's title, mm.
pub const TITLE: f64 = 2.8;

/// What every chart can do.
pub trait Chart {
    /// What it shows, in a few words.
    fn title(&self) -> &str;
    /// What someone who cannot see it should be told.
    fn description(&self) -> String;
    /// Its data, as an alternative to the picture.
    fn table(&self) -> Table;
    /// The height that suits what it shows, mm.
    fn height(&self) -> f64;
    /// The picture. Paper too small for its lettering is enlarged.
    fn scene(&self, paper: &Paper) -> Scene;
}

/// A value as written on a chart: four significant digits, `-` for what is no number.
fn value(number: f64) -> String {
    if number.is_finite() { digits(number, 4) } else { "-".to_owned() }
}

/// A value as written on a picture: three significant digits.
fn brief(number: f64) -> String {
    if number.is_finite() { digits(number, 3) } else { "-".to_owned() }
}

/// A description as given, or else one made of parts.
fn described(given: &str, made: impl FnOnce() -> String) -> String {
    if given.trim().is_empty() { made() } else { given.to_owned() }
}

/// Names joined for a description.
fn listed<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.filter(|n| !n.trim().is_empty()).collect::<Vec<_>>().join("; ")
}

//! Axes: what is measured, in which unit, and over which range.

use super::label::{SMALL, width};
use super::ticks::Graduation;
use stillrise_units::math;

/// An axis as asked for; [`Axis::graduate`] divides it for the data and the room there is.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// What is measured.
    pub title: String,
    /// The unit as printed; empty for a pure number.
    pub unit: String,
    /// Whether the axis is logarithmic.
    pub log: bool,
    /// The range, if stated; otherwise it is taken from the data.
    pub range: Option<(f64, f64)>,
    /// Whether a linear axis without stated range begins (or ends) at 0.
    pub zero: bool,
}

/// Direction of an axis on paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Left to right.
    Level,
    /// Upward.
    Up,
}

/// The most divisions of an axis: more are counted, not read.
const DIVISIONS: u16 = 6;
/// Numbers larger than this are not drawn, smaller than its inverse count as 0.
const LARGEST: f64 = 1e90;

impl Axis {
    /// A linear axis that shows 0.
    #[must_use]
    pub fn linear(title: &str, unit: &str) -> Axis {
        Axis { title: title.to_owned(), unit: unit.to_owned(), log: false, range: None, zero: true }
    }

    /// A logarithmic axis.
    #[must_use]
    pub fn log(title: &str, unit: &str) -> Axis {
        Axis { log: true, zero: false, ..Axis::linear(title, unit) }
    }

    /// The same over a stated range; one that is empty or impossible is ignored.
    #[must_use]
    pub fn over(mut self, low: f64, high: f64) -> Axis {
        self.range = Some((low, high));
        self
    }

    /// The same with the range of the data alone, 0 shown only if it lies within.
    #[must_use]
    pub fn close(mut self) -> Axis {
        self.zero = false;
        self
    }

    /// Title and unit as written at the axis.
    #[must_use]
    pub fn caption(&self) -> String {
        let Axis { title, unit, .. } = self;
        if unit.is_empty() { title.clone() } else { format!("{title}, {unit}") }
    }

    /// Whether a value can stand on this kind of axis.
    #[must_use]
    pub fn takes(&self, value: f64) -> bool {
        value.abs() < LARGEST && (!self.log || value > 1.0 / LARGEST)
    }

    /// The axis divided for data and a length on paper in mm, with as many ticks as can be written
    /// side by side; `None` when neither range nor data say what to draw.
    #[must_use]
    pub fn graduate(&self, data: &[f64], length: f64, along: Along) -> Option<Graduation> {
        let sound = |&(low, high): &(f64, f64)| self.takes(low) && self.takes(high) && distinct(low, high);
        let stated = self.range.filter(sound);
        let range = stated.or_else(|| self.range_of(data))?;
        let divide = |most| {
            let stated = stated.is_some();
            if self.log {
                // Unequal divisions are read one by one.
                Graduation::logarithmic(range, stated, most + 1)
            } else {
                Graduation::linear(range, stated, most)
            }
        };
        let fits = |g: &Graduation| fits(g, length, along);
        let mut finer = (2..=DIVISIONS).rev().map(divide);
        let coarsest = divide(1);
        Some(finer.find(fits).unwrap_or(coarsest))
    }

    /// The range of what can be drawn, never empty.
    fn range_of(&self, data: &[f64]) -> Option<(f64, f64)> {
        let ends = |v: &f64| (*v, *v);
        let drawn = data.iter().filter(|v| self.takes(**v));
        let (mut low, mut high) = drawn.map(ends).reduce(|a, b| (math::min(a.0, b.0), math::max(a.1, b.1)))?;
        if self.log {
            return Some((low, high));
        }
        if self.zero {
            (low, high) = (math::min(low, 0.0), math::max(high, 0.0));
        }
        if distinct(low, high) {
            return Some((low, high));
        }
        // One value alone: half of it to either side, or 0 to 1.
        let half = 0.5 * low.abs();
        Some(if half > 1.0 / LARGEST { (low - half, low + half) } else { (0.0, 1.0) })
    }
}

/// Whether a range is wide enough for its divisions to be told apart.
fn distinct(low: f64, high: f64) -> bool {
    high - low > 1e-9 * math::max(low.abs(), high.abs()) && high - low > 1.0 / LARGEST
}

/// Whether all tick texts stand clear of each other.
fn fits(graduation: &Graduation, length: f64, along: Along) -> bool {
    let place = |value| graduation.share(value).unwrap_or(0.0) * length;
    let (room, half) = match along {
        Along::Level => (2.0, 0.5),
        Along::Up => (4.2, 0.0),
    };
    let reach = |text: &str| half * width(text, SMALL);
    let clear = |pair: &[super::ticks::Tick]| match pair {
        [a, b] => {
            place(b.value) - place(a.value) >= reach(&a.text) + reach(&b.text) + room + (1.0 - 2.0 * half) * SMALL
        }
        _ => true,
    };
    graduation.major.windows(2).all(clear)
}

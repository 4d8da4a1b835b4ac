//! Linear dimensions: extension lines, dimension line, ends, and a text that finds its place.

use super::geometry::{Point, pt};
use super::item::{Fill, Shape};
use super::lettering::{Anchor, TEXT, Text, text_width};
use super::mark::{ABOVE, ARROW, arrow_head, thin};
use super::pen::Pen;
use stillrise_units::{Length, math};

/// Distance of parallel dimension lines, mm; the first stands this far from the outline.
pub const STEP: f64 = 8.0;
/// Distance of rows of text on the far side of a dimension line, mm.
pub const ROW: f64 = TEXT + 1.3;
/// Extension lines begin this far from the outline, mm, and pass the dimension line by twice as much.
const GAP: f64 = 1.0;

/// Direction of a dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// Measured left to right.
    Across,
    /// Measured up and down.
    Up,
}

/// What stands at the ends of a dimension line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ends {
    /// Solid arrow heads.
    Arrows,
    /// Oblique strokes.
    Ticks,
}

/// Where the text of a dimension stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Seat {
    /// Between the ends, at this share of the way from the left or lower one: 0.5 is the middle.
    Between(f64),
    /// Beyond the right or upper end.
    After,
    /// Beyond the left or lower end.
    Before,
    /// On the far side of the line, in this row from it (1, 2), with a stroke to its middle.
    Off(u8),
}

/// A linear dimension.
#[derive(Debug, Clone, PartialEq)]
pub struct Dimension {
    /// Direction measured.
    pub axis: Axis,
    /// First point measured.
    pub from: Point,
    /// Second point measured.
    pub to: Point,
    /// Where the dimension line stands: its y if across, its x if up.
    pub line: f64,
    /// What is written.
    pub text: String,
    /// The true length that is written.
    pub length: Length,
    /// Name of the view, whose scale applies.
    pub view: String,
    /// Arrows or ticks.
    pub ends: Ends,
    /// Place of the text.
    pub seat: Seat,
    /// Whether a neighbour in a chain has drawn the extension line at `from` already.
    pub joined: bool,
}

impl Dimension {
    /// The length measured on paper, mm.
    #[must_use]
    pub fn paper_length(&self) -> f64 {
        let (low, high) = self.span();
        high - low
    }

    /// The same dimension with its text in each place that can hold it, best first.
    #[must_use]
    pub fn seats(&self) -> Vec<Dimension> {
        let room = self.paper_length() - text_width(&self.text, TEXT);
        let seats: &[Seat] = if room >= 25.0 {
            &[Seat::Between(0.5), Seat::Between(0.3), Seat::Between(0.7), Seat::Off(1), Seat::After, Seat::Before]
        } else if room >= 1.0 {
            &[Seat::Between(0.5), Seat::Off(1), Seat::Off(2), Seat::After, Seat::Before]
        } else if self.ends == Ends::Ticks {
            &[Seat::Off(1), Seat::Off(2), Seat::Off(3), Seat::After, Seat::Before]
        } else {
            &[Seat::After, Seat::Before, Seat::Off(1), Seat::Off(2)]
        };
        seats.iter().map(|&seat| Dimension { seat, ..self.clone() }).collect()
    }

    /// The far side of the line, away from what is measured: 1 for down or right, -1 otherwise.
    #[must_use]
    pub fn outward(&self) -> f64 {
        let off = match self.axis {
            Axis::Across => self.from.y - self.line,
            Axis::Up => self.from.x - self.line,
        };
        if off > 0.0 { -1.0 } else { 1.0 }
    }

    /// Coordinates of the ends along the dimension line, in the direction of reading (right, up).
    fn span(&self) -> (f64, f64) {
        let (a, b) = match self.axis {
            Axis::Across => (self.from.x, self.to.x),
            Axis::Up => (-self.from.y, -self.to.y),
        };
        (math::min(a, b), math::max(a, b))
    }

    /// The shapes it is drawn with.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        let across = self.axis == Axis::Across;
        // Drawn as if across, `s` along the line and `t` off it; up is the same turned to the left.
        let paper = |s: f64, t: f64| {
            if across { pt(s, self.line + t) } else { pt(self.line + t, -s) }
        };
        let (low, high) = self.span();
        let inside = high - low >= 3.0 * ARROW || self.ends == Ends::Ticks;
        let reach = if inside { 0.0 } else { 2.0 * ARROW };
        let width = text_width(&self.text, TEXT);
        let (mut start, mut end) = (low - reach, high + reach);
        let lead = reach + 1.5;
        let far = self.outward();
        let middle = 0.5 * (low + high);
        let (s, t, anchor) = match self.seat {
            Seat::Between(share) => (low + share * (high - low), -ABOVE, Anchor::Middle),
            Seat::After => (high + lead, -ABOVE, Anchor::Start),
            Seat::Before => (low - lead, -ABOVE, Anchor::End),
            Seat::Off(row) => {
                let rows = f64::from(row.max(1) - 1) * ROW;
                (middle, far * (2.0 * GAP + 0.9 + rows) + if far > 0.0 { TEXT } else { 0.0 }, Anchor::Middle)
            }
        };
        match self.seat {
            Seat::Between(_) | Seat::Off(_) => {}
            Seat::After => end = high + lead + width,
            Seat::Before => start = low - lead - width,
        }
        let mut shapes = Vec::new();
        for (point, drawn) in [(self.from, self.joined), (self.to, false)] {
            let (s, t) = if across { (point.x, point.y - self.line) } else { (-point.y, point.x - self.line) };
            if t.abs() > GAP && !drawn {
                let sign = if t > 0.0 { 1.0 } else { -1.0 };
                shapes.push(thin(&[paper(s, t - sign * GAP), paper(s, -sign * 2.0 * GAP)]));
            }
        }
        shapes.push(thin(&[paper(start, 0.0), paper(end, 0.0)]));
        for (tip, tail) in [(low, high), (high, low)] {
            let tail = if inside { tail } else { 2.0 * tip - tail };
            shapes.push(match self.ends {
                Ends::Arrows => arrow_head(paper(tail, 0.0), paper(tip, 0.0), ARROW),
                Ends::Ticks => tick(paper(tip, 0.0)),
            });
        }
        if let Seat::Off(_) = self.seat {
            let reach = t - if far > 0.0 { TEXT + 0.5 } else { -0.9 };
            shapes.push(thin(&[paper(middle, 0.0), paper(middle, reach)]));
        }
        let mut text = Text::new(paper(s, t), &self.text).anchored(anchor).cleared();
        if !across {
            text = text.up();
        }
        shapes.push(Shape::Text(text));
        shapes
    }
}

fn tick(at: Point) -> Shape {
    Shape::Path {
        rings: vec![vec![at.by(-1.2, 1.2), at.by(1.2, -1.2)]],
        closed: false,
        pen: Some(Pen::Medium),
        fill: Fill::None,
    }
}

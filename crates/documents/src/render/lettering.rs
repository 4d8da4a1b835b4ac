//! Lettering: a monospaced face on drawings, the face of the papers on charts; the room a text takes is known exactly of both.

use super::geometry::{Point, Rect, pt};
use super::glyphs;
use super::text::{cells, plain};
use stillrise_units::math;

/// Height of capitals in ordinary lettering, mm.
pub const TEXT: f64 = 2.5;
/// Height of capitals in headings and view titles, mm.
pub const HEADING: f64 = 3.5;
/// Height of capitals in captions of fields, mm: the least that is legible on paper.
pub const CAPTION: f64 = 1.8;

/// Font size per height of capitals: DejaVu Sans Mono has 2048 units to the em, capitals of 1493.
pub const EM: f64 = 2048.0 / 1493.0;
/// Advance of every character per height of capitals (1233 of the same units): the face is monospaced.
pub const ADVANCE: f64 = 1233.0 / 1493.0;
/// Depth of descenders per height of capitals.
const DESCENT: f64 = 483.0 / 1493.0;

/// Width of text on paper, mm, at a height of capitals.
#[must_use]
pub fn text_width(text: &str, size: f64) -> f64 {
    f64::from(u32::try_from(cells(text)).unwrap_or(u32::MAX)) * ADVANCE * size
}

/// The face of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// Monospaced: drawings, which other programs letter anew.
    Mono,
    /// The face of the papers, each letter as wide as it is: charts.
    Book,
}

impl Face {
    /// Width of text on paper, mm, at a height of capitals.
    #[must_use]
    pub fn width(self, text: &str, size: f64, bold: bool) -> f64 {
        match self {
            Face::Mono => text_width(text, size),
            Face::Book => {
                let units: u32 = text.chars().map(|c| u32::from(glyphs::book_advance(c, bold))).sum();
                f64::from(units) * size / f64::from(glyphs::BOOK_CAPITALS)
            }
        }
    }

    /// The face the widths are those of, then faces of much the same build, as a picture asks for them.
    #[must_use]
    pub fn families(self) -> &'static str {
        match self {
            Face::Mono => "DejaVu Sans Mono, Menlo, Consolas, monospace",
            Face::Book => "Libertinus Serif, Georgia, serif",
        }
    }

    /// Font size per height of capitals.
    #[must_use]
    pub fn em(self) -> f64 {
        match self {
            Face::Mono => EM,
            Face::Book => f64::from(glyphs::BOOK_EM) / f64::from(glyphs::BOOK_CAPITALS),
        }
    }

    /// Depth of descenders per height of capitals.
    fn descent(self) -> f64 {
        match self {
            Face::Mono => DESCENT,
            Face::Book => f64::from(glyphs::BOOK_DESCENT) / f64::from(glyphs::BOOK_CAPITALS),
        }
    }
}

/// Which point of the text stands at its position.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The beginning.
    Start,
    /// The middle.
    Middle,
    /// The end.
    End,
}

/// The direction of reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// Left to right.
    Level,
    /// Upward, read from the right side of the sheet.
    Up,
}

/// A line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Position of the anchor on the baseline.
    pub at: Point,
    /// The text.
    pub text: String,
    /// Height of capitals, mm.
    pub size: f64,
    /// What stands at `at`.
    pub anchor: Anchor,
    /// Direction of reading.
    pub turn: Turn,
    /// The face.
    pub face: Face,
    /// Heavy lettering, in the monospaced face of the same width.
    pub bold: bool,
    /// Whether the ground behind is cleared, for text over hatching.
    pub clear: bool,
}

impl Text {
    /// Level text of ordinary size that begins at `at`.
    #[must_use]
    pub fn new(at: Point, text: &str) -> Text {
        let (anchor, turn) = (Anchor::Start, Turn::Level);
        Text { at, text: plain(text), size: TEXT, anchor, turn, face: Face::Mono, bold: false, clear: false }
    }

    /// The same with another height of capitals.
    #[must_use]
    pub fn sized(mut self, size: f64) -> Text {
        self.size = size;
        self
    }

    /// The same in another face.
    #[must_use]
    pub fn faced(mut self, face: Face) -> Text {
        self.face = face;
        self
    }

    /// The same, anchored otherwise.
    #[must_use]
    pub fn anchored(mut self, anchor: Anchor) -> Text {
        self.anchor = anchor;
        self
    }

    /// The same, reading upward.
    #[must_use]
    pub fn up(mut self) -> Text {
        self.turn = Turn::Up;
        self
    }

    /// The same in heavy lettering.
    #[must_use]
    pub fn bold(mut self) -> Text {
        self.bold = true;
        self
    }

    /// The same with the ground behind it cleared.
    #[must_use]
    pub fn cleared(mut self) -> Text {
        self.clear = true;
        self
    }

    /// Its width on paper, mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.face.width(&self.text, self.size, self.bold)
    }

    /// The rectangle it takes, from descenders to capitals.
    #[must_use]
    pub fn area(&self) -> Rect {
        let width = self.width();
        let before = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => 0.5 * width,
            Anchor::End => width,
        };
        let (deep, high) = (self.face.descent() * self.size, self.size);
        let Point { x, y } = self.at;
        match self.turn {
            Turn::Level => Rect { x0: x - before, y0: y - high, x1: x - before + width, y1: y + deep },
            Turn::Up => Rect { x0: x - high, y0: y + before - width, x1: x + deep, y1: y + before },
        }
    }
}

/// Eight places around a point, `gap` mm away, for a label of a height: right, left, above, below, corners.
#[must_use]
pub fn around(at: Point, gap: f64, size: f64) -> [(Point, Anchor); 8] {
    let (middle, above, below) = (at.y + 0.4 * size, at.y - gap, at.y + gap + size);
    let near = math::max(0.7 * gap, 0.0);
    [
        (pt(at.x + gap, middle), Anchor::Start),
        (pt(at.x - gap, middle), Anchor::End),
        (pt(at.x, above), Anchor::Middle),
        (pt(at.x, below), Anchor::Middle),
        (pt(at.x + near, at.y - near), Anchor::Start),
        (pt(at.x - near, at.y - near), Anchor::End),
        (pt(at.x + near, at.y + near + size), Anchor::Start),
        (pt(at.x - near, at.y + near + size), Anchor::End),
    ]
}

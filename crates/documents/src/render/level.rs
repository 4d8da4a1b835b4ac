//! Level marks, and how near ones keep out of each other's way.

use super::geometry::{Point, apart};
use super::item::{Fill, Shape};
use super::lettering::{Anchor, TEXT, Text, text_width};
use super::mark::{ABOVE, thin};
use super::pen::Pen;
use stillrise_units::math;

/// What a level mark marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LevelKind {
    /// A free surface: open triangle, three strokes below.
    Liquid,
    /// An invert, a lid, a grade: solid triangle.
    Solid,
}

/// A level mark: triangle on the level, elevation on the line beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct Level {
    /// A point on the level where the mark's line begins.
    pub at: Point,
    /// What is written.
    pub text: String,
    /// Free surface or solid edge.
    pub kind: LevelKind,
    /// Whether the text stands to the left of `at`.
    pub left: bool,
    /// How far the text is moved down, mm, with a kinked line: see [`spread`].
    pub shift: f64,
    /// How far the triangle stands from `at`, mm.
    pub reach: f64,
    /// Where the text begins, mm from `at`.
    pub landing: f64,
}

/// Height of a level triangle, mm.
const TRIANGLE: f64 = 2.6;

impl Level {
    /// A mark to the right of `at`.
    #[must_use]
    pub fn new(at: Point, text: &str, kind: LevelKind) -> Level {
        Level { at, text: super::text::plain(text), kind, left: false, shift: 0.0, reach: 2.5, landing: 5.0 }
    }

    /// The same, to the left.
    #[must_use]
    pub fn left(mut self) -> Level {
        self.left = true;
        self
    }

    /// The shapes it is drawn with.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        let sign = if self.left { -1.0 } else { 1.0 };
        let paper = |dx: f64, dy: f64| self.at.by(sign * dx, dy);
        let landing = self.landing;
        let end = landing + text_width(&self.text, TEXT) + 0.5;
        let mut line = vec![paper(0.0, 0.0)];
        if self.shift != 0.0 {
            line.push(paper(math::max(landing - 4.0, 0.0), 0.0));
            line.push(paper(landing, self.shift));
        }
        line.push(paper(end, self.shift));
        let half = 0.6 * TRIANGLE;
        let triangle =
            vec![paper(self.reach, 0.0), paper(self.reach - half, -TRIANGLE), paper(self.reach + half, -TRIANGLE)];
        let solid = self.kind == LevelKind::Solid;
        let fill = if solid { Fill::Ink } else { Fill::Paper };
        let mut shapes =
            vec![thin(&line), Shape::Path { rings: vec![triangle], closed: true, pen: Some(Pen::Thin), fill }];
        if !solid {
            for (down, half) in [(0.7, 1.3), (1.4, 0.8), (2.1, 0.35)] {
                shapes.push(thin(&[paper(self.reach - half, down), paper(self.reach + half, down)]));
            }
        }
        let anchor = if self.left { Anchor::End } else { Anchor::Start };
        let text = Text::new(paper(landing, self.shift - ABOVE), &self.text).anchored(anchor).cleared();
        shapes.push(Shape::Text(text));
        shapes
    }
}

/// Moves the texts of marks on one side apart so that none stands on another, triangles of near
/// levels out of each other's way; the order from above to below is kept.
pub fn spread(levels: &mut [Level]) {
    const ROOM: f64 = TEXT + 2.0;
    levels.sort_by(|a, b| a.at.y.total_cmp(&b.at.y));
    let mut heights: Vec<f64> = levels.iter().map(|l| l.at.y).collect();
    apart(&mut heights, ROOM);
    let mut last: Option<(f64, f64)> = None;
    for (level, height) in levels.iter_mut().zip(heights) {
        let shift = height - level.at.y;
        level.shift = if shift.abs() < 0.01 { 0.0 } else { shift };
        level.reach = match last {
            Some((y, reach)) if level.at.y - y < TRIANGLE + 2.4 && reach < 10.0 => reach + 4.0,
            _ => 2.5,
        };
        last = Some((level.at.y, level.reach));
    }
    // All texts begin under one another, behind the farthest triangle and, if need be, a kink.
    let reach = levels.iter().map(|l| l.reach).fold(0.0, math::max);
    let kink = if levels.iter().any(|l| l.shift != 0.0) { 6.5 } else { 2.5 };
    levels.iter_mut().for_each(|l| l.landing = reach + kink);
}

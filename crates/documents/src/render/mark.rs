//! Leaders and numbered balloons, and what all marks share.

pub use super::dimension::{Axis, Dimension, Ends, ROW, STEP, Seat};
use super::geometry::{Point, Rect};
use super::item::{Fill, Item, Shape};
use super::lettering::{Anchor, TEXT, Text, text_width};
pub use super::level::{Level, LevelKind, spread};
use super::pen::Pen;
use stillrise_units::math;

/// Length of a dimension's arrow head, mm.
pub const ARROW: f64 = 2.5;
/// Radius of a balloon, mm.
pub const BALLOON: f64 = 3.5;
/// Distance of lettering from the line it stands on, mm.
pub(super) const ABOVE: f64 = 1.1;

/// Words with a line to what they speak of.
#[derive(Debug, Clone, PartialEq)]
pub struct Leader {
    /// The point spoken of.
    pub tip: Point,
    /// Where the level landing begins; the words stand on it.
    pub knee: Point,
    /// The words.
    pub text: String,
    /// A dot at the tip, for a tip inside an outline; otherwise an arrow, for a tip on a line.
    pub dot: bool,
}

impl Leader {
    /// The shapes it is drawn with; the landing runs away from the tip.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        let right = self.knee.x >= self.tip.x;
        let (sign, anchor) = if right { (1.0, Anchor::Start) } else { (-1.0, Anchor::End) };
        let end = self.knee.by(sign * (text_width(&self.text, TEXT) + 1.0), 0.0);
        let text = Text::new(self.knee.by(sign, -ABOVE), &self.text).anchored(anchor).cleared();
        vec![thin(&[self.tip, self.knee, end]), tip(self.knee, self.tip, self.dot), Shape::Text(text)]
    }
}

/// A number in a circle with a line to what it speaks of.
#[derive(Debug, Clone, PartialEq)]
pub struct Balloon {
    /// The point spoken of.
    pub tip: Point,
    /// Centre of the circle.
    pub centre: Point,
    /// The number.
    pub number: String,
    /// A second circle around the first: this one matters more.
    pub heavy: bool,
    /// A dot at the tip; otherwise an arrow.
    pub dot: bool,
}

impl Balloon {
    /// The same balloon at several centres, for [`super::scene::Scene::place`].
    pub fn at(&self, centres: impl IntoIterator<Item = Point>) -> Vec<Item> {
        let place = |centre| Item::Balloon(Balloon { centre, ..self.clone() });
        centres.into_iter().map(place).collect()
    }

    fn radius(&self) -> f64 {
        math::max(BALLOON, 0.5 * text_width(&self.number, TEXT) + 1.0) + if self.heavy { 0.8 } else { 0.0 }
    }

    /// The square around the circle.
    #[must_use]
    pub fn area(&self) -> Rect {
        Rect { x0: self.centre.x, y0: self.centre.y, x1: self.centre.x, y1: self.centre.y }.grown(self.radius())
    }

    /// The shapes it is drawn with.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        let radius = self.radius();
        let mut shapes = Vec::new();
        if self.centre.distance(self.tip) > radius {
            shapes.push(thin(&[self.centre.toward(self.tip, radius), self.tip]));
            shapes.push(tip(self.centre, self.tip, self.dot));
        }
        let circle = |radius| Shape::Circle { centre: self.centre, radius, pen: Some(Pen::Medium), fill: Fill::Paper };
        shapes.push(circle(radius));
        if self.heavy {
            shapes.push(circle(radius - 0.8));
        }
        let at = self.centre.by(0.0, 0.5 * TEXT);
        let text = Text::new(at, &self.number).anchored(Anchor::Middle);
        shapes.push(Shape::Text(if self.heavy { text.bold() } else { text }));
        shapes
    }
}

/// A solid arrow head of a length with its point at `tip`, coming from `tail`.
#[must_use]
pub fn arrow_head(tail: Point, tip: Point, length: f64) -> Shape {
    let base = tip.toward(tail, length);
    let half = 0.16;
    let (dx, dy) = (half * (tip.y - base.y), -half * (tip.x - base.x));
    let ring = vec![tip, base.by(dx, dy), base.by(-dx, -dy)];
    Shape::Path { rings: vec![ring], closed: true, pen: None, fill: Fill::Ink }
}

/// The end of a leader: a dot inside an outline, an arrow head on a line.
fn tip(from: Point, tip: Point, dot: bool) -> Shape {
    if dot {
        Shape::Circle { centre: tip, radius: 0.6, pen: None, fill: Fill::Ink }
    } else {
        arrow_head(from, tip, ARROW)
    }
}

pub(super) fn thin(points: &[Point]) -> Shape {
    Shape::Path { rings: vec![points.to_vec()], closed: false, pen: Some(Pen::Thin), fill: Fill::None }
}

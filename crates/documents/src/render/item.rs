//! What a drawing is made of: shapes, and marks that are drawn with shapes.

use super::geometry::{Point, Rect};
use super::hatch::Hatch;
use super::lettering::Text;
use super::mark::{Balloon, Dimension, Leader, Level};
use super::pen::{Layer, Pen};

/// What is inside an outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fill {
    /// Nothing.
    None,
    /// The paper: covers what lies below.
    Paper,
    /// Solid ink.
    Ink,
    /// A tint of the ink, in per cent, that covers what lies below.
    Tint(u8),
    /// Hatching.
    Hatch(Hatch),
    /// Hatching that covers what lies below.
    Over(Hatch),
}

/// What is finally drawn; marks are made of these.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// Lines through points.
    Path {
        /// One or more rings (even-odd when filled) or open lines.
        rings: Vec<Vec<Point>>,
        /// Whether the last point joins the first.
        closed: bool,
        /// The line; `None` for a fill without outline.
        pen: Option<Pen>,
        /// The inside.
        fill: Fill,
    },
    /// A circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius, mm.
        radius: f64,
        /// The line.
        pen: Option<Pen>,
        /// The inside.
        fill: Fill,
    },
    /// A line of text.
    Text(Text),
}

impl Shape {
    /// The same, moved on paper.
    #[must_use]
    pub fn moved(self, dx: f64, dy: f64) -> Shape {
        match self {
            Shape::Path { rings, closed, pen, fill } => {
                let rings = rings.into_iter().map(|ring| ring.into_iter().map(|p| p.by(dx, dy)).collect()).collect();
                Shape::Path { rings, closed, pen, fill }
            }
            Shape::Circle { centre, radius, pen, fill } => {
                Shape::Circle { centre: centre.by(dx, dy), radius, pen, fill }
            }
            Shape::Text(text) => Shape::Text(Text { at: text.at.by(dx, dy), ..text }),
        }
    }
}

/// One item of a drawing.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// Lines, circles, text.
    Shape(Shape),
    /// A linear dimension.
    Dimension(Dimension),
    /// A leader with words.
    Leader(Leader),
    /// A leader with a numbered balloon.
    Balloon(Balloon),
    /// A level mark.
    Level(Level),
}

impl Item {
    /// The same, moved on paper.
    #[must_use]
    pub fn moved(&self, dx: f64, dy: f64) -> Item {
        match self.clone() {
            Item::Shape(shape) => Item::Shape(shape.moved(dx, dy)),
            Item::Dimension(d) => {
                let line = d.line + if d.axis == super::dimension::Axis::Across { dy } else { dx };
                Item::Dimension(Dimension { from: d.from.by(dx, dy), to: d.to.by(dx, dy), line, ..d })
            }
            Item::Leader(l) => Item::Leader(Leader { tip: l.tip.by(dx, dy), knee: l.knee.by(dx, dy), ..l }),
            Item::Balloon(b) => Item::Balloon(Balloon { tip: b.tip.by(dx, dy), centre: b.centre.by(dx, dy), ..b }),
            Item::Level(l) => Item::Level(Level { at: l.at.by(dx, dy), ..l }),
        }
    }

    /// The shapes it is drawn with.
    #[must_use]
    pub fn shapes(&self) -> Vec<Shape> {
        match self {
            Item::Shape(shape) => vec![shape.clone()],
            Item::Dimension(mark) => mark.shapes(),
            Item::Leader(mark) => mark.shapes(),
            Item::Balloon(mark) => mark.shapes(),
            Item::Level(mark) => mark.shapes(),
        }
    }

    /// The texts with the room they need; a balloon needs its whole circle.
    #[must_use]
    pub fn text_boxes(&self) -> Vec<(String, Rect)> {
        if let Item::Balloon(balloon) = self {
            return vec![(balloon.number.clone(), balloon.area())];
        }
        let text = |shape: Shape| match shape {
            Shape::Text(text) if !text.text.is_empty() => Some((text.text.clone(), text.area())),
            _ => None,
        };
        self.shapes().into_iter().filter_map(text).collect()
    }

    /// The straight line from the words of a leader or the circle of a balloon to what it points at; nothing of other items, and
    /// of a balloon that stands on its part.
    #[must_use]
    pub fn pointer(&self) -> Option<(Point, Point)> {
        match self {
            Item::Leader(leader) => Some((leader.knee, leader.tip)),
            Item::Balloon(balloon) => {
                let radius = 0.5 * balloon.area().width();
                let far = balloon.centre.distance(balloon.tip);
                (far > radius + 0.2).then(|| (balloon.centre.toward(balloon.tip, radius), balloon.tip))
            }
            _ => None,
        }
    }

    /// The straight lines it is drawn with, hatching and circles aside.
    #[must_use]
    pub fn lines(&self) -> Vec<(Point, Point)> {
        let mut all = Vec::new();
        for shape in self.shapes() {
            if let Shape::Path { rings, closed, pen: Some(_), .. } = shape {
                for ring in rings {
                    let last = if closed { ring.first() } else { None };
                    all.extend(ring.iter().copied().zip(ring.iter().skip(1).chain(last).copied()));
                }
            }
        }
        all
    }
}

/// An item with its layer and the part it belongs to (an index into `Scene::parts`).
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The layer.
    pub layer: Layer,
    /// The part.
    pub part: Option<usize>,
    /// The item.
    pub item: Item,
}

/// Something on the drawing that can be pointed at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// A short lower-case name for programs: `downcomer`.
    pub id: String,
    /// What a person calls it.
    pub title: String,
}

//! How curves, points and areas are told apart in ink: by pattern, width, sign and depth of tint, never by colour.

use super::plot::ink;
use super::trace::dashes;
use crate::render::geometry::{Point, Rect};
use crate::render::item::Fill;
use crate::render::pen::Pen;
use crate::render::scene::Scene;
use stillrise_units::math;

/// The pattern of a curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stroke {
    /// Continuous and wide: the curve the chart is about.
    Heavy,
    /// Dashes of medium width.
    Dashed,
    /// Wide dots.
    Dotted,
    /// Continuous and narrow.
    Fine,
    /// Long dash, dot.
    Chain,
    /// Long dash, two dots.
    Double,
}

/// The sign of a single point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// A solid circle.
    Dot,
    /// An open circle.
    Ring,
    /// An open square.
    Square,
    /// A solid square on its corner.
    Diamond,
    /// An open triangle.
    Triangle,
}

impl Stroke {
    /// Every pattern, in the order in which curves get them.
    pub const ALL: [Stroke; 6] =
        [Stroke::Heavy, Stroke::Dashed, Stroke::Dotted, Stroke::Fine, Stroke::Chain, Stroke::Double];

    fn pen(self) -> Pen {
        match self {
            Stroke::Heavy | Stroke::Dotted => Pen::Outline,
            Stroke::Dashed | Stroke::Chain | Stroke::Double => Pen::Medium,
            Stroke::Fine => Pen::Thin,
        }
    }

    /// Dash and gap lengths in turn, mm.
    fn pattern(self) -> &'static [f64] {
        match self {
            Stroke::Heavy | Stroke::Fine => &[],
            Stroke::Dashed => &[2.6, 1.1],
            Stroke::Dotted => &[0.5, 1.0],
            Stroke::Chain => &[5.0, 0.9, 0.5, 0.9],
            Stroke::Double => &[5.0, 0.9, 0.5, 0.9, 0.5, 0.9],
        }
    }

    /// Draws a line in this pattern, which runs on through its bends.
    pub fn draw(self, scene: &mut Scene, line: &[Point]) {
        scene.add(ink(dashes(line, self.pattern()), self.pen()));
    }
}

impl Sign {
    /// Every sign, in the order in which series of points get them.
    pub const ALL: [Sign; 5] = [Sign::Ring, Sign::Diamond, Sign::Square, Sign::Triangle, Sign::Dot];

    /// Draws it.
    pub fn draw(self, scene: &mut Scene, at: Point) {
        let ring = |reach: [(f64, f64); 4]| reach.map(|(dx, dy)| at.by(dx, dy));
        match self {
            Sign::Dot => scene.circle(at, 1.15, Some(Pen::Thin), Fill::Ink),
            Sign::Ring => scene.circle(at, 1.0, Some(Pen::Medium), Fill::Paper),
            Sign::Square => scene.rect(&spot(at).grown(0.95), Some(Pen::Medium), Fill::Paper),
            Sign::Diamond => {
                let corners = ring([(0.0, -1.5), (1.2, 0.0), (0.0, 1.5), (-1.2, 0.0)]);
                scene.polygon(&corners, Some(Pen::Thin), Fill::Ink);
            }
            Sign::Triangle => {
                let corners = ring([(0.0, -1.4), (1.3, 0.9), (0.0, 0.9), (-1.3, 0.9)]);
                scene.polygon(&corners, Some(Pen::Medium), Fill::Paper);
            }
        }
    }
}

fn spot(p: Point) -> Rect {
    Rect { x0: p.x, y0: p.y, x1: p.x, y1: p.y }
}

/// The darkest and the lightest tint of what is stacked, per cent of ink.
const DEPTH: (f64, f64) = (80.0, 10.0);

/// The tint of the `k`-th of `count` parts that lie side by side: from dark to light, as far apart as may be.
#[must_use]
pub fn tint(k: usize, count: usize) -> Fill {
    let number = |n: usize| f64::from(u16::try_from(n).unwrap_or(u16::MAX));
    let share = if count < 2 { 0.5 } else { math::min(1.0, number(k) / number(count - 1)) };
    let depth = DEPTH.0 + (DEPTH.1 - DEPTH.0) * share;
    // Between 10 and 80, whatever the count.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held between two small numbers")]
    let depth = depth.round() as u8;
    Fill::Tint(depth)
}

/// What lies below the least that is promised.
pub const FLOOR: Fill = Fill::Tint(10);
/// A band, and the lesser of two bars; the greater.
pub const PALE: Fill = Fill::Tint(22);
/// The greater of two bars.
pub const DEEP: Fill = Fill::Tint(65);

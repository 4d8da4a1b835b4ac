//! Hatching: what a cut material or a liquid looks like without colour.
//!
//! A hatch is a few families of parallel, possibly broken lines, as drawing exchange formats know
//! them. [`strokes`] cuts them to an area here, so that every output draws the same lines.

use super::geometry::{Point, Rect, pt};
use stillrise_units::math;

/// What an area is filled with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hatch {
    /// A cut through metal: lines at 45 degrees.
    Section,
    /// Concrete.
    Concrete,
    /// Soil.
    Earth,
    /// Sand or gravel.
    Sand,
    /// Water: broken level lines.
    Water,
    /// Oil: fine dots.
    Oil,
    /// Settled solids: short crossed strokes.
    Sludge,
    /// Mesh or woven medium: crossed lines.
    Mesh,
    /// Plain parallel lines, such as plates at their true angle: degrees counterclockwise from level, and mm between.
    Lines {
        /// Degrees, counterclockwise from level.
        angle: f64,
        /// Distance of neighbouring lines, mm on paper.
        spacing: f64,
    },
}

/// One family of parallel lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Family {
    /// Degrees, counterclockwise from level.
    pub angle: f64,
    /// Distance of neighbouring lines, mm.
    pub spacing: f64,
    /// Distance of the first line from the origin of the paper, mm.
    pub offset: f64,
    /// Length drawn and length left out, mm; no gap means a continuous line.
    pub dash: (f64, f64),
    /// How far each line's dashes are shifted against its neighbour's, mm.
    pub shift: f64,
}

impl Hatch {
    /// The families of lines it is made of.
    #[must_use]
    pub fn families(self) -> Vec<Family> {
        let family = |angle, spacing, offset, on, off, shift| Family { angle, spacing, offset, dash: (on, off), shift };
        match self {
            Hatch::Section => vec![family(45.0, 1.6, 0.0, 1.0, 0.0, 0.0)],
            Hatch::Concrete => vec![
                family(50.0, 2.9, 0.0, 0.3, 3.8, 1.3),
                family(-5.0, 3.3, 0.7, 0.3, 2.9, 1.9),
                family(100.0, 5.2, 1.1, 1.0, 5.6, 2.3),
            ],
            Hatch::Earth => [0.0, 1.2, 2.4]
                .iter()
                .flat_map(|&offset| {
                    [family(45.0, 8.0, offset, 3.6, 4.4, 4.0), family(135.0, 8.0, offset, 3.6, 4.4, 4.0)]
                })
                .collect(),
            Hatch::Sand => vec![family(0.0, 1.8, 0.0, 0.3, 2.2, 0.9), family(37.0, 3.1, 0.4, 0.3, 3.4, 1.3)],
            Hatch::Water => vec![family(0.0, 4.0, 0.0, 5.0, 9.0, 7.0)],
            Hatch::Oil => vec![family(0.0, 1.0, 0.0, 0.3, 1.5, 0.9)],
            Hatch::Sludge => vec![family(30.0, 1.5, 0.0, 1.1, 1.1, 0.7), family(150.0, 1.9, 0.5, 1.1, 1.5, 0.9)],
            Hatch::Mesh => vec![family(45.0, 1.4, 0.0, 1.0, 0.0, 0.0), family(135.0, 1.4, 0.0, 1.0, 0.0, 0.0)],
            Hatch::Lines { angle, spacing } => vec![family(angle, spacing, 0.0, 1.0, 0.0, 0.0)],
        }
    }
}

/// No area gets more strokes than this; one that would is left blank rather than fill a file.
const MOST: u16 = 20_000;

/// No drawing is larger than this, mm; beyond it dashes would be lost in rounding.
const LARGEST: f64 = 1e5;

/// The strokes that fill closed rings (even-odd: a ring within a ring is a hole).
#[must_use]
pub fn strokes(rings: &[Vec<Point>], hatch: Hatch) -> Vec<(Point, Point)> {
    let mut all = Vec::new();
    for family in hatch.families() {
        if !fill(rings, &family, &mut all) {
            return Vec::new();
        }
    }
    all
}

/// Adds the strokes of one family; `false` when there would be too many.
fn fill(rings: &[Vec<Point>], family: &Family, out: &mut Vec<(Point, Point)>) -> bool {
    let angle = family.angle * core::f64::consts::PI / 180.0;
    // Along the lines and across them; y is down on paper, angles are seen by the reader.
    let (ux, uy) = (math::cos(angle), -math::sin(angle));
    let along = |p: Point| p.x * ux + p.y * uy;
    let across = |p: Point| p.x * uy - p.y * ux;
    let points: Vec<Point> = rings.iter().flatten().map(|&p| pt(along(p), across(p))).collect();
    let Some(extent) = Rect::around(&points) else {
        return true;
    };
    let lines = extent.height() / family.spacing;
    let period = family.dash.0 + family.dash.1;
    let pieces = if family.dash.1 > 0.0 { extent.width() / period + 1.0 } else { 1.0 };
    let sound = [extent.x0, extent.y0, extent.x1, extent.y1].iter().all(|v| v.abs() < LARGEST);
    if !(sound && family.spacing > 0.0 && lines * pieces < f64::from(MOST)) {
        return false;
    }
    let mut row = ((extent.y0 - family.offset) / family.spacing).ceil();
    while row * family.spacing + family.offset <= extent.y1 {
        let level = row * family.spacing + family.offset;
        let mut cuts = Vec::new();
        for ring in rings {
            for (k, &a) in ring.iter().enumerate() {
                let b = ring[(k + 1) % ring.len()];
                let (sa, sb) = (across(a), across(b));
                if (sa <= level) != (sb <= level) {
                    let share = (level - sa) / (sb - sa);
                    cuts.push(along(a) + share * (along(b) - along(a)));
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            for (start, end) in dashes(pair[0], pair[1], family, row) {
                // Back from (along, across) to paper.
                let paper = |t: f64| pt(t * ux + level * uy, t * uy - level * ux);
                out.push((paper(start), paper(end)));
            }
        }
        if out.len() > usize::from(MOST) {
            return false;
        }
        row += 1.0;
    }
    true
}

/// The drawn pieces of a line between `start` and `end`.
fn dashes(start: f64, end: f64, family: &Family, row: f64) -> Vec<(f64, f64)> {
    let (on, off) = family.dash;
    if off <= 0.0 {
        return vec![(start, end)];
    }
    let period = on + off;
    let phase = row * family.shift;
    let mut at = ((start - phase) / period).floor() * period + phase;
    let mut pieces = Vec::new();
    while at < end {
        let (a, b) = (math::max(at, start), math::min(at + on, end));
        if b - a > 0.05 {
            pieces.push((a, b));
        }
        at += period;
    }
    pieces
}

//! The inside of a vessel as a closed body, from what its shape says of widths and floors; no kind of vessel is asked for.

use crate::render::solid::{Mesh, Spot, loft};
use stillrise_handbook::vessel::shape::Shape;
use stillrise_units::{Length, Typed, math};

/// Pieces that a curve is cut into.
const PIECES: u16 = 72;
/// What a straight line may miss by and still be one, m.
const STRAIGHT: f64 = 1e-6;
/// How far inside an edge a width is asked for, m: on the edge itself rounding may put it outside.
const WITHIN: f64 = 1e-9;
/// The same of a level: more, as a steep floor rises by much within that.
const OVER: f64 = 1e-7;

/// The inside of a vessel.
pub struct Inside<'a> {
    shape: &'a Shape,
    outline: Vec<(f64, f64)>,
}

impl<'a> Inside<'a> {
    /// Of a shape.
    pub fn new(shape: &'a Shape) -> Inside<'a> {
        let outline = shape.outline().into_iter().map(|(x, z)| (x.si(), z.si())).collect();
        Inside { shape, outline }
    }

    /// Clear width at a station between floor and top.
    pub fn width(&self, x: f64, z: f64) -> f64 {
        self.shape.width_at(Length::from_si(x), Length::from_si(z)).si()
    }

    /// Floor and top at a station; of a step, what stands at the side that is asked for.
    pub fn range(&self, x: f64, ahead: bool) -> Option<(f64, f64)> {
        let edges = self.outline.iter().zip(self.outline.iter().cycle().skip(1));
        let at = |((x0, z0), (x1, z1)): (&(f64, f64), &(f64, f64))| {
            let (low, high) = (math::min(*x0, *x1), math::max(*x0, *x1));
            let meets = if ahead { low <= x && x < high } else { low < x && x <= high };
            meets.then(|| z0 + (z1 - z0) * ((x - x0) / (x1 - x0)))
        };
        let levels: Vec<f64> = edges.filter_map(at).collect();
        let low = levels.iter().copied().reduce(math::min)?;
        Some((low, levels.into_iter().reduce(math::max)?))
    }

    /// The stretches of the outline along the vessel.
    fn stretches(&self) -> Vec<(f64, f64)> {
        let mut all: Vec<f64> = self.outline.iter().map(|(x, _)| *x).collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < STRAIGHT);
        all.windows(2).filter_map(|pair| Some((*pair.first()?, *pair.last()?))).collect()
    }

    /// Where the first station lies at which a level is inside, seen from the inlet end, or from the outlet end.
    pub fn reaches(&self, z: f64, from_outlet: bool) -> f64 {
        let length = self.shape.length().si();
        let inside = |x: f64| {
            let x = if from_outlet { length - x } else { x };
            self.range(x, !from_outlet).is_some_and(|(low, high)| low <= z && z <= high)
        };
        let (mut out, mut within) = (0.0, 0.5 * length);
        if inside(out) {
            within = 0.0;
        }
        for _ in 0..50 {
            let middle = 0.5 * (out + within);
            if inside(middle) {
                within = middle;
            } else {
                out = middle;
            }
        }
        if from_outlet { length - within } else { within }
    }

    /// The section at a station between two levels, from its lowest point up one side and down the other.
    pub fn section(&self, x: f64, ahead: bool, (from, to): (f64, f64)) -> Vec<Spot> {
        let (low, high) = self.range(x, ahead).unwrap_or_default();
        let low = math::min(math::max(low, from), to);
        let high = math::max(low, math::min(high, to));
        // Just inside the end that is asked for, so that a step has two sides.
        let station = if ahead { x + WITHIN } else { x - WITHIN };
        let half = |z: f64| {
            let z = math::min(math::max(z, low + OVER), math::max(low, high - OVER));
            0.5 * self.width(station, z)
        };
        let mut knots = vec![low, high];
        if self.shape.bottom().si() < 0.0 {
            // The hopper meets the floor in a kink.
            knots.insert(1, math::min(math::max(0.0, low), high));
        }
        let mut side: Vec<(f64, f64)> = Vec::new();
        for pair in knots.windows(2) {
            let &[a, b] = pair else { continue };
            let pieces = if self.upright() { 1 } else { PIECES };
            for k in 0..=pieces {
                let share = 0.5 * (1.0 - math::cos(core::f64::consts::PI * f64::from(k) / f64::from(pieces)));
                let z = a + (b - a) * share;
                side.push((half(z), z));
            }
        }
        let left = side.iter().map(|(y, z)| [x, *y, *z]);
        let right = side.iter().rev().map(|(y, z)| [x, -*y, *z]);
        left.chain(right).collect()
    }

    /// Whether sides go straight up.
    fn upright(&self) -> bool {
        let (x, height) = (0.5 * self.shape.length().si(), self.shape.height().si());
        let near = |share: f64| (self.width(x, share * height) - self.width(x, 0.5 * height)).abs() < STRAIGHT;
        near(0.1) && near(0.3) && near(0.9)
    }

    /// Whether a stretch between two stations is straight.
    fn straight(&self, (a, b): (f64, f64), levels: (f64, f64)) -> bool {
        let (first, last) = (self.section(a, true, levels), self.section(b, false, levels));
        [0.2, 0.5, 0.8].iter().all(|share| {
            let own = self.section(a + (b - a) * share, true, levels);
            let meets = |((p, q), r): ((&Spot, &Spot), &Spot)| (p[1] + (q[1] - p[1]) * share - r[1]).abs() < STRAIGHT;
            first.iter().zip(&last).zip(&own).all(meets)
        })
    }

    /// All of it between two levels; empty where nothing lies between them.
    pub fn between(&self, levels: (f64, f64)) -> Mesh {
        let length = self.shape.length().si();
        let mut sections = Vec::new();
        for (a, b) in self.stretches() {
            // A stretch of a curved outline is short already.
            let share = ((b - a) / length * f64::from(PIECES)).ceil();
            let pieces = (1..=PIECES).find(|k| f64::from(*k) >= share).unwrap_or(PIECES);
            let pieces = if self.straight((a, b), levels) { 1 } else { pieces };
            for k in 0..=pieces {
                let share = 0.5 * (1.0 - math::cos(core::f64::consts::PI * f64::from(k) / f64::from(pieces)));
                let x = if k == pieces { b } else { a + (b - a) * share };
                sections.push(self.section(x, k < pieces, levels));
            }
        }
        // A lying cylinder's ends may lie above or below the levels altogether.
        let flat = |ring: &Vec<Spot>| {
            let z: Vec<f64> = ring.iter().map(|p| p[2]).collect();
            let (low, high) = (z.iter().copied().reduce(math::min), z.iter().copied().reduce(math::max));
            high.zip(low).is_none_or(|(high, low)| high - low < STRAIGHT)
        };
        let first = sections.iter().position(|ring| !flat(ring)).unwrap_or(0).saturating_sub(1);
        let last = sections.iter().rposition(|ring| !flat(ring)).unwrap_or(0);
        let kept: Vec<Vec<Spot>> = sections.into_iter().take(last + 2).skip(first).collect();
        loft(&kept)
    }

    /// A wall square to the flow, as wide as the vessel, between two levels.
    pub fn slab(&self, at: f64, thick: f64, levels: (f64, f64)) -> Mesh {
        let ring = self.section(at, true, levels);
        let moved = |by: f64| ring.iter().map(|p| [p[0] + by, p[1], p[2]]).collect::<Vec<_>>();
        loft(&[moved(-0.5 * thick), moved(0.5 * thick)])
    }
}

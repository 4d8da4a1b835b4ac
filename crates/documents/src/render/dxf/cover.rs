//! What an area leaves of lines and fills that were drawn before it.

use crate::render::geometry::{Point, Rect, pt};

/// Closed rings (even-odd) that cover what lies below.
pub struct Cover {
    rings: Vec<Vec<Point>>,
    extent: Rect,
}

impl Cover {
    /// `None` without an inside.
    pub fn new(rings: &[Vec<Point>]) -> Option<Cover> {
        let extent = Rect::around(&rings.concat())?;
        Some(Cover { rings: rings.to_vec(), extent })
    }

    fn edges(&self) -> impl Iterator<Item = (Point, Point)> {
        self.rings.iter().flat_map(|ring| edges(ring))
    }

    fn holds(&self, p: Point) -> bool {
        let crossed = |(a, b): &(Point, Point)| {
            (a.y <= p.y) != (b.y <= p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
        };
        self.edges().filter(crossed).count() % 2 == 1
    }

    /// Whether a box reaches into its extent.
    pub fn meets(&self, other: &Rect) -> bool {
        let apart = |a1: f64, b0: f64| a1 <= b0;
        let (own, other) = (&self.extent, other);
        !(apart(own.x1, other.x0) || apart(other.x1, own.x0) || apart(own.y1, other.y0) || apart(other.y1, own.y0))
    }

    /// What of a line through points stands outside, as open lines; `None` when it is untouched.
    pub fn outside(&self, points: &[Point], closed: bool) -> Option<Vec<Vec<Point>>> {
        let around = Rect::around(points)?.grown(1e-6);
        if !self.meets(&around) {
            return None;
        }
        let ring: Vec<Point> = points.iter().chain(points.first().filter(|_| closed)).copied().collect();
        let (mut left, mut run): (Vec<Vec<Point>>, Vec<Point>) = (Vec::new(), Vec::new());
        let mut touched = false;
        for pair in ring.windows(2) {
            let &[a, b] = pair else { continue };
            for (from, to, inside) in self.pieces(a, b) {
                touched |= inside;
                if inside {
                    if run.len() > 1 {
                        left.push(core::mem::take(&mut run));
                    }
                    run.clear();
                } else {
                    if run.is_empty() {
                        run.push(from);
                    }
                    run.push(to);
                }
            }
        }
        if run.len() > 1 {
            left.push(run);
        }
        // A ring that was cut somewhere goes on over the point at which it was begun.
        let joins = |left: &[Vec<Point>]| {
            let (first, last) = (left.first()?.first()?, left.last()?.last()?);
            (closed && left.len() > 1 && first.distance(*last) < 1e-9).then_some(())
        };
        if touched && joins(&left).is_some() {
            let mut last = left.pop().unwrap_or_default();
            if let Some(first) = left.first_mut() {
                last.extend(first.iter().skip(1));
                *first = last;
            }
        }
        touched.then_some(left)
    }

    /// A stretch cut where it crosses an edge, each piece with whether it is covered.
    fn pieces(&self, a: Point, b: Point) -> Vec<(Point, Point, bool)> {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let mut cuts = vec![0.0, 1.0];
        for (c, d) in self.edges() {
            let (ex, ey) = (d.x - c.x, d.y - c.y);
            let cross = dx * ey - dy * ex;
            if cross.abs() > 1e-12 {
                let t = ((c.x - a.x) * ey - (c.y - a.y) * ex) / cross;
                let u = ((c.x - a.x) * dy - (c.y - a.y) * dx) / cross;
                if t > 0.0 && t < 1.0 && (-1e-9..=1.0 + 1e-9).contains(&u) {
                    cuts.push(t);
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        let at = |t: f64| pt(a.x + t * dx, a.y + t * dy);
        let mut pieces: Vec<(Point, Point, bool)> = Vec::new();
        for pair in cuts.windows(2) {
            let &[s, t] = pair else { continue };
            let (from, to) = (at(s), at(t));
            if from.distance(to) < 1e-6 {
                continue;
            }
            let inside = self.holds(at(0.5 * (s + t)));
            match pieces.last_mut() {
                Some(last) if last.2 == inside => last.1 = to,
                _ => pieces.push((from, to, inside)),
            }
        }
        pieces
    }

    /// What of a convex area stands outside, as convex areas; `None` when it is untouched, or neither can be cut so.
    pub fn rest(&self, area: &[Point]) -> Option<Vec<Vec<Point>>> {
        let around = Rect::around(area)?;
        let [ring] = self.rings.as_slice() else { return None };
        if !self.meets(&around) || !convex(area) || !convex(ring) {
            return None;
        }
        let sign = if doubled(ring) < 0.0 { -1.0 } else { 1.0 };
        let (mut inner, mut left) = (area.to_vec(), Vec::new());
        for (a, b) in edges(ring) {
            let side = |p: Point| sign * ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
            let beyond = half(&inner, |p| -side(p));
            if doubled(&beyond).abs() > 1e-6 {
                left.push(beyond);
            }
            inner = half(&inner, side);
        }
        (doubled(&inner).abs() > 1e-6).then_some(left)
    }
}

fn edges(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))
}

/// Twice the area, with a sign for the direction of going round.
fn doubled(ring: &[Point]) -> f64 {
    edges(ring).map(|(a, b)| a.x * b.y - b.x * a.y).sum()
}

/// Whether a ring turns to one side only.
pub fn convex(ring: &[Point]) -> bool {
    let sign = if doubled(ring) < 0.0 { -1.0 } else { 1.0 };
    let corners = edges(ring).zip(edges(ring).skip(1).chain(edges(ring).take(1)));
    let turn =
        |((a, b), (_, c)): ((Point, Point), (Point, Point))| (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    ring.len() > 2 && corners.map(turn).all(|turn| sign * turn > -1e-9)
}

/// The part of a convex area where `side` is not negative.
fn half(area: &[Point], side: impl Fn(Point) -> f64) -> Vec<Point> {
    let mut left = Vec::new();
    for (a, b) in edges(area) {
        let (sa, sb) = (side(a), side(b));
        if sa >= 0.0 {
            left.push(a);
        }
        if (sa > 0.0) != (sb > 0.0) && sa != 0.0 && sb != 0.0 {
            left.push(a.toward(b, a.distance(b) * sa / (sa - sb)));
        }
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Vec<Point> {
        Rect::new(x, y, side, side).corners()
    }

    #[test]
    fn lines_are_cut_at_the_edges_of_what_covers_them() {
        let cover = Cover::new(&[square(2.0, 2.0, 2.0)]).unwrap();
        let left = cover.outside(&[pt(0.0, 3.0), pt(10.0, 3.0)], false).unwrap();
        assert_eq!(left, [vec![pt(0.0, 3.0), pt(2.0, 3.0)], vec![pt(4.0, 3.0), pt(10.0, 3.0)]]);
        assert_eq!(cover.outside(&[pt(2.5, 3.0), pt(3.5, 3.0)], false), Some(vec![]));
        assert_eq!(cover.outside(&[pt(0.0, 5.0), pt(9.0, 5.0)], false), None);
        // A ring is opened and goes on over its first corner.
        let ring = cover.outside(&square(0.0, 0.0, 3.0), true).unwrap();
        assert_eq!(ring, [vec![pt(2.0, 3.0), pt(0.0, 3.0), pt(0.0, 0.0), pt(3.0, 0.0), pt(3.0, 2.0)]]);
    }

    #[test]
    fn fills_lose_what_is_covered_and_no_more() {
        let cover = Cover::new(&[square(2.0, -1.0, 2.0)]).unwrap();
        let left = cover.rest(&square(0.0, 0.0, 3.0)).unwrap();
        // 9 less what both share, 1 by 1.
        assert!((left.iter().map(|ring| doubled(ring).abs()).sum::<f64>() - 2.0 * 8.0).abs() < 1e-9, "{left:?}");
        assert_eq!(cover.rest(&square(5.0, 5.0, 3.0)), None);
        assert_eq!(Cover::new(&[square(-1.0, -1.0, 9.0)]).unwrap().rest(&square(0.0, 0.0, 3.0)), Some(vec![]));
    }
}

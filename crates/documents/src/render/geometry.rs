//! Points and rectangles on paper: millimetres, x to the right, y down.

use stillrise_units::math;

/// A point on paper, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

/// A point on paper, mm.
#[must_use]
pub const fn pt(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    /// This point moved by `(dx, dy)`.
    #[must_use]
    pub const fn by(self, dx: f64, dy: f64) -> Point {
        pt(self.x + dx, self.y + dy)
    }

    /// Distance to another point, mm.
    #[must_use]
    pub fn distance(self, other: Point) -> f64 {
        let (dx, dy) = (other.x - self.x, other.y - self.y);
        (dx * dx + dy * dy).sqrt()
    }

    /// The point `length` mm from here in the direction of `other` (this point if they coincide).
    #[must_use]
    pub fn toward(self, other: Point, length: f64) -> Point {
        let whole = self.distance(other);
        if whole > 0.0 {
            let share = length / whole;
            pt(self.x + share * (other.x - self.x), self.y + share * (other.y - self.y))
        } else {
            self
        }
    }
}

/// An upright rectangle on paper, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub x0: f64,
    /// Upper edge.
    pub y0: f64,
    /// Right edge.
    pub x1: f64,
    /// Lower edge.
    pub y1: f64,
}

impl Rect {
    /// From the upper left corner, width and height.
    #[must_use]
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Rect {
        Rect { x0: x, y0: y, x1: x + width, y1: y + height }
    }

    /// Width, mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.x1 - self.x0
    }

    /// Height, mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.y1 - self.y0
    }

    /// The centre.
    #[must_use]
    pub fn centre(&self) -> Point {
        pt(0.5 * (self.x0 + self.x1), 0.5 * (self.y0 + self.y1))
    }

    /// The corners, clockwise from the upper left.
    #[must_use]
    pub fn corners(&self) -> Vec<Point> {
        vec![pt(self.x0, self.y0), pt(self.x1, self.y0), pt(self.x1, self.y1), pt(self.x0, self.y1)]
    }

    /// Grown by `margin` on every side (shrunk if negative).
    #[must_use]
    pub fn grown(&self, margin: f64) -> Rect {
        Rect { x0: self.x0 - margin, y0: self.y0 - margin, x1: self.x1 + margin, y1: self.y1 + margin }
    }

    /// Moved by `(dx, dy)`.
    #[must_use]
    pub fn by(&self, dx: f64, dy: f64) -> Rect {
        Rect { x0: self.x0 + dx, y0: self.y0 + dy, x1: self.x1 + dx, y1: self.y1 + dy }
    }

    /// The smallest rectangle around both.
    #[must_use]
    pub fn union(&self, other: &Rect) -> Rect {
        Rect {
            x0: math::min(self.x0, other.x0),
            y0: math::min(self.y0, other.y0),
            x1: math::max(self.x1, other.x1),
            y1: math::max(self.y1, other.y1),
        }
    }

    /// The smallest rectangle around points; `None` without points.
    #[must_use]
    pub fn around(points: &[Point]) -> Option<Rect> {
        points.iter().map(|p| Rect { x0: p.x, y0: p.y, x1: p.x, y1: p.y }).reduce(|a, b| a.union(&b))
    }

    /// Whether `other` lies wholly inside.
    #[must_use]
    pub fn holds(&self, other: &Rect) -> bool {
        other.x0 >= self.x0 && other.x1 <= self.x1 && other.y0 >= self.y0 && other.y1 <= self.y1
    }

    /// Area common to both, mm2.
    #[must_use]
    pub fn overlap(&self, other: &Rect) -> f64 {
        let width = math::min(self.x1, other.x1) - math::max(self.x0, other.x0);
        let height = math::min(self.y1, other.y1) - math::max(self.y0, other.y0);
        if width > 0.0 && height > 0.0 { width * height } else { 0.0 }
    }

    /// Whether the line from `a` to `b` passes through.
    #[must_use]
    pub fn crossed_by(&self, a: Point, b: Point) -> bool {
        let beside = |a: f64, b: f64, low: f64, high: f64| (a <= low && b <= low) || (a >= high && b >= high);
        // Most lines of a drawing lie elsewhere.
        if beside(a.x, b.x, self.x0, self.x1) || beside(a.y, b.y, self.y0, self.y1) {
            return false;
        }
        // The part of the line inside the rectangle, as an interval of 0 (a) to 1 (b).
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for (start, step, low, high) in [(a.x, b.x - a.x, self.x0, self.x1), (a.y, b.y - a.y, self.y0, self.y1)] {
            if step == 0.0 {
                if start <= low || start >= high {
                    return false;
                }
            } else {
                let (s, t) = ((low - start) / step, (high - start) / step);
                enter = math::max(enter, math::min(s, t));
                leave = math::min(leave, math::max(s, t));
            }
        }
        enter < leave
    }
}

/// Whether two straight lines cross between their ends.
#[must_use]
pub fn cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    side(a, b, c) * side(a, b, d) < -1e-9 && side(c, d, a) * side(c, d, b) < -1e-9
}

/// Moves places on a line apart by halves until each stands so far from the next, keeping their order.
pub fn apart(places: &mut [f64], least: f64) {
    // The rounds end when nothing moves.
    for _ in 0..500 {
        let mut moved = false;
        for k in 1..places.len() {
            let lack = least - (places[k] - places[k - 1]);
            if lack > 1e-3 {
                places[k - 1] -= 0.5 * lack;
                places[k] += 0.5 * lack;
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
}

/// Points along an elliptical arc, `steps` chords; angles in degrees, counterclockwise from 3 o'clock.
#[must_use]
pub fn arc(centre: Point, rx: f64, ry: f64, from: f64, to: f64, steps: u16) -> Vec<Point> {
    let steps = steps.max(1);
    (0..=steps)
        .map(|k| {
            let share = f64::from(k) / f64::from(steps);
            let angle = (from + share * (to - from)) * core::f64::consts::PI / 180.0;
            pt(centre.x + rx * math::cos(angle), centre.y - ry * math::sin(angle))
        })
        .collect()
}

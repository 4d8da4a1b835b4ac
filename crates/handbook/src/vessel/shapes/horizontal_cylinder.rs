//! Vessel: horizontal cylinder with heads.

use super::head::{Head, half_angle, half_chord, segment};
use crate::vessel::shape::{Geometry, Part, Shape, positive, within};
use stillrise_units::math::{max, min};
use stillrise_units::{Area, Fault, Length, Typed, Volume};

/// A horizontal cylinder, inside dimensions, both heads alike; `z = 0` is its lowest line. A dished head lies outside the
/// shell, so that stations are counted from the tip of the one at the inlet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HorizontalCylinder {
    /// Diameter.
    pub diameter: Length,
    /// Length of the shell, between its ends.
    pub shell: Length,
    /// The heads.
    pub head: Head,
}

impl HorizontalCylinder {
    pub(in crate::vessel) const KIND: &'static str = "horizontal-cylinder";

    /// Radius, and a level over the axis, m.
    fn over(&self, level: Length) -> (f64, f64) {
        let radius = 0.5 * self.diameter.si();
        (radius, within(level, 0.0, 2.0 * radius) - radius)
    }
    /// How far each head reaches beyond the shell.
    #[must_use]
    pub fn head_depth(&self) -> Length {
        Length::from_si(self.head.depth(self.diameter.si()))
    }
    /// The part of the shell between two stations, and of each head the distances from the shell's end.
    fn parts(&self, part: Part) -> (f64, [(f64, f64); 2]) {
        let (depth, shell) = (self.head_depth().si(), self.shell.si());
        let (from, to) = (part.from.si(), part.to.si());
        let along = max(0.0, min(to, depth + shell) - max(from, depth));
        let inside = |out: f64| min(depth, max(0.0, out));
        let inlet = (inside(depth - to), inside(depth - from));
        let outlet = (inside(from - depth - shell), inside(to - depth - shell));
        (along, [inlet, outlet])
    }
    /// The sum of what the shell gives for its length and each head for its part.
    fn sum(&self, part: Part, of_section: f64, of_head: impl Fn((f64, f64)) -> f64) -> f64 {
        let (along, heads) = self.parts(part);
        let dished = heads.into_iter().filter(|(near, far)| far > near).map(of_head);
        of_section * along + dished.sum::<f64>()
    }
    /// The radius at a station.
    fn radius(&self, x: Length) -> f64 {
        let (depth, shell) = (self.head_depth().si(), self.shell.si());
        let out = max(depth - x.si(), x.si() - depth - shell);
        if out > depth {
            return 0.0;
        }
        self.head.radius(self.diameter.si(), max(0.0, out))
    }
}

impl From<HorizontalCylinder> for Shape {
    fn from(shape: HorizontalCylinder) -> Self {
        Shape::HorizontalCylinder(shape)
    }
}

impl Geometry for HorizontalCylinder {
    fn kind(&self) -> &'static str {
        Self::KIND
    }
    fn length(&self) -> Length {
        self.shell + 2.0 * self.head_depth()
    }
    fn width(&self) -> Length {
        self.diameter
    }
    fn height(&self) -> Length {
        self.diameter
    }
    fn bottom(&self) -> Length {
        Length::from_si(0.0)
    }
    /// Circular segment times length, see `horizontal-cylinder-volume`, and the heads.
    fn volume(&self, part: Part, level: Length) -> Volume {
        let (radius, over) = self.over(level);
        let diameter = self.diameter.si();
        Volume::from_si(self.sum(part, segment(radius, over), |ends| self.head.volume(diameter, ends, over)))
    }
    fn wetted_area(&self, level: Length) -> Area {
        let (radius, over) = self.over(level);
        let arc = 2.0 * radius * half_angle(radius, over);
        Area::from_si(arc * self.shell.si() + 2.0 * self.head.wetted(self.diameter.si(), over))
    }
    fn surface(&self, part: Part, level: Length) -> Area {
        if level < self.bottom() || level > self.diameter {
            return Area::from_si(0.0);
        }
        let (radius, over) = self.over(level);
        let diameter = self.diameter.si();
        Area::from_si(self.sum(part, 2.0 * half_chord(radius, over), |ends| self.head.surface(diameter, ends, over)))
    }
    fn section(&self, x: Length, level: Length) -> Area {
        let (_, over) = self.over(level);
        Area::from_si(segment(self.radius(x), over))
    }
    fn width_at(&self, x: Length, z: Length) -> Length {
        Length::from_si(2.0 * half_chord(self.radius(x), z.si() - 0.5 * self.diameter.si()))
    }
    fn outline(&self) -> Vec<(Length, Length)> {
        let (radius, depth) = (0.5 * self.diameter.si(), self.head_depth().si());
        let end = depth + self.shell.si();
        let at = |x: f64, z: f64| (Length::from_si(x), Length::from_si(z));
        let head = self.head.points(2.0 * radius);
        if head.is_empty() {
            return vec![at(0.0, 0.0), at(end, 0.0), at(end, 2.0 * radius), at(0.0, 2.0 * radius)];
        }
        let mut corners = Vec::new();
        corners.extend(head.iter().rev().map(|(out, r)| at(depth - out, radius - r)));
        corners.extend(head.iter().map(|(out, r)| at(end + out, radius - r)));
        corners.extend(head.iter().rev().map(|(out, r)| at(end + out, radius + r)));
        corners.extend(head.iter().map(|(out, r)| at(depth - out, radius + r)));
        corners.dedup();
        if corners.first() == corners.last() {
            corners.pop();
        }
        corners
    }
    fn faults(&self) -> Vec<Fault> {
        let mut faults = positive(&[("diameter", self.diameter), ("length of the shell", self.shell)]);
        if !self.head.is_sound() {
            faults.push(Fault::new("head", "has no such form", "state a flat, an ellipsoidal or a torispherical head"));
        }
        faults
    }
}

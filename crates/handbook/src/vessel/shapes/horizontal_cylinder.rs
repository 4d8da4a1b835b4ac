//! Vessel: horizontal cylinder with flat heads.

use crate::vessel::shape::{Geometry, Shape, positive, within};
use stillrise_units::{Area, Fault, Length, Typed, Volume, math};

/// A horizontal cylinder with flat heads, inside dimensions; `z = 0` is its lowest line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HorizontalCylinder {
    /// Diameter.
    pub diameter: Length,
    /// Length between the heads.
    pub length: Length,
}

impl HorizontalCylinder {
    pub(in crate::vessel) const KIND: &'static str = "horizontal-cylinder";

    /// Depth, radius and half chord at a level, metres.
    fn cut(&self, level: Length) -> (f64, f64, f64) {
        let diameter = self.diameter.si();
        let depth = within(level, 0.0, diameter);
        (depth, diameter / 2.0, math::sqrt(math::max(depth * (diameter - depth), 0.0)))
    }
    /// Angle at the centre from straight down to the edge of the surface, radians.
    fn half_angle(&self, level: Length) -> f64 {
        let (depth, radius, _) = self.cut(level);
        math::acos(math::max(math::min((radius - depth) / radius, 1.0), -1.0))
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
        self.length
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
    fn volume(&self, level: Length) -> Volume {
        self.cross_section(level) * self.length
    }
    fn wetted_area(&self, level: Length) -> Area {
        let arc = Length::from_si(2.0 * self.cut(level).1 * self.half_angle(level));
        2.0 * self.cross_section(level) + arc * self.length
    }
    fn surface(&self, level: Length) -> Area {
        Length::from_si(2.0 * self.cut(level).2) * self.length
    }
    /// A circular segment; see `horizontal-cylinder-volume`.
    fn cross_section(&self, level: Length) -> Area {
        let (depth, radius, half_chord) = self.cut(level);
        Area::from_si(radius * radius * self.half_angle(level) - (radius - depth) * half_chord)
    }
    fn outline(&self) -> Vec<(Length, Length)> {
        let zero = Length::from_si(0.0);
        vec![(zero, zero), (self.length, zero), (self.length, self.diameter), (zero, self.diameter)]
    }
    fn faults(&self) -> Vec<Fault> {
        positive(&[("diameter", self.diameter), ("length", self.length)])
    }
}

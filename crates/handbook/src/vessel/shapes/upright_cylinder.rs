//! Vessel: upright cylinder with a flat floor.

use super::head::{half_chord, segment};
use crate::vessel::shape::{Geometry, Part, Shape, positive, within};
use core::f64::consts::PI;
use stillrise_units::math::{max, min};
use stillrise_units::{Area, Fault, Length, Typed, Volume};

/// An upright cylinder, inside dimensions; stations run along the diameter from the inlet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UprightCylinder {
    /// Diameter.
    pub diameter: Length,
    /// From the floor to the rim.
    pub height: Length,
}

impl UprightCylinder {
    pub(in crate::vessel) const KIND: &'static str = "upright-cylinder";

    /// Plan area between two stations.
    fn plan(&self, part: Part) -> f64 {
        let radius = 0.5 * self.diameter.si();
        let up_to = |x: Length| segment(radius, min(radius, max(-radius, x.si() - radius)));
        up_to(part.to) - up_to(part.from)
    }
    /// Chord across the flow at a station.
    fn chord(&self, x: Length) -> f64 {
        let radius = 0.5 * self.diameter.si();
        2.0 * half_chord(radius, x.si() - radius)
    }
    fn depth(&self, level: Length) -> f64 {
        within(level, 0.0, self.height.si())
    }
}

impl From<UprightCylinder> for Shape {
    fn from(shape: UprightCylinder) -> Self {
        Shape::UprightCylinder(shape)
    }
}

impl Geometry for UprightCylinder {
    fn kind(&self) -> &'static str {
        Self::KIND
    }
    fn length(&self) -> Length {
        self.diameter
    }
    fn width(&self) -> Length {
        self.diameter
    }
    fn height(&self) -> Length {
        self.height
    }
    fn bottom(&self) -> Length {
        Length::from_si(0.0)
    }
    fn volume(&self, part: Part, level: Length) -> Volume {
        Volume::from_si(self.plan(part) * self.depth(level))
    }
    fn wetted_area(&self, level: Length) -> Area {
        let (diameter, depth) = (self.diameter.si(), self.depth(level));
        if depth <= 0.0 {
            return Area::from_si(0.0);
        }
        Area::from_si(PI * diameter * (0.25 * diameter + depth))
    }
    fn surface(&self, part: Part, level: Length) -> Area {
        let inside = level >= self.bottom() && level <= self.height;
        Area::from_si(if inside { self.plan(part) } else { 0.0 })
    }
    fn section(&self, x: Length, level: Length) -> Area {
        Area::from_si(self.chord(x) * self.depth(level))
    }
    fn width_at(&self, x: Length, z: Length) -> Length {
        let inside = z >= self.bottom() && z <= self.height;
        Length::from_si(if inside { self.chord(x) } else { 0.0 })
    }
    fn outline(&self) -> Vec<(Length, Length)> {
        let zero = Length::from_si(0.0);
        vec![(zero, zero), (self.diameter, zero), (self.diameter, self.height), (zero, self.height)]
    }
    fn faults(&self) -> Vec<Fault> {
        positive(&[("diameter", self.diameter), ("height", self.height)])
    }
}

//! Vessel: plain box.

use crate::vessel::shape::{Geometry, Part, Shape, positive, within};
use stillrise_units::{Area, Fault, Length, Typed, Volume};

/// A plain box with a flat floor and upright walls, inside dimensions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rectangular {
    /// Along the flow.
    pub length: Length,
    /// Across the flow.
    pub width: Length,
    /// From the floor to the rim.
    pub height: Length,
}

impl Rectangular {
    pub(in crate::vessel) const KIND: &'static str = "rectangular";

    fn depth(&self, level: Length) -> Length {
        Length::from_si(within(level, 0.0, self.height.si()))
    }
}

impl From<Rectangular> for Shape {
    fn from(shape: Rectangular) -> Self {
        Shape::Rectangular(shape)
    }
}

impl Geometry for Rectangular {
    fn kind(&self) -> &'static str {
        Self::KIND
    }
    fn length(&self) -> Length {
        self.length
    }
    fn width(&self) -> Length {
        self.width
    }
    fn height(&self) -> Length {
        self.height
    }
    fn bottom(&self) -> Length {
        Length::from_si(0.0)
    }
    fn volume(&self, part: Part, level: Length) -> Volume {
        part.of(self.length) * self.width * self.depth(level)
    }
    fn wetted_area(&self, level: Length) -> Area {
        let depth = self.depth(level);
        if depth.si() > 0.0 {
            self.length * self.width + 2.0 * (self.length + self.width) * depth
        } else {
            Area::from_si(0.0)
        }
    }
    fn surface(&self, part: Part, level: Length) -> Area {
        let outside = level < self.bottom() || level > self.height;
        if outside { Area::from_si(0.0) } else { part.of(self.length) * self.width }
    }
    fn section(&self, _: Length, level: Length) -> Area {
        self.width * self.depth(level)
    }
    fn width_at(&self, _: Length, z: Length) -> Length {
        if z < self.bottom() || z > self.height { Length::from_si(0.0) } else { self.width }
    }
    fn outline(&self) -> Vec<(Length, Length)> {
        let zero = Length::from_si(0.0);
        vec![(zero, zero), (self.length, zero), (self.length, self.height), (zero, self.height)]
    }
    fn faults(&self) -> Vec<Fault> {
        positive(&[("length", self.length), ("width", self.width), ("height", self.height)])
    }
}

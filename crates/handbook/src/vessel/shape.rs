//! The shape of a vessel as plain data, and all that may be asked of it.
//!
//! Elevations are measured from the vessel's floor, `z = 0`; a hopper reaches below it and so has
//! negative elevations. `x` runs along the vessel from the inside of the inlet end. Dimensions are
//! inside dimensions. Nothing outside this room asks which kind a vessel is: levels, volumes and
//! drawings come from the functions here.

use super::shapes::{HorizontalCylinder, Rectangular, RectangularHopper, UprightCylinder};
use stillrise_units::{Area, Fault, Length, Typed, Volume, math};

/// What every kind of vessel can say of itself.
///
/// Levels below the bottom count as empty, levels above the top as full.
pub trait Geometry {
    /// The kind, as written in files.
    fn kind(&self) -> &'static str;
    /// Inside length.
    fn length(&self) -> Length;
    /// Largest inside width.
    fn width(&self) -> Length;
    /// Elevation of the top of the inside: rim of an open box, crown of a cylinder.
    fn height(&self) -> Length;
    /// Lowest elevation of the inside: zero, or negative with a hopper.
    fn bottom(&self) -> Length;
    /// Volume of a part below a level.
    fn volume(&self, part: Part, level: Length) -> Volume;
    /// Inside wall and floor that liquid up to a level touches.
    fn wetted_area(&self, level: Length) -> Area;
    /// Free surface of a part at a level.
    fn surface(&self, part: Part, level: Length) -> Area;
    /// Section square to the length at a station, up to a level.
    fn section(&self, x: Length, level: Length) -> Area;
    /// Clear width at a station and an elevation: what all else is made of.
    fn width_at(&self, x: Length, z: Length) -> Length;
    /// The long section: corners (x, z), counter-clockwise from the lower inlet end, not closed.
    fn outline(&self) -> Vec<(Length, Length)>;
    /// Dimensions that no vessel can have, all at once.
    fn faults(&self) -> Vec<Fault>;
}

/// A part of a vessel between two stations along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// From this station.
    pub from: Length,
    /// Up to this one.
    pub to: Length,
}

impl Part {
    /// How much of it lies in a vessel of this length.
    pub(super) fn of(&self, length: Length) -> Length {
        let [from, to] = [self.from, self.to].map(|x| within(x, 0.0, length.si()));
        Length::from_si(math::max(0.0, to - from))
    }
}

/// One vessel.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A plain box.
    Rectangular(Rectangular),
    /// A box with hoppers below its floor.
    RectangularHopper(RectangularHopper),
    /// A horizontal cylinder with heads.
    HorizontalCylinder(HorizontalCylinder),
    /// An upright cylinder.
    UprightCylinder(UprightCylinder),
}

impl Shape {
    /// The kinds, as written in files, each with its meaning.
    pub const KINDS: &'static [(&'static str, &'static str)] = &[
        (Rectangular::KIND, "a plain box"),
        (RectangularHopper::KIND, "a box with hoppers below its floor"),
        (HorizontalCylinder::KIND, "a horizontal cylinder with flat or dished heads"),
        (UprightCylinder::KIND, "an upright cylinder with a flat floor"),
    ];

    fn geometry(&self) -> &dyn Geometry {
        match self {
            Shape::Rectangular(shape) => shape,
            Shape::RectangularHopper(shape) => shape,
            Shape::HorizontalCylinder(shape) => shape,
            Shape::UprightCylinder(shape) => shape,
        }
    }

    /// The kind, as written in files.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        self.geometry().kind()
    }
    /// Inside length.
    #[must_use]
    pub fn length(&self) -> Length {
        self.geometry().length()
    }
    /// Largest inside width.
    #[must_use]
    pub fn width(&self) -> Length {
        self.geometry().width()
    }
    /// Elevation of the top of the inside: rim of an open box, crown of a cylinder.
    #[must_use]
    pub fn height(&self) -> Length {
        self.geometry().height()
    }
    /// Lowest elevation of the inside: zero, or negative with a hopper.
    #[must_use]
    pub fn bottom(&self) -> Length {
        self.geometry().bottom()
    }
    /// Volume below a level; the hoppers below the floor are counted.
    #[must_use]
    pub fn volume(&self, level: Length) -> Volume {
        self.volume_of(self.whole(), level)
    }
    /// All of it.
    #[must_use]
    pub fn whole(&self) -> Part {
        Part { from: Length::from_si(0.0), to: self.length() }
    }
    /// Volume of a part below a level.
    #[must_use]
    pub fn volume_of(&self, part: Part, level: Length) -> Volume {
        self.geometry().volume(part, level)
    }
    /// Inside wall and floor that liquid up to a level touches; without a cover.
    #[must_use]
    pub fn wetted_area(&self, level: Length) -> Area {
        self.geometry().wetted_area(level)
    }
    /// Free surface at a level; none below the bottom and above the top.
    #[must_use]
    pub fn surface(&self, level: Length) -> Area {
        self.surface_of(self.whole(), level)
    }
    /// Free surface of a part at a level: the plan area that catches what rises.
    #[must_use]
    pub fn surface_of(&self, part: Part, level: Length) -> Area {
        self.geometry().surface(part, level)
    }
    /// Section square to the length at a station, from the lowest point there up to a level. What flow has between two
    /// levels is the difference of two.
    #[must_use]
    pub fn section(&self, x: Length, level: Length) -> Area {
        self.geometry().section(x, level)
    }
    /// Clear width at a station and an elevation; none outside.
    #[must_use]
    pub fn width_at(&self, x: Length, z: Length) -> Length {
        self.geometry().width_at(x, z)
    }
    /// The long section: corners (x, z), counter-clockwise from the lower inlet end, not closed.
    #[must_use]
    pub fn outline(&self) -> Vec<(Length, Length)> {
        self.geometry().outline()
    }
    /// Dimensions that no vessel can have, all at once; empty when the vessel can be built.
    #[must_use]
    pub fn faults(&self) -> Vec<Fault> {
        self.geometry().faults()
    }

    /// Volume of the full vessel.
    #[must_use]
    pub fn capacity(&self) -> Volume {
        self.volume(self.height())
    }

    /// The level below which this volume lies; `None` for a negative volume, one above the
    /// capacity, or a vessel that cannot be built.
    #[must_use]
    pub fn level(&self, volume: Volume) -> Option<Length> {
        self.level_of(self.whole(), volume)
    }

    /// The level below which this volume of a part lies.
    #[must_use]
    pub fn level_of(&self, part: Part, volume: Volume) -> Option<Length> {
        let at = |z: f64| self.volume_of(part, Length::from_si(z)).si() - volume.si();
        math::root(self.bottom().si(), self.height().si(), at).map(Length::from_si)
    }
}

/// The part of a depth that lies between nothing and all of it.
pub(super) fn within(level: Length, low: f64, high: f64) -> f64 {
    math::min(math::max(level.si(), low), high)
}

/// A fault for every dimension that is not a positive number.
pub(super) fn positive(dimensions: &[(&str, Length)]) -> Vec<Fault> {
    dimensions
        .iter()
        .filter(|(_, value)| !(value.si() > 0.0 && value.si().is_finite()))
        .map(|(name, _)| Fault::new(*name, "is not above zero", "state the inside dimension"))
        .collect()
}

//! Vessel: box with hoppers below its floor.

use super::Rectangular;
use crate::vessel::shape::{Geometry, Part, Shape, positive, within};
use stillrise_units::{Area, Fault, Length, Typed, Volume};

/// One hopper: as wide as the vessel at its top, four flat sides, its bottom centred under the top.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hopper {
    /// Distance of its upstream edge from the inlet end.
    pub at: Length,
    /// Length at the top.
    pub top_length: Length,
    /// Length at the bottom.
    pub bottom_length: Length,
    /// Width at the bottom.
    pub bottom_width: Length,
    /// Depth below the floor.
    pub depth: Length,
}

/// A box whose floor has one or more hoppers; `chamber` stands above the floor, `z = 0`.
///
/// A floor that is all hopper is one hopper as long as the box. Below the floor each hopper is
/// taken as filled to the same level.
#[derive(Debug, Clone, PartialEq)]
pub struct RectangularHopper {
    /// The part above the floor.
    pub chamber: Rectangular,
    /// The hoppers, in any order.
    pub hoppers: Vec<Hopper>,
}

/// Length and width of a hopper at a height above its bottom.
type Section = (Length, Length);

impl Hopper {
    /// Filled height of the hopper at a level.
    fn filled(&self, level: Length) -> Length {
        Length::from_si(within(level, -self.depth.si(), 0.0)) + self.depth
    }
    /// The section at a height above the bottom of the hopper.
    fn section(&self, width: Length, filled: Length) -> Section {
        let part = filled / self.depth;
        (
            self.bottom_length + (self.top_length - self.bottom_length) * part,
            self.bottom_width + (width - self.bottom_width) * part,
        )
    }
    /// Prismoid from the bottom to the section; see `hopper-volume`.
    fn volume(&self, width: Length, level: Length) -> Volume {
        let filled = self.filled(level);
        let (length, wide) = self.section(width, filled);
        let ends = length * wide + self.bottom_length * self.bottom_width;
        filled / 6.0 * (ends + (length + self.bottom_length) * (wide + self.bottom_width))
    }
    /// Elevation of its floor or end at a station; `None` beside it.
    fn floor(&self, x: Length) -> Option<Length> {
        let inset = (self.top_length - self.bottom_length) / 2.0;
        let (from, to) = (x - self.at, self.at + self.top_length - x);
        let near = if from < to { from } else { to };
        if near.si() < 0.0 {
            return None;
        }
        Some(if near < inset { -self.depth * (near / inset) } else { -self.depth })
    }
    /// Width at an elevation below the floor of the box.
    fn wide(&self, width: Length, z: Length) -> Length {
        self.bottom_width + (width - self.bottom_width) * ((z + self.depth) / self.depth)
    }
    /// Section square to the length at a station, up to a level: a trapezium.
    fn cross(&self, width: Length, x: Length, level: Length) -> Area {
        let top = Length::from_si(within(level, -self.depth.si(), 0.0));
        match self.floor(x) {
            Some(low) if top > low => 0.5 * (self.wide(width, low) + self.wide(width, top)) * (top - low),
            _ => Area::from_si(0.0),
        }
    }
    /// Volume between two stations. Between the corners of hopper and level the section is of the second degree along the
    /// length, which Simpson's rule takes exactly.
    fn between(&self, width: Length, part: Part, level: Length) -> Volume {
        self.simpson(part, level, |x| self.cross(width, x, level).si())
            .map_or_else(|| Volume::from_si(0.0), Volume::from_si)
    }
    /// Free surface between two stations.
    fn surface(&self, width: Length, part: Part, level: Length) -> Area {
        let wide = |x: Length| {
            let wet = self.floor(x).is_some_and(|low| low <= level);
            if wet { self.wide(width, level).si() } else { 0.0 }
        };
        self.simpson(part, level, wide).map_or_else(|| Area::from_si(0.0), Area::from_si)
    }
    /// The integral over a part, piece by piece between the corners; `None` where the part has none of the hopper.
    fn simpson(&self, part: Part, level: Length, of: impl Fn(Length) -> f64) -> Option<f64> {
        let inset = (self.top_length - self.bottom_length) / 2.0;
        let end = self.at + self.top_length;
        let (from, to) =
            (if part.from > self.at { part.from } else { self.at }, if part.to < end { part.to } else { end });
        if to <= from {
            return None;
        }
        // Where the level meets the sloping ends.
        let meets = inset * (within(-level, 0.0, self.depth.si()) / self.depth.si());
        let mut breaks = vec![from, self.at + meets, self.at + inset, end - inset, end - meets, to];
        breaks.retain(|x| *x >= from && *x <= to);
        breaks.sort_by(|a, b| a.si().total_cmp(&b.si()));
        let piece = |pair: &[Length]| {
            let (low, high) = (pair[0], pair[1]);
            let step = (high - low).si();
            // At the corners themselves the function may jump; just inside it does not.
            let inside = |share: f64| of(low + (high - low) * share);
            step / 6.0 * (inside(1e-12) + 4.0 * inside(0.5) + inside(1.0 - 1e-12))
        };
        Some(breaks.windows(2).map(piece).sum())
    }
    fn wetted(&self, width: Length, level: Length) -> Area {
        let filled = self.filled(level);
        if filled.si() <= 0.0 {
            return Area::from_si(0.0);
        }
        let (length, wide) = self.section(width, filled);
        // Each side is a trapezium; its height is the slant of that side.
        let slant = |run: Length| (filled * filled + run * run / 4.0).sqrt();
        let ends = (wide + self.bottom_width) * slant(length - self.bottom_length);
        let sides = (length + self.bottom_length) * slant(wide - self.bottom_width);
        self.bottom_length * self.bottom_width + ends + sides
    }
}

impl RectangularHopper {
    pub(in crate::vessel) const KIND: &'static str = "rectangular-hopper";

    /// Hoppers in the order of the flow.
    fn in_order(&self) -> Vec<&Hopper> {
        let mut hoppers: Vec<&Hopper> = self.hoppers.iter().collect();
        hoppers.sort_by(|a, b| a.at.si().total_cmp(&b.at.si()));
        hoppers
    }
}

impl From<RectangularHopper> for Shape {
    fn from(shape: RectangularHopper) -> Self {
        Shape::RectangularHopper(shape)
    }
}

impl Geometry for RectangularHopper {
    fn kind(&self) -> &'static str {
        Self::KIND
    }
    fn length(&self) -> Length {
        self.chamber.length
    }
    fn width(&self) -> Length {
        self.chamber.width
    }
    fn height(&self) -> Length {
        self.chamber.height
    }
    fn bottom(&self) -> Length {
        self.hoppers.iter().fold(Length::from_si(0.0), |low, h| if -h.depth < low { -h.depth } else { low })
    }
    fn volume(&self, part: Part, level: Length) -> Volume {
        let width = self.chamber.width;
        let of = |h: &Hopper| {
            let whole = part.from <= h.at && part.to >= h.at + h.top_length;
            if whole { h.volume(width, level) } else { h.between(width, part, level) }
        };
        self.hoppers.iter().fold(self.chamber.volume(part, level), |sum, h| sum + of(h))
    }
    fn wetted_area(&self, level: Length) -> Area {
        let hoppers = self.hoppers.iter().fold(Area::from_si(0.0), |sum, h| sum + h.wetted(self.chamber.width, level));
        if level.si() <= 0.0 {
            return hoppers;
        }
        let open = self.hoppers.iter().fold(Area::from_si(0.0), |sum, h| sum + h.top_length * self.chamber.width);
        self.chamber.wetted_area(level) - open + hoppers
    }
    fn surface(&self, part: Part, level: Length) -> Area {
        if level.si() >= 0.0 {
            return self.chamber.surface(part, level);
        }
        let below = self.hoppers.iter().filter(|h| level >= -h.depth);
        below.fold(Area::from_si(0.0), |sum, h| sum + h.surface(self.chamber.width, part, level))
    }
    fn section(&self, x: Length, level: Length) -> Area {
        let below = self.hoppers.iter().map(|h| h.cross(self.chamber.width, x, level));
        below.fold(self.chamber.section(x, level), |sum, area| sum + area)
    }
    fn width_at(&self, x: Length, z: Length) -> Length {
        if z.si() >= 0.0 {
            return self.chamber.width_at(x, z);
        }
        let over = self.hoppers.iter().find(|h| h.floor(x).is_some_and(|low| low <= z));
        over.map_or(Length::from_si(0.0), |h| h.wide(self.chamber.width, z))
    }
    fn outline(&self) -> Vec<(Length, Length)> {
        let zero = Length::from_si(0.0);
        let mut corners = vec![(zero, zero)];
        for h in self.in_order() {
            let inset = (h.top_length - h.bottom_length) / 2.0;
            corners.push((h.at, zero));
            corners.push((h.at + inset, -h.depth));
            corners.push((h.at + inset + h.bottom_length, -h.depth));
            corners.push((h.at + h.top_length, zero));
        }
        corners.extend(self.chamber.outline().into_iter().skip(1));
        // Hoppers that touch each other or an end wall give the same corner twice.
        corners.dedup();
        corners
    }
    fn faults(&self) -> Vec<Fault> {
        let mut faults = self.chamber.faults();
        let mut end = Length::from_si(0.0);
        // Positions read from a drawing close to about a thousandth of a millimetre.
        let slack = Length::from_si(1e-6);
        for h in self.in_order() {
            faults.extend(positive(&[("hopper top length", h.top_length), ("hopper depth", h.depth)]));
            for (name, small, large) in [
                ("hopper bottom length", h.bottom_length, h.top_length),
                ("hopper bottom width", h.bottom_width, self.chamber.width),
            ] {
                if !(small.si() >= 0.0 && small <= large + slack) {
                    faults.push(Fault::new(
                        name,
                        "is negative or wider than the top",
                        "state a bottom that lies under the top",
                    ));
                }
            }
            if !(h.at + slack >= end && h.at + h.top_length <= self.chamber.length + slack) {
                faults.push(Fault::new(
                    "hopper at",
                    "lies outside the floor or on another hopper",
                    "move or shorten the hopper",
                ));
            }
            end = h.at + h.top_length;
        }
        faults
    }
}

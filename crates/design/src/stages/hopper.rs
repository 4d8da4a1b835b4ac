//! Stage: a hopper below the floor ahead of the plates, where sludge collects.

use super::stage::{Datum, Drawn, Stage};
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Stop, Trail, Val};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::{Parts, Unit};
use crate::vessel::{Body, some};
use crate::{by, record};
use stillrise_handbook::vessel::{hopper_volume, shapes};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed, Volume};

keys! {
    /// Keys of the hopper.
    HopperKeys "model" {
        /// Length of the sludge hopper, along the unit
        length as "hopper_length": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"24 in\"");
        /// Length of the hopper's bottom
        bottom as "hopper_bottom": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"6 in\"");
        /// Depth of the hopper below the floor
        depth as "hopper_depth": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "120 in").like("\"14 in\"");
    }
}

record! {
    /// The hopper.
    Hopper {
        /// length at the floor
        length: Length;
        /// length of its bottom
        bottom: Length;
        /// depth below the floor
        depth: Length;
        /// volume below the floor
        volume: Volume;
    }
}

impl Hopper {
    /// With its volume; `None` where it has no length or depth.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn new<T: Trail>(
        t: &mut T,
        body: &Body,
        [length, bottom, depth]: [Val<Length>; 3],
    ) -> Result<Option<Self>, Stop> {
        if !(some(length.q) && some(depth.q)) {
            return Ok(None);
        }
        let volume =
            by!(t, "volume of the hopper", hopper_volume::volume(length, body.width(), bottom, bottom, depth))?;
        Ok(Some(Self { length, bottom, depth, volume }))
    }

    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, body: &Body) -> Result<Option<Self>, Stop> {
        let m = row.m;
        let (Some(length), Some(depth)) = (
            row.laid("length of the hopper", DIMENSION, &m.stages.hopper.length),
            row.laid("depth of the hopper", DIMENSION, &m.stages.hopper.depth),
        ) else {
            return Ok(None);
        };
        let none = Length::from_si(0.0);
        let bottom =
            row.or_usual("bottom length of the hopper", DIMENSION, &m.stages.hopper.bottom, none, "not stated");
        Self::new(row.t, body, [length, bottom, depth])
    }

    /// As a part of the vessel's shape.
    #[must_use]
    pub fn shape(&self) -> shapes::Hopper {
        shapes::Hopper {
            at: Length::from_si(0.0),
            top_length: self.length.q,
            bottom_length: self.bottom.q,
            bottom_width: self.bottom.q,
            depth: self.depth.q,
        }
    }
}

impl Stage for Hopper {
    fn name(&self) -> &'static str {
        "hopper"
    }
    /// Under inlet chamber and open water.
    fn stands(&self, parts: &Parts, open: Length) -> Result<(), String> {
        let room = parts.inlet_chamber.as_ref().map_or(open, |chamber| chamber.length.q + open);
        if self.length.q.si() > room.si() + 1e-9 {
            return Err("the hopper is longer than inlet chamber and primary zone together".to_owned());
        }
        Ok(())
    }
    /// Its walls are those of the vessel; it is named and measured.
    fn drawn(&self, _: &Unit) -> Option<Drawn> {
        let data = vec![
            Datum::Length(self.length.q),
            Datum::Words(" long, "),
            Datum::Length(self.bottom.q),
            Datum::Words(" at the bottom, "),
            Datum::Length(self.depth.q),
            Datum::Words(" deep"),
        ];
        // In the middle of its sloped side.
        let tip = ((self.length.q - self.bottom.q) * 0.25, self.depth.q * -0.5);
        Some(Drawn { in_row: false, ..Drawn::new("hopper", "Sludge hopper", data, tip, Vec::new()) })
    }
    fn passed(&self, _: &Unit) -> Option<&'static str> {
        None
    }
}

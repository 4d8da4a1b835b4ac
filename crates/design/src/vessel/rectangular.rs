//! Body: a box, open at the top.

use super::{Layer, Stretch};
use crate::provenance::{Stop, Trail, Val};
use crate::{by, reckon, record};
use stillrise_handbook::ground::submerged_box;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes::{self, Hopper, RectangularHopper};
use stillrise_handbook::vessel::{box_volume, layer_volume};
use stillrise_units::{Area, Length, Volume};

record! {
    /// A box, inside dimensions.
    Rectangular {
        /// along the flow
        length: Length;
        /// across it
        width: Length;
        /// height of the walls
        height: Length;
    }
}

impl Rectangular {
    /// By outside measures, with a floor as thick as its walls.
    pub(super) fn outside<T: Trail>(&self, t: &mut T, wall: Val<Length>) -> Self {
        Self {
            length: reckon!(t, "outside length", [IN, MM], (inside = self.length, wall = wall) inside + wall * 2.0),
            width: reckon!(t, "outside width", [IN, MM], (inside = self.width, wall = wall) inside + wall * 2.0),
            height: reckon!(t, "height with the floor", [IN, MM], (inside = self.height, wall = wall) inside + wall),
        }
    }
    pub(super) fn length(&self) -> Val<Length> {
        self.length
    }
    pub(super) fn over_all(&self) -> Val<Length> {
        self.length
    }
    pub(super) fn width(&self) -> Val<Length> {
        self.width
    }
    pub(super) fn height(&self) -> Val<Length> {
        self.height
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn surface<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        _: Val<Length>,
    ) -> Result<Val<Area>, Stop> {
        Ok(reckon!(t, label, [FT2, M2], (length = of.length, width = self.width) length * width))
    }
    pub(super) fn volume<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Volume>, Stop> {
        by!(t, label, box_volume::volume(of.length, self.width, level))
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn section<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Area>, Stop> {
        Ok(reckon!(t, label, [FT2, M2], (width = self.width, depth = level) width * depth))
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn clear_width<T: Trail>(
        &self,
        _: &mut T,
        _: &str,
        _: Val<Length>,
        _: Val<Length>,
    ) -> Result<Val<Length>, Stop> {
        Ok(self.width)
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn mean_width<T: Trail>(&self, _: &mut T, _: &str, _: Val<Length>) -> Result<Val<Length>, Stop> {
        Ok(self.width)
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn mean_depth<T: Trail>(&self, _: &mut T, level: Val<Length>) -> Result<Val<Length>, Stop> {
        Ok(level)
    }
    pub(super) fn layer<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        layer: &Layer,
    ) -> Result<Val<Volume>, Stop> {
        let area = reckon!(t, "area over which oil is held", [FT2, M2], (length = of.length, width = self.width) length * width);
        by!(t, label, layer_volume::volume(area, layer.thickness))
    }
    pub(super) fn layer_under<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        limit: Val<Length>,
        room: Val<Volume>,
    ) -> Val<Length> {
        let area = reckon!(t, "area over which oil is held", [FT2, M2], (length = of.length, width = self.width) length * width);
        reckon!(t, label, [IN, MM], (limit = limit, room = room, area = area) limit - room / area)
    }
    pub(super) fn under_water<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        let label = "volume of the box under the groundwater";
        by!(t, label, submerged_box::volume(self.length, self.width, self.height, level))
    }
    pub(super) fn shape(&self, hopper: Option<Hopper>) -> Shape {
        let chamber = shapes::Rectangular { length: self.length.q, width: self.width.q, height: self.height.q };
        match hopper {
            Some(hopper) => Shape::RectangularHopper(RectangularHopper { chamber, hoppers: vec![hopper] }),
            None => Shape::Rectangular(chamber),
        }
    }
}

//! Body: a cylinder that stands on a flat floor and is one open space.

use super::{Layer, Stretch};
use crate::provenance::{Stop, Trail, Val, choose};
use crate::{by, reckon, record, say};
use stillrise_handbook::hydraulics::circle_area;
use stillrise_handbook::vessel::layer_volume;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes;
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Area, Length, Typed, Volume};

record! {
    /// An upright cylinder, inside dimensions.
    UprightCylinder {
        /// across
        diameter: Length;
        /// from the floor to its top
        height: Length;
    }
}

impl UprightCylinder {
    /// By outside measures, with a floor and a top as thick as its wall.
    pub(super) fn outside<T: Trail>(&self, t: &mut T, wall: Val<Length>) -> Self {
        let both = |t: &mut T, label: &str, inside: Val<Length>| reckon!(t, label, [IN, MM], (inside = inside, wall = wall) inside + wall * 2.0);
        Self {
            diameter: both(t, "outside diameter", self.diameter),
            height: both(t, "outside height, floor and top included", self.height),
        }
    }
    pub(super) fn length(&self) -> Val<Length> {
        self.diameter
    }
    pub(super) fn over_all(&self) -> Val<Length> {
        self.diameter
    }
    pub(super) fn width(&self) -> Val<Length> {
        self.diameter
    }
    pub(super) fn height(&self) -> Val<Length> {
        self.height
    }
    /// Its plan; a part of it has no area of its own, since no wall stands across it.
    fn plan<T: Trail>(&self, t: &mut T, label: &str, of: Stretch) -> Result<Val<Area>, Stop> {
        if of.ends < 2 {
            return Err(Stop::said(label, "an upright cylinder is one open space and has no compartments"));
        }
        by!(t, label, circle_area::area(self.diameter))
    }
    pub(super) fn surface<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        _: Val<Length>,
    ) -> Result<Val<Area>, Stop> {
        self.plan(t, label, of)
    }
    pub(super) fn volume<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Volume>, Stop> {
        let plan = self.plan(t, &say!(T, "{label}: plan"), of)?;
        Ok(reckon!(t, label, [GAL, M3], (plan = plan, level = level) plan * level))
    }
    /// The mean of all sections across the flow: the water over the way through it.
    pub(super) fn section<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Area>, Stop> {
        let plan = by!(t, &say!(T, "{label}: plan"), circle_area::area(self.diameter))?;
        Ok(reckon!(t, label, [FT2, M2], (plan = plan, across = self.diameter, depth = level) plan / across * depth))
    }
    #[allow(clippy::unnecessary_wraps, reason = "one of several bodies")]
    pub(super) fn clear_width<T: Trail>(
        &self,
        _: &mut T,
        _: &str,
        _: Val<Length>,
        _: Val<Length>,
    ) -> Result<Val<Length>, Stop> {
        Ok(self.diameter)
    }
    pub(super) fn mean_width<T: Trail>(&self, t: &mut T, label: &str, _: Val<Length>) -> Result<Val<Length>, Stop> {
        let plan = by!(t, &say!(T, "{label}: plan"), circle_area::area(self.diameter))?;
        Ok(reckon!(t, label, [IN, MM], (plan = plan, across = self.diameter) plan / across))
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
        let area = self.plan(t, "area over which oil is held", of)?;
        by!(t, label, layer_volume::volume(area, layer.thickness))
    }
    pub(super) fn layer_under<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        limit: Val<Length>,
        room: Val<Volume>,
    ) -> Result<Val<Length>, Stop> {
        let area = self.plan(t, "area over which oil is held", of)?;
        Ok(reckon!(t, label, [IN, MM], (limit = limit, room = room, area = area) limit - room / area))
    }
    pub(super) fn under_water<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        let plan = by!(t, "plan of the cylinder", circle_area::area(self.diameter))?;
        let wet = if level.q > self.height.q { self.height } else { level };
        Ok(reckon!(t, "volume of the cylinder under the groundwater", [FT3, M3], (plan = plan, wet = wet) plan * wet))
    }
    pub(super) fn soil_over<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        let plan = by!(t, "plan of the cylinder", circle_area::area(self.diameter))?;
        let none = Length::from_si(0.0);
        let over = if level.q > self.height.q { level.q - self.height.q } else { none };
        let among = "the level, the top of the vessel";
        let nodes = [level.at, self.height.at];
        let over = choose(t, "height over the top", Some((&FT, &M)), over, among, "what stands over the top", &nodes);
        Ok(reckon!(t, label, [FT3, M3], (plan = plan, over = over) plan * over))
    }
    pub(super) fn shape(&self) -> Shape {
        Shape::UprightCylinder(shapes::UprightCylinder { diameter: self.diameter.q, height: self.height.q })
    }
}
